using System.Reflection;
using System.Runtime.InteropServices;
using System.Runtime.Loader;
using BallSim.Cli;

namespace BallSim.Files.Tests;

/// <summary><c>ballsim sweep --engine</c>, on machines with a card and without.</summary>
public sealed class EngineCommandTests : IDisposable
{
    private readonly ScenarioText text = new();
    private readonly string plan;

    public EngineCommandTests()
    {
        text.File("s.json", ScenarioText.Whole);
        plan = text.File("plan.json", """{ "scenario": "s.json", "design": "sobol", "count": 64, "factors": [{ "vary": "release.speed", "from": "17 mph", "to": "20 mph" }] }""");
    }

    public void Dispose() => text.Dispose();

    private static bool HasDriver => NativeLibrary.TryLoad(OperatingSystem.IsWindows() ? "nvcuda.dll" : "libcuda.so.1", out _);

    private (int Code, string Output, string Error) Run(string table, params string[] engine)
    {
        using StringWriter output = new(), error = new();
        var code = Application.Run(["sweep", plan, "--out", Path.Combine(text.Folder, table), .. engine], new Screen(output, error, 100), CancellationToken.None);
        return (code, output.ToString(), error.ToString());
    }

    private byte[] Table(string name) => File.ReadAllBytes(Path.Combine(text.Folder, name));

    [Fact]
    public void The_processor_is_the_default_and_says_nothing()
    {
        Assert.Equal((0, ""), (Run("a.csv").Code, Run("b.csv", "--engine", "cpu").Error));
        Assert.Equal(Table("a.csv"), Table("b.csv"));
    }

    [Fact]
    public void Auto_says_what_computes()
    {
        Assert.Equal(0, Run("a.csv").Code);
        var (code, _, error) = Run("auto.csv", "--engine", "auto");
        Assert.Equal(0, code);
        Assert.Contains("ballsim: engine: ", error);
        if (HasDriver && !error.Contains("engine: processor"))
        {
            return;
        }
        Assert.StartsWith("ballsim: The processor computes: ", error);
        Assert.Contains("ballsim: engine: processor, ", error);
        Assert.Equal(Table("a.csv"), Table("auto.csv"));
    }

    [Fact]
    public void A_card_that_is_not_there_is_three()
    {
        var (code, output, error) = Run("gpu.csv", "--engine", "gpu");
        if (HasDriver && code == 0)
        {
            Assert.StartsWith("ballsim: engine: ", error);
            return;
        }
        Assert.Equal((3, ""), (code, output));
        Assert.StartsWith("ballsim: --engine gpu: ", error);
        Assert.Single(error.TrimEnd().Split('\n'));
        Assert.Contains("driver", error);
        Assert.False(File.Exists(Path.Combine(text.Folder, "gpu.csv")));
    }

    [Fact]
    public void Another_word_is_two()
    {
        var (code, output, error) = Run("x.csv", "--engine", "card");
        Assert.Equal((2, ""), (code, output));
        Assert.StartsWith("ballsim: ", error);
        Assert.Contains("'card'", error);
    }

    [Fact]
    public void The_library_of_the_card_is_loaded_only_for_a_card()
    {
        string[] LoadedBy(params string[] arguments)
        {
            var house = new House();
            var program = house.LoadFromAssemblyName(new AssemblyName("BallSim.Cli"));
            using StringWriter output = new(), error = new();
            var screen = Activator.CreateInstance(program.GetType("BallSim.Cli.Screen", true)!, output, error, 100);
            var code = program.GetType("BallSim.Cli.Application", true)!.GetMethod("Run", BindingFlags.Static | BindingFlags.Public)!.Invoke(null, [arguments, screen, CancellationToken.None]);
            Assert.True(code is 0, error.ToString());
            return [.. house.Asked.Where(name => name is "BallSim.Gpu" or "ILGPU")];
        }

        Assert.Empty(LoadedBy("--help"));
        Assert.Empty(LoadedBy("sweep", "--help"));
        Assert.Empty(LoadedBy("sweep", plan, "--out", Path.Combine(text.Folder, "c.csv")));
        Assert.Equal(["BallSim.Gpu", "ILGPU"], LoadedBy("sweep", plan, "--out", Path.Combine(text.Folder, "d.csv"), "--engine", "auto").Order(StringComparer.Ordinal));
    }

    /// <summary>Loads what lies beside the tests once more, and remembers what it was asked for.</summary>
    private sealed class House : AssemblyLoadContext
    {
        public HashSet<string> Asked { get; } = [];

        protected override Assembly? Load(AssemblyName name)
        {
            var path = Path.Combine(AppContext.BaseDirectory, name.Name + ".dll");
            Asked.Add(name.Name!);
            return File.Exists(path) ? LoadFromAssemblyPath(path) : null;
        }
    }
}
