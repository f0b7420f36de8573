namespace BallSim.Files.Json;

/// <summary>What to write where something is missing: each line is a value that the reader takes.</summary>
internal static class Examples
{
    public const string Bowler = """{ "hand": "right", "axis": { "over": "5 in", "up": "0.5 in" } }""";

    public const string Balls = """[{ "name": "First", "weight": "15 lb", "lowRg": "2.48 in", "differential": "0.05 in" }]""";

    public const string Layouts = """[{ "name": "Strong", "pinToAxis": "4 in", "angleAtPin": "50 deg", "angleAtAxis": "40 deg" }]""";

    public const string Releases = """[{ "name": "Usual", "board": 25, "speed": "18 mph", "spinRate": "350 rpm" }]""";

    public const string Lanes = """[{ "name": "Left", "oil": { "shape": "crowned", "length": "40 ft", "volume": "25 mL" } }]""";

    public const string Oil = """{ "shape": "crowned", "length": "40 ft", "volume": "25 mL" }""";

    public const string Axis = """{ "over": "5 in", "up": "0.5 in" }""";
}
