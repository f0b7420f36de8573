using System.Text.Json;
using BallSim.Balls;
using BallSim.Drilling;
using BallSim.Files.Json;
using BallSim.Files.Text;
using static BallSim.Units;

namespace BallSim.Files;

/// <summary>What drilling does to a ball as JSON, the unit in each name; what does not exist is null.</summary>
public static class DrillJson
{
    private static readonly Column<Ball>[] Body =
    [
        new("weight_lb", b => b.Mass / Pound),
        new("low_rg_in", b => b.LowRg / Inch),
        new("intermediate_rg_in", b => b.IntermediateRg / Inch),
        new("high_rg_in", b => b.HighRg / Inch),
        new("differential_in", b => b.Differential / Inch),
        new("intermediate_differential_in", b => b.IntermediateDifferential / Inch),
        new("centre_of_mass_x_mm", b => b.CentreOfMass.X / Millimetre),
        new("centre_of_mass_y_mm", b => b.CentreOfMass.Y / Millimetre),
        new("centre_of_mass_z_mm", b => b.CentreOfMass.Z / Millimetre),
        new("preferred_axis_x", b => b.PreferredAxis.X),
        new("preferred_axis_y", b => b.PreferredAxis.Y),
        new("preferred_axis_z", b => b.PreferredAxis.Z),
    ];

    private static readonly Column<DrillSheet>[] Change =
    [
        new("removed_oz", s => s.Removed.Mass / Ounce),
        new("drilled_out_of", s => s.DrilledOutOf),
        new("centre_of_mass_moved_mm", s => s.CentreOfMassShift.Length / Millimetre),
        new("preferred_axis_moved_deg", s => s.PreferredAxisShift / Degree),
        new("thinnest_wall_in", s => s.ThinnestWall / Inch),
    ];

    private static readonly Column<LayoutMeasures>[] Arcs =
    [
        new("pin_to_axis_in", m => m.PinToAxis / Inch),
        new("angle_at_pin_deg", m => m.AngleAtPin / Degree),
        new("angle_at_axis_deg", m => m.AngleAtAxis / Degree),
        new("mark_to_axis_in", m => m.MassBiasToAxis / Inch),
        new("pin_to_grip_centre_in", m => m.PinToGripCentre / Inch),
        new("pin_above_midline_in", m => m.PinAboveMidline / Inch),
        new("pin_to_vertical_line_in", m => m.PinToVerticalLine / Inch),
        new("rg_about_axis_in", m => m.RgAboutAxis / Inch),
    ];

    private static readonly Column<StaticBalance>[] Balance =
    [
        new("top_oz", b => b.Top / Ounce),
        new("side_oz", b => b.Side / Ounce),
        new("finger_oz", b => b.Finger / Ounce),
    ];

    /// <summary>Writes the sheet.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="piece">The ball on the bench.</param>
    /// <param name="sheet">What drilling did to it.</param>
    public static void Write(TextWriter writer, Workpiece piece, DrillSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(sheet);
        JsonFile.Write(writer, json => One(json, piece, sheet));
    }

    /// <summary>Writes a line of weights as a list.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="piece">The ball on the bench.</param>
    /// <param name="line">What drilling did to each weight.</param>
    public static void Write(TextWriter writer, Workpiece piece, IReadOnlyList<DrillSheet> line)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(line);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartArray();
            foreach (var sheet in line)
            {
                One(json, piece, sheet);
            }
            json.WriteEndArray();
        });
    }

    private static void One(Utf8JsonWriter json, Workpiece piece, DrillSheet sheet)
    {
        json.WriteStartObject();
        json.WriteString("ball", piece.Ball.Name);
        Part(json, "before", Body, sheet.Before);
        Part(json, "after", Body, sheet.Ball);
        Columns.Json(json, Change, sheet);
        Part(json, "static_balance", Balance, StaticBalance.Of(sheet.Ball, piece.Ball.BalanceLever));
        Part(json, "layout", Arcs, LayoutMeasures.Of(sheet.Ball));
        json.WriteEndObject();
    }

    private static void Part<T>(Utf8JsonWriter json, string name, Column<T>[] columns, T row)
    {
        json.WriteStartObject(name);
        Columns.Json(json, columns, row);
        json.WriteEndObject();
    }
}
