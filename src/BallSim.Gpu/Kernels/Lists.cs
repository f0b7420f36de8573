using ILGPU;

namespace BallSim.Gpu;

/// <summary>Lists of shots in the card's memory, one for each thing that a shot may wait for, and their lengths: a shot goes from list to list until it has ended.</summary>
internal readonly struct Lists(ArrayView<int> shots, int room, ArrayView<int> lengths)
{
    /// <summary>Shots that slide and that roll, before their plain steps; that have come near the limit of grip; that wait for a rare event: what a round finds, and leaves to the next.</summary>
    public const int Sliding = 0, Rolling = 1, Near = 2, Rare = 3;

    /// <summary>
    /// What a round begins without: those that have slid and that have rolled in it, in the order of the lists they were taken from, so that their neighbours in a warp are those in memory; those that slip; whose slip ends when it has
    /// hardly begun; those that slide and whose run may end; those that roll and whose end takes a closer look.
    /// </summary>
    public const int Slid = 4, Rolled = 5, Slipping = 6, Sticking = 7, SlideEnds = 8, RollEnds = 9;

    /// <summary>Lists; and behind their lengths, of those that slide and that roll, how many have been taken.</summary>
    public const int Number = 10, SlideTaken = 10, RollTaken = 11, Lengths = 12;

    private readonly ArrayView<int> shots = shots, lengths = lengths;
    private readonly int room = room;

    /// <summary>The shot that this thread sees to, if there are so many.</summary>
    public bool Has(int list, out int shot)
    {
        var at = Grid.GlobalIndex.X;
        var has = at < lengths[list];
        shot = has ? Of(list)[at] : 0;
        return has;
    }

    /// <summary>Of a constant list: then the driver's compiler makes one addition of those of a warp, whose shots stay side by side. A list that is worked out, one or another, takes a nanosecond a shot, and scatters them.</summary>
    public void Add(int list, int shot) => Of(list)[Atomic.Add(ref lengths[list], 1)] = shot;

    /// <summary>Takes the next shot of a list, and puts it down at the same place of another; false: there is none.</summary>
    public bool Takes(int list, int taken, int done, out int shot)
    {
        var at = Atomic.Add(ref lengths[taken], 1);
        var takes = at < lengths[list];
        shot = 0;
        if (takes)
        {
            shot = Of(list)[at];
            Of(done)[at] = shot;
        }
        return takes;
    }

    /// <summary>Whom a list holds.</summary>
    public ArrayView<int> Of(int list) => shots.SubView((long)list * room, room);
}
