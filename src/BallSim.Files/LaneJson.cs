using System.Text.Json;
using BallSim.Files.Json;
using BallSim.Lanes;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Files;

/// <summary>A lane as JSON, the unit in each name: its oil in zones, its measures against the rules, and what a day did to it.</summary>
public static class LaneJson
{
    /// <summary>Writes the lane.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="name">What the lane is called.</param>
    /// <param name="lane">The lane, with its oil as it is to be described.</param>
    /// <param name="day">The day that wore it, or null.</param>
    public static void Write(TextWriter writer, string name, Lane lane, LaneDay? day = null)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(lane);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartObject();
            json.WriteString("lane", name);
            json.WriteNumber("volume_mL", lane.Oil.Volume / Millilitre);
            json.WriteNumber("oil_length_ft", lane.Oil.Length / Foot);
            Number(json, "ratio_at_15_ft", lane.Oil.Ratio(15 * Foot));
            json.WriteNumber("unit_um", OilUnit / Micrometre);
            Zones(json, lane.Oil);
            Checked(json, LaneCheck.Of(lane));
            if (day is not null)
            {
                Worn(json, day);
            }
            json.WriteEndObject();
        });
    }

    private static void Zones(Utf8JsonWriter json, OilMap oil)
    {
        json.WriteStartArray("zones");
        foreach (var zone in OilZone.Of(oil))
        {
            json.WriteStartObject();
            json.WriteNumber("from_ft", zone.FromDistance / Foot);
            json.WriteNumber("to_ft", zone.ToDistance / Foot);
            json.WriteNumber("from_board", zone.FromBoard);
            json.WriteNumber("to_board", zone.ToBoard);
            json.WriteNumber("film_um", zone.Film / Micrometre);
            json.WriteNumber("units", zone.Film / OilUnit);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Checked(Utf8JsonWriter json, LaneCheck check)
    {
        json.WriteString("advice", LaneCheck.Advice);
        json.WriteStartArray("checks");
        foreach (var line in check.Lines)
        {
            json.WriteStartObject();
            json.WriteString("what", line.What);
            json.WriteNumber("value_in", line.Value / Inch);
            Number(json, "at_ft", line.At / Foot);
            Number(json, "at_least_in", line.AtLeast / Inch);
            json.WriteNumber("at_most_in", line.AtMost / Inch);
            json.WriteString("verdict", line.VerdictText.ToLowerInvariant());
            json.WriteString("source", line.Source);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Worn(Utf8JsonWriter json, LaneDay day)
    {
        const double microlitre = 1e-3 * Millilitre;
        json.WriteStartObject("wear");
        json.WriteNumber("seed", day.Plan.Seed);
        json.WriteNumber("volume_before_mL", day.Before.Volume / Millilitre);
        json.WriteNumber("volume_after_mL", day.After.Volume / Millilitre);
        json.WriteNumber("imbalance_uL", day.Imbalance / microlitre);
        json.WriteStartArray("bowlers");
        foreach (var bowler in day.Bowlers)
        {
            json.WriteStartObject();
            json.WriteString("bowler", day.Plan.Bowlers[bowler.Bowler].Name);
            json.WriteNumber("shots", bowler.Shots);
            json.WriteNumber("moves", bowler.Moves);
            json.WriteNumber("oil_taken_uL", bowler.OilTaken / microlitre);
            Number(json, "first_line_board_before", bowler.EntryBefore?.Board);
            Number(json, "first_line_board_after", bowler.EntryAfter?.Board);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("moves");
        foreach (var move in day.Moves)
        {
            json.WriteStartObject();
            json.WriteNumber("after_shot", move.After);
            json.WriteString("bowler", day.Plan.Bowlers[move.Bowler].Name);
            Number(json, "mean_offset_in", move.MeanOffset / Inch);
            json.WriteNumber("from_deg", move.From / Degree);
            json.WriteNumber("to_deg", move.To / Degree);
            json.WriteBoolean("found", move.IsFound);
            json.WriteString("reason", move.Reason);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("shots");
        foreach (var shot in day.Shots)
        {
            json.WriteStartObject();
            json.WriteNumber("number", shot.Number);
            json.WriteNumber("game", shot.Game);
            json.WriteNumber("frame", shot.Frame);
            json.WriteString("bowler", day.Plan.Bowlers[shot.Bowler].Name);
            json.WriteString("outcome", shot.Sentence);
            Number(json, "entry_board", shot.Entry?.Board);
            Number(json, "entry_angle_deg", shot.Entry?.Angle / Degree);
            json.WriteNumber("taken_up_uL", shot.TakenUp / microlitre);
            json.WriteNumber("laid_down_uL", shot.LaidDown / microlitre);
            json.WriteNumber("oil_left_mL", shot.OilLeft / Millilitre);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    // What does not exist, or is no number (the ratio of a dry lane), is null.
    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
