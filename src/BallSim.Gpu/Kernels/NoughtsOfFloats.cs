using ILGPU;
using ILGPU.IR;
using ILGPU.IR.Rewriting;
using ILGPU.IR.Transformations;
using ILGPU.IR.Values;

namespace BallSim.Gpu;

/// <summary>
/// Leaves out what floats multiply by nought or add nought to: the rates of what does not act in a kernel's shots (oil on the cover, say) are nought, and they stand in every sum of a step. Not-a-numbers and signs of nought may come out
/// otherwise, so doubles, which must be the processor's to the last bit, stay as they are.
/// </summary>
internal sealed class NoughtsOfFloats : UnorderedTransformation
{
    private static readonly Rewriter rewriter = NewRewriter();

    protected override bool PerformTransformation(Method.Builder builder) => rewriter.Rewrite(builder.SourceBlocks, builder);

    private static Rewriter NewRewriter()
    {
        var made = new Rewriter();
        made.Add<TernaryArithmeticValue>(
            value => value is { BasicValueType: BasicValueType.Float32, Kind: TernaryArithmeticKind.MultiplyAdd } && (IsNought(value.First) || IsNought(value.Second)),
            (context, value) => context.ReplaceAndRemove(value, value.Third));
        // One rule for each kind of value: a second would take the place of the first.
        made.Add<BinaryArithmeticValue>(
            value => value is { BasicValueType: BasicValueType.Float32, Kind: BinaryArithmeticKind.Mul or BinaryArithmeticKind.Add or BinaryArithmeticKind.Sub } && (IsNought(value.Left) || IsNought(value.Right)),
            (context, value) => context.ReplaceAndRemove(value, value.Kind switch
            {
                BinaryArithmeticKind.Mul => context.Builder.CreatePrimitiveValue(value.Location, 0.0f),
                BinaryArithmeticKind.Add when IsNought(value.Left) => value.Right,
                BinaryArithmeticKind.Sub when IsNought(value.Left) => context.Builder.CreateArithmetic(value.Location, value.Right, UnaryArithmeticKind.Neg),
                _ => value.Left,
            }));
        return made;
    }

    private static bool IsNought(Value value) => value is PrimitiveValue { Float32Value: 0 };
}
