using ILGPU;
using ILGPU.IR;
using ILGPU.IR.Rewriting;
using ILGPU.IR.Transformations;
using ILGPU.IR.Values;

namespace BallSim.Gpu;

/// <summary>
/// Makes the card round where the processor does. Left alone, ILGPU adds up constants ((x + 1) + 2 becomes x + 3), the driver's compiler fuses products and sums as it likes, and nobody can ask for a fused operation. Here a call of
/// <see cref="KernelCompiler.Fused(double, double, double)"/> becomes that operation, and so does arithmetic of doubles, with a factor of one or -0 added, which leaves every bit of it as it is and nothing to rearrange. Floats stay free.
/// </summary>
internal sealed class Rounding : UnorderedTransformation
{
    private static readonly Rewriter rewriter = NewRewriter();

    protected override bool PerformTransformation(Method.Builder builder) => rewriter.Rewrite(builder.SourceBlocks, builder);

    private static Rewriter NewRewriter()
    {
        var made = new Rewriter();
        made.Add<MethodCall>(call => KernelCompiler.IsFused(call.Target.Source), (context, call) => Fuse(context, call, call[0], call[1], call[2]));
        made.Add<BinaryArithmeticValue>(value => value is { BasicValueType: BasicValueType.Float64, Kind: BinaryArithmeticKind.Mul or BinaryArithmeticKind.Add or BinaryArithmeticKind.Sub }, (context, value) =>
        {
            Value Constant(double number) => context.Builder.CreatePrimitiveValue(value.Location, number);
            Value left = value.Left, right = value.Right;
            var (a, b, c) = value.Kind switch
            {
                BinaryArithmeticKind.Mul => (left, right, Constant(-0.0)),
                BinaryArithmeticKind.Add => (left, Constant(1), right),
                _ => (right, Constant(-1), left),
            };
            Fuse(context, value, a, b, c);
        });
        return made;
    }

    private static void Fuse(RewriterContext context, Value old, Value a, Value b, Value c) =>
        context.ReplaceAndRemove(old, context.Builder.CreateArithmetic(old.Location, a, b, c, TernaryArithmeticKind.MultiplyAdd));
}
