using BallSim.Files.Json;
using BallSim.Files.Text;
using BallSim.Shots;
using static BallSim.Units;

namespace BallSim.Files;

/// <summary>A spin test as JSON, the unit in each name; what does not exist is null.</summary>
public static class SpinJson
{
    private static readonly Column<Settling>[] Answer =
    [
        new("within_deg", s => s.Angle / Degree),
        new("first_within_s", s => s.FirstWithin),
        new("within_for_good_s", s => s.WithinForGood),
        new("nearest_deg", s => s.Nearest / Degree),
        new("reason", s => s.Reason),
    ];

    private static readonly Column<SpinMoment>[] Sample =
    [
        new("time_s", m => m.Time),
        new("spin_rate_rpm", m => m.AngularVelocity.Length / Rpm),
        new("angle_to_preferred_axis_deg", m => m.AngleToPreferredAxis / Degree),
        new("axis_x", m => m.AxisInBall.X),
        new("axis_y", m => m.AxisInBall.Y),
        new("axis_z", m => m.AxisInBall.Z),
    ];

    /// <summary>Writes the answer and the track of the spin axis in the ball at 601 instants.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="piece">The ball on the bench.</param>
    /// <param name="record">The test.</param>
    public static void Write(TextWriter writer, Workpiece piece, SpinRecord record)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(record);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartObject();
            json.WriteString("ball", piece.Ball.Name);
            json.WriteString("dissipation", record.Dissipation.ToString());
            json.WriteNumber("duration_s", record.Duration);
            json.WriteBoolean("complete", record.IsComplete);
            Columns.Json(json, Answer, record.Settle(piece.Spin.Within));
            json.WriteStartArray("samples");
            foreach (var moment in record.Samples(601))
            {
                json.WriteStartObject();
                Columns.Json(json, Sample, moment);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        });
    }
}
