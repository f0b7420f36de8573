using System.Text.Json;
using BallSim.Files.Json;
using BallSim.Fitting;

namespace BallSim.Files;

/// <summary>A fit and a verdict as JSON, numbers in SI (angles in rad, boards as boards); what cannot be told is null.</summary>
public static class FitJson
{
    /// <summary>Writes a fit: quality, estimates with errors, what cannot be separated, residuals by distance, remarks.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="fit">The fit.</param>
    public static void Write(TextWriter writer, FitResult fit)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(fit);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartObject();
            json.WriteBoolean("converged", fit.IsConverged);
            json.WriteString("reason", fit.Reason);
            Number(json, "chi_square", fit.ChiSquare);
            Number(json, "degrees_of_freedom", fit.DegreesOfFreedom);
            Number(json, "probability", fit.Probability);
            json.WriteStartArray("estimates");
            foreach (var e in fit.Estimates)
            {
                json.WriteStartObject();
                json.WriteString("parameter", e.Parameter.ToString());
                json.WriteString("shot", e.ShotId);
                Number(json, "value", e.IsDetermined ? e.Value : double.NaN);
                Number(json, "standard_error", e.StandardError);
                Number(json, "bias_taken_off", e.IsDetermined ? e.Bias : double.NaN);
                Number(json, "low_95", e.Low95);
                Number(json, "high_95", e.High95);
                json.WriteBoolean("at_bound", e.IsAtBound);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("unseparated");
            foreach (var one in fit.Unseparated)
            {
                json.WriteStartObject();
                json.WriteString("parameter", one.Asked.ToString());
                json.WriteStartArray("others");
                foreach (var other in one.Others)
                {
                    json.WriteStringValue(other.ToString());
                }
                json.WriteEndArray();
                Number(json, "correlation", one.Correlation);
                json.WriteString("sentence", one.Sentence);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("residuals_by_distance");
            foreach (var band in fit.ResidualsByDistance)
            {
                json.WriteStartObject();
                json.WriteString("quantity", band.Quantity.ToString());
                Number(json, "from_m", band.From);
                Number(json, "to_m", band.To);
                json.WriteNumber("count", band.Count);
                Number(json, "mean", band.Mean);
                Number(json, "rms_in_noise", band.RootMeanSquare);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("remarks");
            foreach (var (shot, note) in fit.Notes)
            {
                json.WriteStartObject();
                json.WriteString("shot", shot);
                json.WriteNumber("line", note.Line);
                json.WriteString("issue", note.Issue.ToString());
                json.WriteString("sentence", note.Sentence);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        });
    }

    /// <summary>Writes a verdict: the finding, the shots that did not come to the pins, and every metric with its interval.</summary>
    /// <param name="writer">Where to; it is not closed.</param>
    /// <param name="verdict">The verdict.</param>
    public static void Write(TextWriter writer, Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(verdict);
        JsonFile.Write(writer, json =>
        {
            json.WriteStartObject();
            json.WriteString("finding", verdict.Finding.ToString());
            json.WriteString("sentence", verdict.Sentence);
            json.WriteStartArray("missed");
            foreach (var shot in verdict.Missed)
            {
                json.WriteStartObject();
                json.WriteString("shot", shot.ShotId);
                json.WriteString("designed", shot.Designed.ToString());
                json.WriteString("measured", shot.Measured.ToString());
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("metrics");
            foreach (var m in verdict.Metrics)
            {
                json.WriteStartObject();
                json.WriteString("metric", m.Metric.ToString());
                json.WriteString("finding", m.Finding.ToString());
                Number(json, "designed", m.Designed);
                Number(json, "measured", m.Measured);
                Number(json, "difference_low", m.Low);
                Number(json, "difference_high", m.High);
                Number(json, "tolerance", m.Tolerance);
                Number(json, "shot_to_shot", m.ShotToShot);
                Number(json, "from_fit", m.FromFit);
                json.WriteNumber("shots", m.Shots);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        });
    }

    private static void Number(Utf8JsonWriter json, string name, double value)
    {
        if (double.IsFinite(value))
        {
            json.WriteNumber(name, value);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
