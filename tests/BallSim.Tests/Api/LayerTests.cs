using System.Reflection;
using System.Reflection.Emit;

namespace BallSim.Tests.Api;

/// <summary>
/// A folder is a namespace and uses only those above it in the list. Read from the compiled assembly: base types, interfaces, constraints,
/// attributes, fields, signatures, locals and every
/// type, method and field that the instructions name, inside generic arguments too.
/// </summary>
public class LayerTests
{
    // From the ground up. The value types beside the folders (a vector, a rotation, an error's words) are the public face of Spatial: the
    // two see each other.
    private static readonly string[] Order = ["", "Spatial", "Integration", "Lanes", "Balls", "Drilling", "Friction", "Releases", "Motion", "Shots", "Ensembles", "Sweeps", "Fitting"];

    private static readonly Assembly Library = typeof(Units).Assembly;

    private static readonly ILookup<string, string> Uses = (
        from type in Library.GetTypes()
        where Layer(type) is not null
        from used in References.Of(type)
        where Layer(used) is not null && Layer(used) != Layer(type)
        select (From: Layer(type)!, To: $"{Layer(used)}: {type.FullName} uses {used.FullName}")).Distinct().ToLookup(u => u.From, u => u.To);

    private static string? Layer(Type type) =>
        type.Assembly != Library || type.Namespace is not { } name || !(name == "BallSim" || name.StartsWith("BallSim.", StringComparison.Ordinal))
            ? null
            : name == "BallSim" ? "" : name["BallSim.".Length..].Split('.')[0];

    [Fact]
    public void A_folder_uses_only_the_folders_above_it() => Assert.Empty(
        from layer in Uses
        from use in layer
        let used = use.Split(':')[0]
        where Array.IndexOf(Order, used) > Math.Max(Array.IndexOf(Order, layer.Key), Array.IndexOf(Order, "Spatial"))
            || (layer.Key is "Spatial" && used is not "")
            || (layer.Key is "" && used is not "Spatial")
        select use);

    [Fact]
    public void Every_namespace_has_its_place_in_the_list() =>
        Assert.Empty(Library.GetTypes().Select(Layer).Where(l => l is not null && !Order.Contains(l)).Distinct());

    [Fact]
    public void The_reader_sees_what_is_there()
    {
        // A base list, a generic argument, a local inside a method body, a static call: one known use of each kind.
        Assert.Contains(typeof(BallSim.Integration.ILinear<,>), References.Of(typeof(BallSim.Motion.State<>)));
        Assert.Contains(typeof(BallSim.Motion.Run<,,>), References.Of(typeof(BallSim.Shots.Simulator)));
        Assert.Contains(typeof(BallSim.Friction.Contact), References.Of(typeof(BallSim.Shots.Simulator)));
        Assert.Contains(typeof(BallSim.Integration.RungeKutta5<,,>), References.Of(typeof(BallSim.Motion.Run<,,>)));
        Assert.Contains(Uses["Motion"], u => u.StartsWith("Integration:", StringComparison.Ordinal));
        Assert.Contains(Uses["Shots"], u => u.StartsWith("Lanes:", StringComparison.Ordinal));
    }

    /// <summary>Every type that a type names.</summary>
    private static class References
    {
        private const BindingFlags Everything = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

        private static readonly Dictionary<short, OpCode> OpCodes =
            typeof(OpCodes).GetFields().Select(f => (OpCode)f.GetValue(null)!).ToDictionary(o => o.Value);

        public static HashSet<Type> Of(Type type)
        {
            var found = new HashSet<Type>();
            void Add(Type? t)
            {
                if (t is null)
                {
                    return;
                }
                if (t.HasElementType)
                {
                    Add(t.GetElementType());
                    return;
                }
                if (t.IsGenericParameter)
                {
                    // A constraint may name its own parameter: only those of this type's declaration are walked, below.
                    return;
                }
                if (t.IsConstructedGenericType)
                {
                    foreach (var argument in t.GetGenericArguments())
                    {
                        Add(argument);
                    }
                    t = t.GetGenericTypeDefinition();
                }
                if (found.Add(t))
                {
                    Add(t.DeclaringType);
                }
            }
            void Constraints(IEnumerable<Type> arguments)
            {
                foreach (var constraint in arguments.Where(a => a.IsGenericParameter).SelectMany(a => a.GetGenericParameterConstraints()))
                {
                    Add(constraint);
                }
            }
            void Attributes(MemberInfo m)
            {
                foreach (var a in m.GetCustomAttributesData())
                {
                    Add(a.AttributeType);
                }
            }

            Add(type.BaseType);
            Array.ForEach(type.GetInterfaces(), Add);
            Constraints(type.GetGenericArguments());
            Attributes(type);
            foreach (var member in type.GetMembers(Everything))
            {
                Attributes(member);
                if (member is FieldInfo field)
                {
                    Add(field.FieldType);
                }
                if (member is not MethodBase method)
                {
                    continue;
                }
                Add((method as MethodInfo)?.ReturnType);
                foreach (var parameter in method.GetParameters())
                {
                    Add(parameter.ParameterType);
                }
                if (method.IsGenericMethodDefinition)
                {
                    Constraints(method.GetGenericArguments());
                }
                if (method.GetMethodBody() is not { } body)
                {
                    continue;
                }
                foreach (var local in body.LocalVariables)
                {
                    Add(local.LocalType);
                }
                foreach (var clause in body.ExceptionHandlingClauses.Where(c => c.Flags == ExceptionHandlingClauseOptions.Clause))
                {
                    Add(clause.CatchType);
                }
                foreach (var named in Named(method, body.GetILAsByteArray()!))
                {
                    Add(named as Type);
                    Add(named.DeclaringType);
                    if (named is FieldInfo f)
                    {
                        Add(f.FieldType);
                    }
                    if (named is MethodInfo { IsGenericMethod: true } generic)
                    {
                        Array.ForEach(generic.GetGenericArguments(), Add);
                    }
                }
            }
            return found;
        }

        // The members that the tokens of a method's instructions stand for.
        private static IEnumerable<MemberInfo> Named(MethodBase method, byte[] code)
        {
            var typeArguments = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null;
            var methodArguments = method.IsGenericMethod ? method.GetGenericArguments() : null;
            for (var i = 0; i < code.Length;)
            {
                short value = code[i++];
                if (value == 0xFE)
                {
                    value = unchecked((short)(0xFE00 | code[i++]));
                }
                var operand = OpCodes[value].OperandType;
                if (operand is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType)
                {
                    yield return method.Module.ResolveMember(BitConverter.ToInt32(code, i), typeArguments, methodArguments)!;
                }
                i += operand switch
                {
                    OperandType.InlineNone => 0,
                    OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                    OperandType.InlineVar => 2,
                    OperandType.InlineI8 or OperandType.InlineR => 8,
                    OperandType.InlineSwitch => 4 + 4 * BitConverter.ToInt32(code, i),
                    _ => 4,
                };
            }
        }
    }
}
