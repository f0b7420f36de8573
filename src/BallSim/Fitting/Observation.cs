namespace BallSim.Fitting;

/// <summary>One measured number: what, at which station, its value, standard deviation and line.</summary>
internal readonly record struct Observation(FitQuantity Quantity, int Station, double Value, double Deviation, TrackedPoint Point);
