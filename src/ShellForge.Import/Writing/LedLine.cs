using System.Collections.Immutable;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>LEDs that lie in one pattern, as an entry of the board file.</summary>
/// <param name="board">The board.</param>
/// <param name="members">Its parts that are in the pattern, in order of their places.</param>
internal abstract class LedLine(ImportedBoard board, ImmutableArray<int> members)
{
    /// <summary>Turns that differ by less are one, degrees.</summary>
    protected const double SameTurn = 1.0;

    /// <summary>The board.</summary>
    protected ImportedBoard Board => board;

    /// <summary>The LEDs, as indices of the board's parts, in order of their places.</summary>
    public ImmutableArray<int> Members => members;

    /// <summary>The LED that is counted first.</summary>
    public ImportedPart First => board.Parts[members[0]];

    /// <summary>The profile of its package; null where no LED is called so.</summary>
    public PackageMatch? Led => First.Match is { IsLed: true } led ? led : null;

    /// <summary>Parts that stand beside the LEDs and are written with them; known once the entry was written.</summary>
    public ImmutableArray<int> Companions { get; protected set; } = [];

    /// <summary>How they lie: "stand on a circle".</summary>
    public abstract string Lie { get; }

    /// <summary>The pattern for people, in one line.</summary>
    public abstract string Words { get; }

    /// <summary>The entry.</summary>
    /// <param name="package">Its package, as YAML.</param>
    public abstract string Entry(string package);

    /// <summary>All patterns of a board.</summary>
    public static ImmutableArray<LedLine> AllOf(ImportedBoard board) =>
    [
        .. board.LedCircles.Select(circle => new LedCircleLine(board, circle)),
        .. board.LedGrids.Select(grid => new LedGridLine(board, grid)),
    ];

    /// <summary>The LEDs in order of their places.</summary>
    protected ImmutableArray<ImportedPart> Leds => [.. members.Select(m => board.Parts[m])];

    /// <summary>", ref: D1" where their designators count on from the first; else nothing.</summary>
    protected string Ref()
    {
        (string letters, long number, string tail) = ReferenceOrder.Key(First.Reference);
        bool counted = number >= 0 && tail.Length == 0
            && Leds.Select((led, i) => ReferenceOrder.Key(led.Reference) == (letters, number + i, "")).All(same => same);
        return counted ? $", ref: {YamlText.Scalar(First.Reference)}" : "";
    }

    /// <summary>", skip: [3, 4]"; nothing where no place is empty.</summary>
    protected static string Skip(ImmutableArray<int> skip) => skip.IsEmpty ? "" : $", skip: [{string.Join(", ", skip)}]";

    /// <summary>", rotation: 90"; nothing for none.</summary>
    protected static string Rotation(double degrees) => Math.Abs(degrees) <= SameTurn ? "" : $", rotation: {Numeral.Text(degrees, 1)}";

    /// <summary>A turn between -180, left out, and 180 degrees.</summary>
    protected static double Reduced(double degrees)
    {
        double turn = Math.IEEERemainder(degrees, 360);
        return turn <= -180 ? turn + 360 : turn;
    }

    /// <summary>Whether turns are the same.</summary>
    protected static bool IsSameTurn(double degrees, double other) => Math.Abs(Reduced(degrees - other)) <= SameTurn;
}
