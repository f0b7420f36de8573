using static BallSim.Units;

namespace BallSim.Balls;

/// <summary>One reading of a balance scale: the static imbalance of a ball towards a direction.</summary>
public readonly record struct BalanceReading
{
    /// <summary>A reading.</summary>
    /// <param name="direction">The direction in the ball frame that lay at the end of the lever; any length but zero.</param>
    /// <param name="imbalance">What balanced it, kg, negative on the other side; -16 to 16 oz.</param>
    public BalanceReading(Vector3D direction, double imbalance)
    {
        Direction = Check.Direction(direction, nameof(direction));
        Imbalance = Check.Range(imbalance, -16 * Ounce, 16 * Ounce, Quantity.Mass);
    }

    /// <summary>The direction that lay at the end of the lever, a unit vector in the ball frame.</summary>
    public Vector3D Direction { get; }

    /// <summary>What balanced it, kg.</summary>
    public double Imbalance { get; }

    /// <summary>The imbalance in ounces and the direction.</summary>
    public override string ToString() => $"{Check.Text(Imbalance / Ounce)} oz towards {Direction}";
}
