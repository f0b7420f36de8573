using BallSim.Gpu;
using BallSim.Motion;
using ILGPU.Runtime.Cuda;

namespace BallSim.Benchmarks;

/// <summary>The kernels as PTX, without a card: for ptxas to count registers and spills.</summary>
internal static class PtxFiles
{
    public static void Write(string folder, string[] names)
    {
        Directory.CreateDirectory(folder);
        foreach (var (law, given, effects) in new[] { ("bare", true, Effects.FreshCover), ("full", false, Effects.CoverOil | Effects.FreshCover | Effects.Dips) })
        {
            foreach (var single in new[] { true, false })
            {
                foreach (var (name, text) in KernelSet.Ptx(new(single, given, false, true, effects), CudaArchitecture.SM_80, CudaInstructionSet.ISA_78, names.Length > 0 ? names.Contains : null))
                {
                    var plain = KernelSet.IsInNumbersOfSteps(name);
                    if (single || plain)
                    {
                        File.WriteAllText(Path.Combine(folder, $"{name}-{law}-{(single && plain ? "float" : "double")}.ptx"), text);
                    }
                }
            }
        }
    }
}
