namespace BallSim;

/// <summary>The hand a bowler throws with. A left-handed shot is the mirror image of a right-handed one in the plane x = 0.</summary>
public enum Hand
{
    /// <summary>Right-handed: the gutter of the hand is at positive x, the pocket right of the head pin.</summary>
    Right = 0,

    /// <summary>Left-handed: the gutter of the hand is at negative x, the pocket left of the head pin.</summary>
    Left = 1,
}
