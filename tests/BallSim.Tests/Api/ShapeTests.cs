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
        Assert.Empty(Public.Where(t => !IsFit(t)).Select(t => t.FullName));

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
