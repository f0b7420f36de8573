using System.Text;
using BallSim.Drilling;
using BallSim.Shots;

namespace BallSim.Plots.Pages;

/// <summary>What a comparison compares, in words: each list with what its names mean.</summary>
internal static class Question
{
    public static string Of(IReadOnlyList<ComparisonRow> rows)
    {
        Candidate[] all = [.. rows.Select(r => r.Candidate)];
        var text = new StringBuilder("<dl>\n");
        void List(string heading, Func<Candidate, string> name, Func<Candidate, string> meaning)
        {
            var kinds = all.GroupBy(name).ToArray();
            text.Append($"<dt>{heading}{(kinds.Length > 1 ? "s" : "")}</dt><dd>");
            text.AppendJoin("<br>", kinds.Select(k => Document.Encoded(k.Key.Length > 0 ? $"{k.Key}: {meaning(k.First())}" : meaning(k.First())))).Append("</dd>\n");
        }
        List("Ball", c => c.BallName, c => FormattableString.Invariant($"{c.Ball.Mass / Units.Pound:F2} lb drilled, {c.Ball.Cover.Name} cover, diameter {2 * c.Ball.Radius / Units.Inch:F2} in"));
        List("Layout", c => c.LayoutName, c => c.Ball.Marks.IsDrilled ? Plan(LayoutMeasures.Of(c.Ball)) : "not laid out");
        List("Surface", c => c.FinishName, c => c.Ball.Finish.ToString());
        List("Release", c => c.ReleaseName, c => c.Release.ToString());
        List("Lane", c => c.LaneName, c => c.Lane.GivenFriction is null ? c.Lane.Oil.ToString() : "friction given");
        return text.Append("</dl>").ToString();
    }

    private static string Plan(LayoutMeasures m)
    {
        var pin = m.AngleAtPin is { } p ? FormattableString.Invariant($", {p / Units.Degree:F0}° at the pin") : "";
        var axis = m.AngleAtAxis is { } a ? FormattableString.Invariant($", {a / Units.Degree:F0}° at the axis") : "";
        return FormattableString.Invariant($"pin to axis {m.PinToAxis / Units.Inch:0.###} in{pin}{axis}; RG about the axis {m.RgAboutAxis / Units.Inch:F3} in");
    }
}
