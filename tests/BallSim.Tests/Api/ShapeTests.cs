using System.Reflection;
using System.Runtime.CompilerServices;

namespace BallSim.Tests.Api;

/// <summary>The shape of the public surface, read from the assembly.</summary>
public class ShapeTests
{
    private static readonly Assembly Library = typeof(Units).Assembly;

    private static IEnumerable<Type> Public => Library.GetExportedTypes();

    private const BindingFlags Everything = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static bool IsRecord(Type t) => t.GetMethod("PrintMembers", Everything) is not null;

    private static bool IsFit(Type t) =>
        t.IsEnum
        || (t.IsAbstract && t.IsSealed)
        || (t.IsClass && t.IsSealed && IsRecord(t))
        || (t.IsValueType && t.IsDefined(typeof(IsReadOnlyAttribute)) && IsRecord(t));

    [Fact]
    public void A_public_type_is_a_readonly_record_struct_a_sealed_record_a_static_class_or_an_enum() =>
        // An engine holds a device: a thing, not a value.
        Assert.Empty(Public.Where(t => !IsFit(t) && t != typeof(BallSim.Ensembles.EnsembleEngine)).Select(t => t.FullName));

    [Fact]
    public void No_public_property_can_be_set_after_construction()
    {
        static bool IsInit(MethodInfo set) => set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));
        var settable = from t in Public
                       from p in t.GetProperties()
                       where p.SetMethod is { IsPublic: true } set && !IsInit(set)
                       select $"{t.FullName}.{p.Name}";
        Assert.Empty(settable);
    }

    [Fact]
    public void No_public_field_can_be_written() =>
        Assert.Empty(from t in Public
                     from f in t.GetFields()
                     where !f.IsInitOnly && !f.IsLiteral && !(t.IsEnum && f.IsSpecialName)
                     select $"{t.FullName}.{f.Name}");

    /// <summary>A record with settings is made to be changed by <c>with</c>: what its constructor takes can be set anew. One without any stands as a whole and is made anew.</summary>
    [Fact]
    public void What_a_public_constructor_takes_a_with_can_change() =>
        Assert.Empty(from t in Public
                     where IsRecord(t) && t.GetProperties().Any(p => p.SetMethod is { IsPublic: true })
                     from c in t.GetConstructors()
                     from parameter in c.GetParameters()
                     let property = t.GetProperties().SingleOrDefault(p => string.Equals(p.Name, parameter.Name, StringComparison.OrdinalIgnoreCase))
                     where property?.SetMethod is not { IsPublic: true }
                     // Which number is free: its limits hang on that, so that another one is made anew.
                     where (t, parameter.Name) != (typeof(BallSim.Fitting.FreeParameter), "parameter")
                     select $"{t.FullName}({parameter.Name})");

    [Fact]
    public void What_takes_long_can_be_cancelled() =>
        // Whoever tells of progress takes long.
        Assert.Empty(from t in Public
                     from m in t.GetMethods()
                     let parameters = m.GetParameters()
                     where parameters.Any(p => p.ParameterType == typeof(IProgress<int>)) && parameters.All(p => p.ParameterType != typeof(CancellationToken))
                     select $"{t.FullName}.{m.Name}");

    /// <summary>Nothing that a static field holds can be changed from outside: no array, no list, no table.</summary>
    [Fact]
    public void Nothing_static_is_mutable_and_public() =>
        Assert.Empty(from t in Public
                     from type in t.GetFields(BindingFlags.Public | BindingFlags.Static).Select(f => (f.Name, Type: f.FieldType)).Concat(t.GetProperties(BindingFlags.Public | BindingFlags.Static).Select(p => (p.Name, Type: p.PropertyType)))
                     where type.Type.IsArray || (type.Type.IsGenericType && type.Type.GetGenericTypeDefinition() is var d && (d == typeof(List<>) || d == typeof(Dictionary<,>) || d == typeof(HashSet<>)))
                     select $"{t.FullName}.{type.Name}");

    [Fact]
    public void No_public_property_hands_out_an_array() =>
        Assert.Empty(from t in Public from p in t.GetProperties() where p.PropertyType.IsArray select $"{t.FullName}.{p.Name}");

    [Fact]
    public void No_state_is_static()
    {
        // The compiler keeps delegates of lambdas in static fields of its own; nobody else may.
        static bool IsCompilers(MemberInfo m) => m.IsDefined(typeof(CompilerGeneratedAttribute)) || (m.DeclaringType is { } outer && IsCompilers(outer));
        Assert.Empty(from t in Library.GetTypes()
                     from f in t.GetFields(Everything)
                     where f.IsStatic && !f.IsInitOnly && !f.IsLiteral && !IsCompilers(f)
                     select $"{t.FullName}.{f.Name}");
    }

    [Fact]
    public void Vectors_steppers_and_equations_are_internal() =>
        Assert.DoesNotContain(Public, t => t.Namespace is "BallSim.Spatial" or "BallSim.Integration" or "BallSim.Motion");

    [Fact]
    public void No_type_is_called_like_the_library() => Assert.DoesNotContain(Library.GetTypes(), t => t.Name == "BallSim");

    [Fact]
    public void The_library_depends_on_the_platform_and_on_the_numerics_package_alone() =>
        Assert.DoesNotContain(Library.GetReferencedAssemblies().Select(a => a.Name!), n => !n.StartsWith("System.", StringComparison.Ordinal) && n != "MathNet.Numerics");
}
