using System.Reflection;
using System.Runtime.CompilerServices;

namespace BallSim.Files.Tests;

/// <summary>Nothing static can be written after it was made, in what stands on the library; the library's own test is in BallSim.Tests.</summary>
public class StaticStateTests
{
    public static TheoryData<string> Assemblies => ["BallSim.Files", "BallSim.Gpu", "BallSim.Plots", "BallSim.Cli"];

    [Theory, MemberData(nameof(Assemblies))]
    public void No_state_is_static(string name)
    {
        // The compiler keeps delegates of lambdas in static fields of its own; nobody else may.
        static bool IsCompilers(MemberInfo m) => m.IsDefined(typeof(CompilerGeneratedAttribute)) || (m.DeclaringType is { } outer && IsCompilers(outer));
        var types = Assembly.Load(name).GetTypes();
        Assert.Contains(types, t => t.Namespace == name);
        Assert.Empty(from t in types
                     from f in t.GetFields(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly)
                     where !f.IsInitOnly && !f.IsLiteral && !IsCompilers(f) && f.GetCustomAttribute<System.CodeDom.Compiler.GeneratedCodeAttribute>() is null
                     select $"{t.FullName}.{f.Name}");
    }
}
