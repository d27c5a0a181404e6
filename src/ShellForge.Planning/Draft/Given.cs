using ShellForge.Board.Description;

namespace ShellForge.Planning.Draft;

/// <summary>What every decision starts from.</summary>
/// <param name="File">The board file.</param>
/// <param name="Basis">Lines and layers of its printer.</param>
public sealed record Given(BoardFile File, PrintBasis Basis)
{
    /// <summary>What a board file gives.</summary>
    public static Given Of(BoardFile file) => new(file, PrintBasis.Of(file.Print));
}
