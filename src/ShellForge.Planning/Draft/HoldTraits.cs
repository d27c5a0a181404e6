using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>
/// A way to hold the board's rim in the tub, asked by every stage that its choice matters to. What it becomes is a
/// <see cref="HolderPlan"/>, which answers everybody else.
/// </summary>
internal abstract class HoldTraits
{
    /// <summary>The wish of a board file that asks for it.</summary>
    public abstract HoldKind Kind { get; }

    /// <summary>Whether what it needs is at hand: screws and inserts that the board file names.</summary>
    public virtual bool IsPossible(Given given) => true;

    /// <summary>How far from the wall's inner face the cover's lip has to reach at least, mm: what holds the rim lies under it.</summary>
    public abstract double LipReach(Given given);

    /// <summary>Its places in plan; none, with a refusal, where there is no room.</summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="shell">Walls with the ears of closure screws.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public abstract HoldInPlan InPlan(Given given, ShellPlan shell, Reasons reasons);

    /// <summary>Least space between the floor's inner face and the board, and what of it asks for that; null for none.</summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="gap">The gap round the board as it is decided, mm: what stands at the rim may have widened it.</param>
    public abstract (string What, double Height)? BelowBoard(Given given, double gap);

    /// <summary>Heights over the board's top face that the tub's rim has to reach, and what of it asks for that.</summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="gap">The same gap.</param>
    /// <param name="lip">The cover's lip, which ends over it.</param>
    public abstract IEnumerable<(string What, double Height)> OverBoard(Given given, double gap, LipSection lip);

    /// <summary>Every dimension of it; null, with a refusal, where it holds nothing.</summary>
    /// <param name="draft">What is decided before.</param>
    /// <param name="front">The cover's side.</param>
    /// <param name="closure">How the cover enters, and its posts.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public abstract HolderPlan? Plan(HousingDraft draft, FrontSide front, ClosurePlan closure, Reasons reasons);
}

/// <summary>What holds the board's rim, as far as it is settled in plan.</summary>
/// <param name="Form">Its form.</param>
/// <param name="Sites">Its places.</param>
internal sealed record HoldInPlan(HoldTraits Form, ImmutableArray<HoldSite> Sites);

/// <summary>A place at the board's rim where it is held.</summary>
/// <param name="Edge">On the board's edge.</param>
/// <param name="Outward">Unit vector away from the board.</param>
/// <param name="Lobe">The bulge of the wall there.</param>
/// <param name="Pocket">The room cut into wall and bulge, in plan.</param>
internal sealed record HoldSite(Point2 Edge, Point2 Outward, ShellLobe Lobe, Region Pocket)
{
    /// <summary>The post for a screw, in the middle of the lobe; null without one.</summary>
    public HoldPost? Post { get; init; }
}

/// <summary>A post for a screw that presses something onto the board's rim.</summary>
/// <param name="Diameter">Its diameter, mm.</param>
/// <param name="Thickness">Thickness of what it presses, mm.</param>
internal sealed record HoldPost(double Diameter, double Thickness);
