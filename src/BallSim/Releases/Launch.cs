namespace BallSim.Releases;

/// <summary>The ball at the foul line, as <see cref="InitialState"/> has it: plain numbers for where many shots start.</summary>
internal readonly record struct Launch(double X, Vector3D Velocity, Vector3D AngularVelocity, Rotation Orientation, double Loft, Hand Hand);
