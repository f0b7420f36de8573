using BallSim.Files.Json;
using BallSim.Files.Text;
using static BallSim.Units;

namespace BallSim.Files;

/// <summary>The numbers of a built ball as JSON, the unit in each name; what does not exist is null.</summary>
public static class BuildJson
{
    private static readonly Column<PouredBall>[] Numbers =
    [
        new("weight_lb", p => p.Sheet.Ball.Mass / Pound),
        new("diameter_in", p => 2 * p.Sheet.Ball.Radius / Inch),
        new("low_rg_in", p => p.Sheet.Ball.LowRg / Inch),
        new("intermediate_rg_in", p => p.Sheet.Ball.IntermediateRg / Inch),
        new("high_rg_in", p => p.Sheet.Ball.HighRg / Inch),
        new("differential_in", p => p.Sheet.Ball.Differential / Inch),
        new("intermediate_differential_in", p => p.Sheet.Ball.IntermediateDifferential / Inch),
        new("asymmetric", p => p.Sheet.IsAsymmetric),
        new("pin_x", p => p.Sheet.Pin.X),
        new("pin_y", p => p.Sheet.Pin.Y),
        new("pin_z", p => p.Sheet.Pin.Z),
        new("high_axis_x", p => p.Sheet.HighAxis.X),
        new("high_axis_y", p => p.Sheet.HighAxis.Y),
        new("high_axis_z", p => p.Sheet.HighAxis.Z),
        new("pin_to_cg_in", p => p.Sheet.PinToCg / Inch),
        new("top_weight_oz", p => p.TopWeight / Ounce),
        new("centre_of_mass_off_mm", p => p.Sheet.Ball.CentreOfMass.Length / Millimetre),
        new("filler_g_per_ml", p => p.Sheet.Build.FillerDensity / GramPerMillilitre),
        new("light_filler_share", p => p.Blend?.LightShare),
        new("least_weight_lb", p => p.Blend?.LeastWeight / Pound),
        new("greatest_weight_lb", p => p.Blend?.GreatestWeight / Pound),
        new("core_shift_in", p => p.Shift?.Shift / Inch),
        new("densest_part_g_per_ml", p => p.GreatestDensity / GramPerMillilitre),
    ];

    /// <summary>Writes the numbers of one ball.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="poured">The ball.</param>
    public static void Write(TextWriter writer, PouredBall poured)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(poured);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartObject();
            json.WriteString("ball", poured.Drawing.Name);
            Columns.Json(json, Numbers, poured);
            json.WriteEndObject();
        });
    }

    /// <summary>Writes a line of weights as a list; a weight that cannot be had carries the reason.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="rows">The line.</param>
    public static void Write(TextWriter writer, IReadOnlyList<PouredRow> rows)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(rows);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartArray();
            foreach (var row in rows)
            {
                json.WriteStartObject();
                json.WriteNumber("wished_weight_lb", row.Weight / Pound);
                if (row.Poured is { } poured)
                {
                    Columns.Json(json, Numbers, poured);
                }
                else
                {
                    json.WriteString("refusal", row.Refusal);
                }
                json.WriteEndObject();
            }
            json.WriteEndArray();
        });
    }
}
