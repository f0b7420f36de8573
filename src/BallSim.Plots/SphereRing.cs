namespace BallSim.Plots;

/// <summary>One turn of the track.</summary>
/// <param name="Turn">Its number, 1 for the first after the landing.</param>
/// <param name="Rolls">The ball rolls in the middle of it.</param>
/// <param name="From">Distance down-lane where it begins, m.</param>
/// <param name="To">Distance down-lane where it ends, m.</param>
/// <param name="Places">Where the lane touched, unit vectors in the ball frame, up to the first place of the next turn.</param>
internal sealed record SphereRing(int Turn, bool Rolls, double From, double To, IReadOnlyList<Vector3D> Places);
