using System.Collections.Immutable;
using ShellForge.Checks;
using ShellForge.Output.Light;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;

namespace ShellForge.Output.Files;

/// <summary>What several files show of a housing, worked out once.</summary>
/// <param name="Bodies">Parts and board, as assembled.</param>
/// <param name="LightSheet">The pictures of the light as one PNG; null where nothing is lit.</param>
public sealed record HousingLooks(ImmutableArray<PageBody> Bodies, byte[]? LightSheet)
{
    /// <summary>The looks of a housing.</summary>
    public static HousingLooks Of(HousingUnderCheck housing) =>
        new(PageBodies.Of(housing), housing.Light is { } light ? LightPictures.Sheet(light) : null);
}
