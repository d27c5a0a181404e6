using ShellForge.Geometry.Solids;

namespace ShellForge.Housing;

/// <summary>
/// What one feature does to one part. Features know the plan and nothing of each other; the builder joins a part as
/// (all bodies) less (all cuts), so a cut always wins over a body, whichever feature brings it. Bodies that meet must overlap by
/// <see cref="Overlap"/>, cuts that leave a part must stand out of it by the same: nothing may merely touch.
/// </summary>
/// <param name="Part">Name of the part.</param>
/// <param name="Add">Body it adds; null for none.</param>
/// <param name="Cut">Body it takes away; null for none.</param>
internal sealed record FeatureContribution(string Part, Solid? Add, Solid? Cut)
{
    /// <summary>How far bodies that shall fuse reach into each other, and cutters past a face, mm.</summary>
    public const double Overlap = 0.2;

    /// <summary>How far cutters through walls and floors stand out on both sides, mm: walls are curved.</summary>
    public const double PastWall = 0.6;

    /// <summary>Whether it is a mark inside, which changes nothing that light falls on.</summary>
    public bool IsMark { get; init; }

    /// <summary>A body added to a part.</summary>
    public static FeatureContribution Adds(string part, Solid body) => new(part, body, null);

    /// <summary>A body taken from a part.</summary>
    public static FeatureContribution Cuts(string part, Solid body) => new(part, null, body);
}
