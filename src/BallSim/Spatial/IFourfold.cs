namespace BallSim.Spatial;

/// <summary>Work that one shot has to do at many places, four of them side by side.</summary>
internal interface IFourfold
{
    /// <summary>Does it; each number is the same in all lanes.</summary>
    void Do(Doubles4 a, Doubles4 b, Doubles4 c, Doubles4 d, Doubles4 e);
}
