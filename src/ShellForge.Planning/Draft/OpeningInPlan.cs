using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>An opening as far as it is decided before the heights are: everything in plan, and what it asks of the heights.</summary>
/// <param name="Ref">Designator of the part that it is for, or its own name.</param>
internal abstract record OpeningInPlan(string Ref)
{
    /// <summary>Least room between the floor's inner face and the board, mm, and what asks for it; null for none.</summary>
    public abstract (string What, double Height)? BelowBoard { get; }

    /// <summary>What it takes of the wall; null where it leaves the wall alone.</summary>
    public abstract WallStretch? InWall { get; }

    /// <summary>Every dimension of it; null, with a refusal, where something stands in its way at its height.</summary>
    /// <param name="given">What is decided before.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public abstract OpeningPlan? AtHeight(HeightGiven given, Reasons reasons);

    /// <summary>
    /// Every dimension of one that waits for the front to be decided; null for others, and, with a refusal, without a place.
    /// </summary>
    /// <param name="given">What is decided before.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public virtual OpeningPlan? InFront(FrontGiven given, Reasons reasons) => null;
}

/// <summary>What is decided before an opening in the front is.</summary>
/// <param name="Height">What others were decided by, with all that are set already.</param>
/// <param name="Front">Window, bezel and diffuser.</param>
/// <param name="Stack">Heights.</param>
internal sealed record FrontGiven(HeightGiven Height, FrontDraft Front, StackPlan Stack);

/// <summary>What is decided before an opening is set at its height.</summary>
/// <param name="File">The board file.</param>
/// <param name="Basis">Lines and layers.</param>
/// <param name="Choice">What is settled in plan.</param>
/// <param name="Levels">Heights of floor and board.</param>
/// <param name="Before">The openings that are set already.</param>
internal sealed record HeightGiven(
    BoardFile File, PrintBasis Basis, InPlan Choice, BoardLevels Levels, ImmutableArray<OpeningPlan> Before)
{
    /// <summary>What is decided before, from what every decision starts from.</summary>
    public HeightGiven(Given given, InPlan choice, BoardLevels levels, ImmutableArray<OpeningPlan> before)
        : this(given.File, given.Basis, choice, levels, before)
    {
    }

    /// <summary>Walls and floor.</summary>
    public ShellPlan Shell => Choice.Shell;
}

/// <summary>A stretch of wall that an opening takes.</summary>
/// <param name="Through">A point of the line through its middle, in plan.</param>
/// <param name="Direction">Direction of that line, outward.</param>
/// <param name="Width">Along the wall, mm.</param>
/// <param name="HasTongue">Whether the cover has a tongue in it, which keeps the cover from turning.</param>
internal sealed record WallStretch(Point2 Through, Angle Direction, double Width, bool HasTongue);

/// <summary>A post on the floor as far as it is decided before the heights are.</summary>
/// <param name="Name">For messages: "the boss of hole 2".</param>
/// <param name="At">Its axis.</param>
/// <param name="Diameter">Its diameter, mm.</param>
/// <param name="ToRim">Whether it reaches up to the parting line, past the board.</param>
/// <param name="InCover">Whether a post of the cover stands over it.</param>
internal sealed record PostInPlan(string Name, Point2 At, double Diameter, bool ToRim, bool InCover);
