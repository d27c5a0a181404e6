using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>An opening as far as it is decided before the heights are: everything in plan, and what it asks of the heights.</summary>
/// <param name="Part">The part that it is for.</param>
internal abstract record OpeningInPlan(BoardPart Part)
{
    /// <summary>Least room between the floor's inner face and the board, mm, and what asks for it; null for none.</summary>
    public abstract (string What, double Height)? BelowBoard { get; }

    /// <summary>What it takes of the wall; null where it leaves the wall alone.</summary>
    public abstract WallStretch? InWall { get; }

    /// <summary>Every dimension of it.</summary>
    /// <param name="file">The board file.</param>
    /// <param name="basis">Lines and layers.</param>
    /// <param name="shell">Walls and floor.</param>
    /// <param name="levels">Heights of floor and board.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public abstract OpeningPlan AtHeight(BoardFile file, PrintBasis basis, ShellPlan shell, BoardLevels levels, Reasons reasons);
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
internal sealed record PostInPlan(string Name, Point2 At, double Diameter);
