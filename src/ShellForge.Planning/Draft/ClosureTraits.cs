using ShellForge.Board.Description;

namespace ShellForge.Planning.Draft;

/// <summary>What every stage between walls and front may ask of the closure that was decided, whichever form it is.</summary>
internal abstract class ClosureTraits
{
    /// <summary>The word of a board file that asks for it.</summary>
    public abstract string Word { get; }

    /// <summary>Whether the cover turns about the axis while it closes, over whatever stands on the board.</summary>
    public abstract bool TurnsCover { get; }

    /// <summary>Why the cover's edge gets no notches for a blade; null where it gets them.</summary>
    public abstract string? NoPryNotches { get; }

    /// <summary>Whether posts of the cover may stand in a bore, so that an island of bezel has to be held there.</summary>
    public abstract bool PostsInBore(CircuitBoard board);

    /// <summary>From the parting line down to the lip's end, as far as this form needs it, mm; and what for.</summary>
    public abstract (double Length, string Why) LipOverlap(BoardFile file, LipRing lip);

    /// <summary>Least height of the cover's wall from the parting line to the front, mm.</summary>
    /// <param name="file">The board file.</param>
    /// <param name="toHold">What fingers need to hold the cover by, mm.</param>
    public abstract double CoverWallLeast(BoardFile file, double toHold);
}
