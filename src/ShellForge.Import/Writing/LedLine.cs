using System.Collections.Immutable;
using ShellForge.Import.Merging;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Writing;

/// <summary>LEDs that lie in one pattern, as an entry of the board file, with the parts that stand beside each of them.</summary>
/// <param name="board">The board.</param>
/// <param name="found">The pattern.</param>
internal sealed class LedLine(ImportedBoard board, LedPattern found)
{
    private const int MostTold = 24;

    // Three LEDs of an unknown package, or a row of them, tell what a board does: nobody looks at them as a lamp.
    private const int FewestOfLamp = 4;

    /// <summary>The pattern.</summary>
    public PlacePattern Pattern => found.Pattern;

    /// <summary>The LEDs, as indices of the board's parts, in order of their places.</summary>
    public ImmutableArray<int> Members => Pattern.Members;

    /// <summary>The LED that is counted first.</summary>
    public ImportedPart First => board.Parts[Members[0]];

    /// <summary>The profile of its package; null where no LED is called so.</summary>
    public PackageMatch? Led => First.Match is { IsLed: true } led ? led : null;

    /// <summary>Whether to ask if they shall be lit where no profile is called as they are: enough of them, and no mere row.</summary>
    public bool IsLamp => Members.Length >= FewestOfLamp && !Pattern.IsRow;

    /// <summary>The pattern for people, in one line.</summary>
    public string Words => $"{Members.Length} LEDs {Pattern.Words(First.Reference)}";

    /// <summary>All patterns of a board.</summary>
    public static ImmutableArray<LedLine> AllOf(ImportedBoard board) => [.. board.LedPatterns.Select(led => new LedLine(board, led))];

    /// <summary>The entry.</summary>
    /// <param name="package">Its package, as YAML.</param>
    /// <param name="name">The designator of the first.</param>
    /// <param name="beside">The parts beside each.</param>
    public string Entry(string package, string name, IReadOnlyList<BesideLeds> beside)
    {
        string with = beside.Count == 0 ? ""
            : $", with: {(beside.Count == 1 ? beside[0].Entry : $"[{string.Join(", ", beside.Select(each => each.Entry))}]")}";
        return $"{{package: {package}, {Pattern.Keys(board.Outline?.Centre ?? default)}, ref: {YamlText.Scalar(name)}"
            + $"{Turned()}{with}}}";
    }

    /// <summary>The designator of the first where the others count on; else a name that no part on a board has.</summary>
    /// <param name="number">The number of the entry.</param>
    public string Name(int number) => found.Counted ? First.Reference : $"{Pattern.Word}-{number}.1";

    /// <summary>Where the line was read, and what is not said in it.</summary>
    /// <param name="beside">The parts beside each.</param>
    public string Source(IReadOnlyList<BesideLeds> beside)
    {
        string named = found.Counted ? "" : $"; on the board they are {Names(Members)}";
        string also = string.Concat(beside.Where(each => !each.Counted).Select(each => $"; beside them are {Names(each.Members)}"));
        return $"{First.File}:{First.Line}, {Members.Length} x {First.Package}{named}{also}";
    }

    private string Names(ImmutableArray<int> parts) => string.Join(", ", parts.Take(MostTold).Select(i => board.Parts[i].Reference))
        + (parts.Length > MostTold ? ", ..." : "");

    private string Turned()
    {
        PatternTurn turn = Pattern.Turn;
        (string facing, double beyond) = LedFacing.Of(First, board.Outline?.Centre ?? default);
        return facing + PatternText.Turned(turn.Follows, turn.Degrees - (turn.Follows ? beyond : 0));
    }
}
