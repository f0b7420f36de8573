using BallSim.Files.Text;
using BallSim.Shots;

namespace BallSim.Files;

/// <summary>
/// The path of a shot as CSV: a line for every sample, SI units, the unit in each column's name. Angles in rad, vectors in the lane frame.
/// </summary>
public static class ShotCsv
{
    private static readonly Column<PathPoint>[] Path =
    [
        new("time_s", p => p.Time),
        new("phase", p => p.Phase.ToString().ToLowerInvariant()),
        new("x_m", p => p.X),
        new("y_m", p => p.Y),
        new("board", p => p.Board),
        new("velocity_x_m_s", p => p.VelocityX),
        new("velocity_y_m_s", p => p.VelocityY),
        new("spin_x_rad_s", p => p.AngularVelocity.X),
        new("spin_y_rad_s", p => p.AngularVelocity.Y),
        new("spin_z_rad_s", p => p.AngularVelocity.Z),
        new("orientation_w", p => p.Orientation.W),
        new("orientation_x", p => p.Orientation.X),
        new("orientation_y", p => p.Orientation.Y),
        new("orientation_z", p => p.Orientation.Z),
        new("axis_rotation_rad", p => p.AxisRotation),
        new("axis_tilt_rad", p => p.AxisTilt),
        new("slip_m_s", p => p.SlipSpeed),
        new("normal_force_N", p => p.NormalForce),
        new("friction", p => p.Friction),
        new("film_m", p => p.Film),
        new("revolutions", p => p.Revolutions),
        new("energy_J", p => p.Energy),
        new("friction_work_J", p => p.FrictionWork),
        new("drag_work_J", p => p.DragWork),
    ];

    /// <summary>Writes the path, replacing the file as a whole.</summary>
    /// <param name="path">The file.</param>
    /// <param name="shot">The shot.</param>
    /// <param name="samples">Number of samples, evenly spread over the distance, 2 to 1 000 000.</param>
    /// <exception cref="BadFileException">The file cannot be written.</exception>
    public static void Write(string path, Shot shot, int samples = 601)
    {
        ArgumentNullException.ThrowIfNull(shot);
        var points = shot.Samples(samples);
        BoundedFile.Replace(path, stream => Columns.Csv(stream, Path, points));
    }
}
