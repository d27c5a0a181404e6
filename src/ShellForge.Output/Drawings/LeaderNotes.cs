using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Output.Drawings;

/// <summary>
/// Notes with leaders in a column on either side of a view: each on the side of its place, in the order of height, moved apart until
/// none stands on another. Leaders of one side then never cross.
/// </summary>
internal sealed class LeaderNotes(DrawingSheet sheet, Box2 extent)
{
    private const double RowHeight = 5.5;
    private const double Distance = 5;
    private readonly List<(Point2 Tip, string Text)> _notes = [];

    /// <summary>Adds a note on a model point.</summary>
    public void Add(Point2 tip, string text) => _notes.Add((tip, text));

    /// <summary>Draws all notes.</summary>
    public void Draw()
    {
        DrawSide(_notes.Where(note => note.Tip.X < 0), sheet.At(extent.Min).X - Distance);
        DrawSide(_notes.Where(note => note.Tip.X >= 0), sheet.At(extent.Max).X + Distance);
    }

    private void DrawSide(IEnumerable<(Point2 Tip, string Text)> notes, double column)
    {
        (Point2 Tip, string Text)[] sorted = [.. notes.OrderByDescending(note => note.Tip.Y).ThenBy(note => note.Tip.X)];
        double top = sheet.At(extent.Max).Y;
        double bottom = sheet.At(extent.Min).Y;
        double lowest = double.NegativeInfinity;
        for (int i = 0; i < sorted.Length; i++)
        {
            // No lower than leaves room for those that follow, no higher than the one before allows.
            double latest = bottom - ((sorted.Length - 1 - i) * RowHeight);
            double wished = Math.Min(sheet.At(sorted[i].Tip).Y, latest);
            double y = Math.Max(Math.Max(wished, top), lowest + RowHeight);
            DimensionLines.Leader(sheet.Svg, sheet.At(sorted[i].Tip), new Point2(column, y), sorted[i].Text);
            lowest = y;
        }
    }
}
