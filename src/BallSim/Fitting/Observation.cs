namespace BallSim.Fitting;

/// <summary>One measured number: what, at which station, its value, standard deviation and line.</summary>
internal readonly record struct Observation(FitQuantity Quantity, int Station, double Value, double Deviation, TrackedPoint Point)
{
    /// <summary>How far a value is from another; directions go round.</summary>
    public double Off(double value, double from) => Quantity is FitQuantity.Heading or FitQuantity.AxisRotation ? Math.IEEERemainder(value - from, 2 * Math.PI) : value - from;
}
