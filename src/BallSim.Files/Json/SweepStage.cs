namespace BallSim.Files.Json;

/// <summary>The steps of making a throw; drilling a ball and spreading oil take longest, so that they are done again only for what changed them.</summary>
internal enum SweepStage
{
    /// <summary>The ball is made and drilled.</summary>
    Ball,

    /// <summary>Its surface is finished.</summary>
    Finish,

    /// <summary>The lane is oiled.</summary>
    Lane,

    /// <summary>The hand lets go.</summary>
    Release,
}
