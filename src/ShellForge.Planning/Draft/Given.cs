using ShellForge.Board.Description;
using ShellForge.Planning.Remembering;

namespace ShellForge.Planning.Draft;

/// <summary>What every decision starts from.</summary>
/// <param name="File">The board file.</param>
/// <param name="Basis">Lines and layers of its printer.</param>
public sealed record Given(BoardFile File, PrintBasis Basis)
{
    /// <summary>Knows what was worked out for other housings.</summary>
    public WorkMemory Memory { get; init; } = new();

    /// <summary>Highest z of the front, mm, where the height is fixed from outside; null where it is not.</summary>
    public double? FrontAtMost { get; init; }

    /// <summary>What holds the board's rim, where the plan tries it; null for what the board file wishes.</summary>
    public HoldKind? Hold { get; init; }

    /// <summary>Room under the board, mm, that a fixed height leaves; 0 for none.</summary>
    public double BelowBoard { get; init; }

    /// <summary>What a board file gives.</summary>
    /// <param name="file">The board file.</param>
    /// <param name="memory">Knows what was worked out for other housings.</param>
    public static Given Of(BoardFile file, WorkMemory memory) => new(file, PrintBasis.Of(file.Print)) { Memory = memory };
}
