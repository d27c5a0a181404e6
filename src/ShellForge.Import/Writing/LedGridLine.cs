using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>A grid of LEDs as an entry of the board file.</summary>
internal sealed class LedGridLine(ImportedBoard board, PitchGrid grid)
{
    private const double SameTurn = 1.0;

    /// <summary>The LED that is counted first.</summary>
    public ImportedPart First => board.Parts[grid.Members[0]];

    /// <summary>The profile of its package; null where no LED is called so.</summary>
    public PackageMatch? Led => First.Match is { IsLed: true } led ? led : null;

    /// <summary>The entry.</summary>
    public string Entry(string package)
    {
        string pitch = Math.Abs(grid.Across - grid.Down) <= EcadTolerances.SamePoint
            ? Numeral.Text(grid.Across) : $"[{Numeral.Text(grid.Across)}, {Numeral.Text(grid.Down)}]";
        string at = board.Outline is { } outline && Point2.Distance(outline.Centre, grid.Middle) <= EcadTolerances.PitchCircle
            ? "" : $", at: [{Numeral.Text(grid.Middle.X)}, {Numeral.Text(grid.Middle.Y)}]";
        string order = (grid.First == "top-left" ? "" : $", first: {grid.First}") + (grid.ByColumns ? ", along: columns" : "")
            + (grid.Snake ? ", snake: true" : "") + (grid.Skip.IsEmpty ? "" : $", skip: [{string.Join(", ", grid.Skip)}]");
        string counted = IsCounted() ? $", ref: {YamlText.Scalar(First.Reference)}" : "";
        double turn = Math.IEEERemainder(First.Rotation, 360);
        string rotation = Math.Abs(turn) <= SameTurn
            || !grid.Members.All(m => Math.Abs(Math.IEEERemainder(board.Parts[m].Rotation - turn, 360)) <= SameTurn)
            ? "" : $", rotation: {Numeral.Text(turn, 1)}";
        return $"{{package: {package}, grid: {{columns: {grid.Columns}, rows: {grid.Rows}, pitch: {pitch}{at}{order}}}{counted}{rotation}}}";
    }

    private bool IsCounted()
    {
        (string letters, long number, string tail) = ReferenceOrder.Key(First.Reference);
        return number >= 0 && tail.Length == 0
            && grid.Members.Select((m, i) => ReferenceOrder.Key(board.Parts[m].Reference) == (letters, number + i, "")).All(same => same);
    }
}
