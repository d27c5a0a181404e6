using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing;

/// <summary>A printed part as solids that are not yet evaluated.</summary>
public sealed record HousingPart
{
    /// <summary>Name, also of its file.</summary>
    public required string Name { get; init; }

    /// <summary>As assembled, at the size it shall have in the hand.</summary>
    public required Solid Assembled { get; init; }

    /// <summary>As written: turned for the bed, and scaled in x and y for the shrinkage where the plan does that.</summary>
    public required Solid InPrint { get; init; }

    /// <summary>As written, without the marks inside; null where it has none.</summary>
    public required Solid? Unmarked { get; init; }

    /// <summary>The part's entry in the plan.</summary>
    public required PartPlan Plan { get; init; }
}
