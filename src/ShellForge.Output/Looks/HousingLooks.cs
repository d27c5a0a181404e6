using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Output.Light;
using ShellForge.Output.Page;

namespace ShellForge.Output.Looks;

/// <summary>What several files show of a housing, worked out once.</summary>
/// <param name="Board">The populated board, body by body.</param>
/// <param name="Bodies">Parts and board, as assembled.</param>
/// <param name="LightSheet">The pictures of the light as one PNG; null where nothing is lit.</param>
public sealed record HousingLooks(ImmutableArray<BoardMesh> Board, ImmutableArray<PageBody> Bodies, byte[]? LightSheet)
{
    /// <summary>The looks of a housing.</summary>
    public static HousingLooks Of(HousingUnderCheck housing)
    {
        ImmutableArray<BoardMesh> board = [];
        ImmutableArray<PageBody> bodies = [];
        byte[]? sheet = null;
        Parallel.Invoke(
            () => sheet = housing.Light is { } light ? LightPictures.Sheet(light) : null,
            () =>
            {
                board = BoardBodies.Of(housing.Plan);
                bodies = PageBodies.Of(housing, board);
            });
        return new HousingLooks(board, bodies, sheet);
    }
}
