namespace ShellForge.Planning.Draft;

/// <summary>The lower part of the stack: floor and board, mm.</summary>
/// <param name="FloorTop">Inner face of the floor.</param>
/// <param name="BoardBottom">Bottom face of the board.</param>
/// <param name="BoardTop">Top face of the board.</param>
internal sealed record BoardLevels(double FloorTop, double BoardBottom, double BoardTop)
{
    /// <summary>What asks for the space under the board.</summary>
    public string BelowBoardFor { get; init; } = "";
}
