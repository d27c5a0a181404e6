using ShellForge.Geometry.Numerics;

namespace ShellForge.Testing;

/// <content>Places in grids and on arcs.</content>
public sealed partial class AnyBoards
{
    // LEDs in columns and rows about the board's centre, those left out that don't lie on the board.
    private void LedGrid(string led, int columns, int rows, double pitch)
    {
        double body = led == "2020" ? 1.4 : 2.9;
        double turn = Once(4) ? _dice.Next(90) : 0;
        (string first, bool byColumns, bool snake) =
            (Pick("top-left", "top-right", "bottom-left", "bottom-right"), Once(2), Once(2));
        Point2[] places = [.. Enumerable.Range(0, columns * rows).Select(i =>
        {
            int lines = byColumns ? rows : columns;
            (int line, int along) = (i / lines, i % lines);
            along = snake && line % 2 == 1 ? lines - 1 - along : along;
            (int column, int row) = byColumns ? (line, along) : (along, line);
            column = first.EndsWith("right", StringComparison.Ordinal) ? columns - 1 - column : column;
            row = first.StartsWith("bottom", StringComparison.Ordinal) ? rows - 1 - row : row;
            Point2 from = new(pitch * (column - ((columns - 1) / 2.0)), pitch * (((rows - 1) / 2.0) - row));
            return _centre + from.Turned(Angle.FromDegrees(turn));
        })];
        int[] off = [.. Enumerable.Range(0, places.Length).Where(i => !Holds(places[i], body) || Near(places[i], 2.4 * body))
            .Select(i => i + 1)];
        if (off.Length == places.Length)
        {
            return;
        }

        _leds.AddRange(places.Where((_, i) => !off.Contains(i + 1)));
        string skip = off.Length == 0 ? "" : $", skip: [{string.Join(", ", off)}]";
        string order = Mm($", first: {first}, along: {(byColumns ? "columns" : "rows")}, snake: {(snake ? "true" : "false")}, turn: {turn}");
        _lines.Add(Mm($"    - {{package: \"{led}\", grid: {{columns: {columns}, rows: {rows}, pitch: {pitch}{order}{skip}}}}}"));
    }

    // Mostly a single place, sometimes two or four of them close together.
    private string Place(double x, double y, double least)
    {
        if (!Once(5))
        {
            return Mm($"at: [{x}, {y}]");
        }

        double pitch = Tenths(least, least + 3);
        string skip = Once(3) ? ", skip: [2]" : "";
        string order =
            $"first: {Pick("top-left", "top-right", "bottom-left", "bottom-right")}, along: {Pick("rows", "columns")}, snake: {Pick("true", "false")}";
        return Mm($"grid: {{columns: {1 + _dice.Next(2)}, rows: 2, pitch: {Pick(Mm($"{pitch}"), Mm($"[{pitch}, {least}]"))}, at: [{x}, {y}], turn: {_dice.Next(90)}, {order}{skip}}}");
    }
}
