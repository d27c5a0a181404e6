using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Placement;

/// <summary>Reads one row of a table whose columns are known.</summary>
internal static class PlacementRows
{
    public static PlacementRow? Read(PlacementLayout layout, ReadOnlySpan<char> line, int number, ref double? cellUnit)
    {
        List<string> cells = layout.Cells(line);
        PlacementColumns c = layout.Columns;
        string reference = Cell(cells, c.Reference);
        if (reference.Length == 0
            || !PlacementNumber.TryRead(Cell(cells, c.X), out double x, out double? unitX)
            || !PlacementNumber.TryRead(Cell(cells, c.Y), out double y, out double? unitY))
        {
            return null;
        }

        cellUnit ??= unitX ?? unitY;
        _ = PlacementNumber.TryRead(Cell(cells, c.Rotation), out double rotation, out _);
        bool? bottom = PlacementPreamble.SideWord(Cell(cells, c.Side));
        if (bottom is null && c.Mirror >= 0)
        {
            bottom = Cell(cells, c.Mirror).ToUpperInvariant() is "YES" or "Y" or "TRUE" or "1" or "M" or "MIRROR" or "MIRRORED";
        }

        bool unplaced = c.Status >= 0 && Cell(cells, c.Status).ToUpperInvariant() is "UNPLACED" or "DNP" or "DNF" or "NOT FITTED";
        return new PlacementRow(reference, Cell(cells, c.Value), Cell(cells, c.Package), new Point2(x, y), rotation, bottom, unplaced,
            number);
    }

    private static string Cell(List<string> cells, int column) => column >= 0 && column < cells.Count ? cells[column].Trim() : "";
}
