using System.Reflection;
using System.Runtime.CompilerServices;
using BallSim.Motion;
using BallSim.Spatial;
using ILGPU;
using ILGPU.Backends.EntryPoints;
using ILGPU.Backends.PTX;
using ILGPU.Frontend;
using ILGPU.Frontend.Intrinsic;
using ILGPU.Runtime;
using ILGPU.Runtime.Cuda;

namespace BallSim.Gpu;

/// <summary>How methods become kernels.</summary>
internal static class KernelCompiler
{
    static KernelCompiler()
    {
        // What .NET calls a fused operation is unknown to ILGPU: see Rounding.
        Remap(typeof(Math).GetMethod(nameof(Math.FusedMultiplyAdd))!, nameof(Fused), typeof(double));
        Remap(typeof(MathF).GetMethod(nameof(MathF.FusedMultiplyAdd))!, nameof(Fused), typeof(float));
        // Unsafe.SkipInit has no body of its own. One for every type it is used with.
        foreach (var contact in new[] { typeof(State<>), typeof(Vec3<>), typeof(SlideContact<>), typeof(RollContact<>), typeof(Grip<>), typeof(CoverContact<>), typeof(DipSums<>), typeof(BareSums<>), typeof(DipPlaces<>) })
        {
            foreach (var number in new[] { typeof(DeviceDouble), typeof(DeviceSingle) })
            {
                var type = contact.MakeGenericType(number);
                var blank = typeof(KernelCompiler).GetMethod(nameof(Blank))!.MakeGenericMethod(type);
                RemappedIntrinsics.AddRemapping(typeof(Unsafe).GetMethod(nameof(Unsafe.SkipInit))!.MakeGenericMethod(type), (ref InvocationContext context) => context.Method = blank);
            }
        }
    }

    /// <summary>Makes sure that what the equations call is known to ILGPU; once for a process.</summary>
    public static void Prepare()
    {
    }

    /// <summary>A kernel as PTX, in a context of its own: one context holds the methods of all kernels compiled in it, and each would inline those of the others.</summary>
    /// <param name="architecture">Of the card.</param>
    /// <param name="instructions">That its driver knows.</param>
    /// <param name="kernel">The method.</param>
    /// <param name="whole">See <see cref="InlineHook"/>.</param>
    /// <param name="fill">Threads of a block and blocks of a multiprocessor, for which there must be registers; null: any number.</param>
    public static PTXCompiledKernel Compile(CudaArchitecture architecture, CudaInstructionSet instructions, MethodInfo kernel, bool whole, (int Threads, int Blocks)? fill)
    {
        // Divisions and roots of floats in a few instructions instead of exactly: an error of two units in the last place where the tolerance is a hundred.
        var single = kernel.GetGenericArguments() is [var number, ..] && number == typeof(DeviceSingle);
        using var context = GpuEngine.NewContext(_ => { }, single ? MathMode.Fast : MathMode.Default);
        using var backend = new PTXBackend(context, architecture, instructions, null!);
        var compiled = (PTXCompiledKernel)backend.Compile(EntryPointDescription.FromExplicitlyGroupedKernel(kernel), fill is var (threads, blocks) ? new(threads, blocks) : KernelSpecialization.Empty, new InlineHook(whole, single));
        Text(compiled) = Literals.Of(Branchless.Of(compiled.PTXAssembly));
        return compiled;
    }

    /// <summary>Stands for a b + c with one rounding.</summary>
    public static double Fused(double a, double b, double c) => Math.FusedMultiplyAdd(a, b, c);

    /// <summary>The same for floats.</summary>
    public static float Fused(float a, float b, float c) => MathF.FusedMultiplyAdd(a, b, c);

    /// <summary>Whether a method is one of these two.</summary>
    public static bool IsFused(MethodBase method) => method.DeclaringType == typeof(KernelCompiler) && method.Name == nameof(Fused);

    public static void Blank<T>(out T x)
        where T : struct => x = default;

    // What ILGPU makes of a kernel is text, which nobody else is meant to change.
    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "<PTXAssembly>k__BackingField")]
    private static extern ref string Text(PTXCompiledKernel kernel);

    private static void Remap(MethodInfo from, string to, Type number)
    {
        var target = typeof(KernelCompiler).GetMethod(to, [number, number, number])!;
        RemappedIntrinsics.AddRemapping(from, (ref InvocationContext context) => context.Method = target);
    }
}

