using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Patterns;

/// <summary>Places in columns and rows, or in one of either.</summary>
/// <param name="Order">Its columns and rows, and how they are counted.</param>
/// <param name="Pitch">From column to column and from row to row, mm.</param>
/// <param name="Middle">Its middle.</param>
/// <param name="TurnDegrees">Turn of the whole about its middle.</param>
/// <param name="Members">Which of the given things are in it.</param>
/// <param name="Skip">Places that are empty, from 1.</param>
/// <param name="Turn">How they are turned.</param>
internal sealed record GridPattern(
    GridOrder Order, Point2 Pitch, Point2 Middle, double TurnDegrees,
    ImmutableArray<int> Members, ImmutableArray<int> Skip, PatternTurn Turn = default) : PlacePattern(Members, Skip, Turn)
{
    /// <inheritdoc />
    public override int Count => Order.Count;

    /// <inheritdoc />
    public override bool Closed => Skip.Length < LineLength && !Skip.Contains(Count);

    /// <summary>Places of one line in the order of counting.</summary>
    public int LineLength => Order.ByColumns ? Order.Rows : Order.Columns;

    /// <inheritdoc />
    public override string Word => "grid";

    /// <inheritdoc />
    public override string Lie => IsRow ? "stand in a row" : "stand in columns and rows";

    /// <inheritdoc />
    public override bool IsRow => Order is { Columns: 1 } or { Rows: 1 };

    /// <inheritdoc />
    public override string Keys(Point2 centre)
    {
        string pitch = Pitch.X == Pitch.Y ? PatternText.Number(Pitch.X)
            : $"[{PatternText.Number(Pitch.X)}, {PatternText.Number(Pitch.Y)}]";
        string at = Middle == centre ? "" : $", at: [{PatternText.Number(Middle.X)}, {PatternText.Number(Middle.Y)}]";
        string turn = TurnDegrees == 0 ? "" : $", turn: {PatternText.Number(TurnDegrees)}";
        string counted = (Order.First == default ? "" : $", first: {Order.First.Word}")
            + (Order.ByColumns ? ", along: columns" : "") + (Order.Snake ? ", snake: true" : "");
        return $"grid: {{columns: {Order.Columns}, rows: {Order.Rows}, pitch: {pitch}{at}{turn}{counted}{PatternText.Skip(Skip)}}}";
    }

    /// <inheritdoc />
    public override string Words(string first) => $"in {Lines(Order.Columns, "column")} and {Lines(Order.Rows, "row")}, "
        + $"{first} at the {Order.First.Word.Replace('-', ' ')}";

    private static string Lines(int count, string word) => count == 1 ? $"one {word}" : $"{count} {word}s";

    /// <inheritdoc />
    public override Point2 At(int place)
    {
        (int column, int row) = Order.Cell(place);
        return Middle + Offset(column, row, Order.Columns, Order.Rows, Pitch).Turned(Angle.FromDegrees(TurnDegrees));
    }

    /// <inheritdoc />
    public override double DirectionDegrees(int place) => TurnDegrees;

    /// <summary>A place from the middle of a grid that is not turned; rows are counted from the top.</summary>
    public static Point2 Offset(int column, int row, int columns, int rows, Point2 pitch) =>
        new(pitch.X * (column - ((columns - 1) / 2.0)), pitch.Y * (((rows - 1) / 2.0) - row));

    /// <summary>The pattern with the turn of its members; null where it does not tell every place and turn of theirs.</summary>
    public GridPattern? Of(IReadOnlyList<PlacedThing> things) => Proven(things) is GridPattern grid ? grid.Told() : null;

    // In a turned grid, what lies along the board's axes is told so.
    private GridPattern Told() => Turn is { Follows: true, Degrees: not 0 } && TurnDegrees != 0
        && Turns.Reduced(Turn.Degrees + TurnDegrees) == 0 ? this with { Turn = new PatternTurn(false, 0) } : this;
}
