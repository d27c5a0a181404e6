using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Output.Light;
using ShellForge.Output.Page;
using ShellForge.Physics.Light;
using ShellForge.Planning.Remembering;

namespace ShellForge.Output.Looks;

/// <summary>What several files show of a housing, worked out once.</summary>
/// <param name="Board">The populated board, body by body.</param>
/// <param name="Bodies">Parts and board, as assembled.</param>
/// <param name="LightSheet">The pictures of the light as one PNG; null where nothing is lit.</param>
/// <param name="Memory">Knows what was drawn of other housings.</param>
public sealed record HousingLooks(
    ImmutableArray<BoardMesh> Board, ImmutableArray<PageBody> Bodies, byte[]? LightSheet, WorkMemory Memory)
{
    /// <summary>The looks of a housing.</summary>
    public static HousingLooks Of(HousingUnderCheck housing)
    {
        ImmutableArray<BoardMesh> board = [];
        ImmutableArray<PageBody> bodies = [];
        byte[]? sheet = null;
        Parallel.Invoke(
            () => sheet = housing.Light is { } light
                ? housing.Memory.Of(new SheetKey(light.Map), () => LightPictures.Sheet(light), png => png.Length) : null,
            () =>
            {
                board = BoardBodies.Of(housing.Plan);
                bodies = PageBodies.Of(housing, board);
            });
        return new HousingLooks(board, bodies, sheet, housing.Memory);
    }

    private sealed record SheetKey(LightMap Map);
}
