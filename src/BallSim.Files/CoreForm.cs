namespace BallSim.Files;

/// <summary>The forms that a piece of a core can have in a file.</summary>
public enum CoreForm
{
    /// <summary>A sphere of a diameter.</summary>
    Sphere,

    /// <summary>A sphere's cap of a height, cut from a sphere of a diameter; the sphere's centre is the origin, the cap lies towards +z.</summary>
    Cap,

    /// <summary>A hollow sphere between two diameters.</summary>
    Shell,

    /// <summary>An ellipsoid of a width (x), a depth (y) and a height (z), each from end to end.</summary>
    Ellipsoid,

    /// <summary>A cylinder of a diameter and a height along z, its middle in the origin.</summary>
    Cylinder,

    /// <summary>A cone with its tip cut off: base of a diameter in z = 0, top of another at the height; a top of zero makes a whole cone.</summary>
    Cone,

    /// <summary>A ring about z: diameter of the circle in the middle of the tube, and diameter of the tube.</summary>
    Ring,

    /// <summary>A box of a width (x), a depth (y) and a height (z), its middle in the origin.</summary>
    Box,

    /// <summary>A solid of revolution about z from an outline of straight lines and arcs.</summary>
    Turned,

    /// <summary>A closed surface of triangles in an STL file.</summary>
    Mesh,
}
