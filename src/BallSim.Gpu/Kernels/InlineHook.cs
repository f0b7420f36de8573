using System.Reflection;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;
using ILGPU.Backends;
using ILGPU.IR;
using ILGPU.IR.Transformations;

namespace BallSim.Gpu;

/// <summary>
/// Decides what is inlined. A kernel of plain steps or of one kind of event becomes one method, those calls included that the processor's compiler must not inline, and what was passed by reference moves into registers. A kernel of all events has
/// some hundred different paths; in one method they would be millions of instructions. There only arithmetic is inlined, and the run lives in the thread's local memory.
/// </summary>
internal readonly struct InlineHook(bool whole, bool single) : IBackendHook
{
    public void FinishedCodeGeneration(IRContext context, Method entryPoint)
    {
        context.Transform(Transformer.Create(TransformerConfiguration.Empty, new Rounding()));
        foreach (var method in context.Methods)
        {
            if (method != entryPoint && method.HasImplementation && (whole || IsArithmetic(method.Source.DeclaringType!)))
            {
                method.AddFlags(MethodFlags.Inline);
            }
        }
        context.Transform(OptimizationLevel.O1.CreateTransformer(TransformerConfiguration.Empty, InliningMode.Aggressive));
    }

    public void InitializedKernelContext(IRContext kernelContext, Method kernelMethod)
    {
    }

    public void OptimizedKernelContext(IRContext kernelContext, Method kernelMethod)
    {
        // Noughts make noughts.
        for (var i = 0; single && i < 3; i++)
        {
            kernelContext.Transform(Transformer.Create(TransformerConfiguration.Empty, new NoughtsOfFloats()));
        }
    }

    // Numbers, vectors, the shapes of both contacts: what has no path of its own.
    private static bool IsArithmetic(Type type) => type.Namespace == typeof(Vec3<>).Namespace || type.Namespace == typeof(DeviceDouble).Namespace;
}
