using System.Text;
using BallSim.Shots;
using static System.FormattableString;
using static BallSim.Plots.Pages.Document;
using static BallSim.Units;

namespace BallSim.Plots.Pages;

/// <summary>What the numbers of a page rest on: the model, and where each number of the friction law stands.</summary>
internal static class Assumptions
{
    public static string Of(IReadOnlyList<ComparisonRow> rows, SimulatorOptions options)
    {
        var text = new StringBuilder("<ul>\n");
        foreach (var sentence in Model(options))
        {
            text.Append($"<li>{sentence}</li>\n");
        }
        text.Append("""</ul>""" + "\n" + """<div class="box" tabindex="0" role="region" aria-label="Numbers of the friction law"><table><caption>Numbers of the friction law. None was fitted to this bowler's lane unless the scenario says so.</caption><thead><tr><th scope="col">Number</th><th scope="col" class="number">value</th><th scope="col">where it comes from</th></tr></thead><tbody>""");
        foreach (var (what, value, standing) in Numbers(rows, options))
        {
            text.Append($"<tr><th scope=\"row\">{what}</th><td class=\"number\">{Encoded(value)}</td><td>{Encoded(standing)}</td></tr>\n");
        }
        return text.Append("</tbody></table></div>\n").ToString();
    }

    private static IEnumerable<string> Model(SimulatorOptions options)
    {
        yield return "The ball is a rigid body with three moments of inertia and a centre of mass beside its middle; it touches the lane in one point, slides, rolls, and may slip again.";
        yield return "The lane is a plane; before the landing the ball flies straight and level and turns freely. A bounce is left out.";
        yield return "The shot ends at the touch of the head pin. What the pins do is not computed.";
        yield return "Friction follows from the film of oil, the roughness of ball and lane, and the slip; oil that the cover picks up and fresh cover that flare brings are "
            + $"{(options.CoverOil && options.FreshCover ? "counted" : options.CoverOil || options.FreshCover ? "counted in part" : "left out")}. The oil does not change from row to row.";
        var forces = new (string Name, bool Acts)[] { ("drag of the air", options.AirDrag), ("the lift of a spinning ball", options.MagnusForce), ("rolling resistance", options.RollingResistance), ("pivoting friction", options.PivotingFriction) };
        string Listed(bool acts) => string.Join(", ", forces.Where(f => f.Acts == acts).Select(f => f.Name)) is { Length: > 0 } some ? some : "none";
        yield return $"Small forces that act: {Listed(true)}. Left out: {Listed(false)}.";
        yield return "The band of 4° to 6° for the entry angle is that of the US governing body, as quoted; a tracking study of 2024 (doi 10.1177/17479541241306543) finds the angle less important.";
    }

    private static IEnumerable<(string What, string Value, string Standing)> Numbers(IReadOnlyList<ComparisonRow> rows, SimulatorOptions options)
    {
        var law = options.Friction;
        string Given<T>(T value, T usual, string standing) => Equals(value, usual) ? standing : "given";
        var usual = SimulatorOptions.Default.Friction;
        yield return ("friction of the dry contact", Invariant($"{law.Dry:0.###}"), Given(law.Dry, usual.Dry, "literature, 0.12 to 0.32; to be fitted"));
        yield return ("floor of the friction in oil", Invariant($"{law.Floor:0.###}"), Given(law.Floor, usual.Floor, "assumed, 0 to 0.04; to be fitted"));
        yield return ("ceiling of the viscous part", Invariant($"{law.ViscousCeiling:0.###}"), Given(law.ViscousCeiling, usual.ViscousCeiling, "assumed, 0.03 to 0.08"));
        yield return ("multiplier of the film scale", Invariant($"{law.FilmScale:0.###}"), Given(law.FilmScale, usual.FilmScale, "assumed, 0.5 to 3; to be fitted"));
        yield return ("gap floor", Invariant($"{law.GapFloor / Micrometre:0.###} µm"), Given(law.GapFloor, usual.GapFloor, "assumed, 0.1 to 0.5 µm"));
        yield return ("share of the film that stays on the cover", Invariant($"{law.PickUp:0.###}"), Given(law.PickUp, usual.PickUp, "assumed"));
        foreach (var lane in rows.Select(r => (r.Candidate.LaneName, r.Candidate.Lane)).DistinctBy(l => l.LaneName))
        {
            var on = Encoded(lane.LaneName.Length > 0 ? $", lane {lane.LaneName}" : ", lane");
            yield return ($"roughness Ra{on}", Invariant($"{lane.Lane.Roughness / Micrometre:0.##} µm"), "assumed unless given, 0.1 to 0.5 µm");
            yield return ($"viscosity of the oil{on}", Invariant($"{lane.Lane.Viscosity:0.###} Pa s at {lane.Lane.Temperature:0.#} °C"), "published range 0.012 to 0.081 Pa s; assumed unless given");
        }
        foreach (var finish in rows.Select(r => r.Candidate.Ball.Finish).DistinctBy(f => f.Name))
        {
            yield return (Encoded($"roughness Ra, {finish.Name}"), Invariant($"{finish.Roughness / Micrometre:0.##} µm"), "from the grit by a rule that scatters by about 30 %, or assumed");
        }
        foreach (var cover in rows.Select(r => r.Candidate.Ball.Cover).DistinctBy(c => c.Name))
        {
            yield return (Encoded($"pores of the cover, {cover.Name}"), Invariant($"{cover.Pores / Micrometre:0.##} µm, absorbs at {cover.Absorption:0.##} per second"), "assumed");
        }
    }
}
