using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>A grid of LEDs as an entry of the board file.</summary>
internal sealed class LedGridLine(ImportedBoard board, PitchGrid grid) : LedLine(board, grid.Members)
{
    /// <inheritdoc />
    public override string Lie => "stand in columns and rows";

    /// <inheritdoc />
    public override string Words =>
        $"{Members.Length} LEDs in {grid.Order.Columns} columns and {grid.Order.Rows} rows, {First.Reference} at the "
            + $"{grid.Order.First.Word.Replace('-', ' ')}";

    /// <inheritdoc />
    public override string Entry(string package)
    {
        GridOrder order = grid.Order;
        string pitch = Math.Abs(grid.Across - grid.Down) <= EcadTolerances.SamePoint
            ? Numeral.Text(grid.Across) : $"[{Numeral.Text(grid.Across)}, {Numeral.Text(grid.Down)}]";
        string at = Board.Outline is { } outline && Point2.Distance(outline.Centre, grid.Middle) <= EcadTolerances.PitchCircle
            ? "" : $", at: [{Numeral.Text(grid.Middle.X)}, {Numeral.Text(grid.Middle.Y)}]";
        string counted = (order.First == default ? "" : $", first: {order.First.Word}") + (order.ByColumns ? ", along: columns" : "")
            + (order.Snake ? ", snake: true" : "");
        double turn = Reduced(First.Rotation);
        string rotation = Leds.All(led => IsSameTurn(led.Rotation, turn)) ? Rotation(turn) : "";
        return $"{{package: {package}, grid: {{columns: {order.Columns}, rows: {order.Rows}, pitch: {pitch}{at}{counted}{Skip(grid.Skip)}}}"
            + $"{Ref()}{rotation}}}";
    }
}
