using ShellForge.Board.Schema;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>
/// Writes an import as a board file: as short as a person would write it, each line with its source, and what the files don't
/// tell as lines still to do.
/// </summary>
public static class BoardFileWriter
{
    /// <summary>Words before a pattern of LEDs that was found and is not lit yet, as it would stand in the file.</summary>
    public const string PatternFound = "to light them: ";

    /// <summary>The text of the board file. Only for imports that were not refused.</summary>
    /// <param name="result">The import.</param>
    /// <param name="besideSchema">Whether the schema for editors lies beside it.</param>
    public static string Text(ImportResult result, bool besideSchema = true)
    {
        ImportedBoard board = result.Board;
        var lines = new BoardFileLines();
        if (besideSchema)
        {
            lines.Remark(0, EditorSchema.Comment);
        }

        lines.Remark(0, "Read from hand-over files; coordinates are theirs. Each line names its source.");
        lines.Remark(0, "A line that begins with TODO is not in those files: settle it and delete it; until then check tells it.");
        foreach (ImportedFile f in board.Files.Where(f => f.Kind is not (FileKind.Unknown or FileKind.Accompanying)))
        {
            string unit = f.Unit.Length > 0 ? $", {f.Unit}" : "";
            lines.Remark(0, $"  {f.Name}: {f.Words}{unit}");
        }

        lines.Value(0, "format: shellforge/1");
        lines.Value(0, $"name: {YamlText.Scalar(result.Options.Name)}");
        lines.Value(0, "up: 90", "the board angle that points up in use: your choice");
        lines.Value(0, "board:");
        Outline(lines, board.Outline);
        Thickness(lines, board);
        Cutouts(lines, board);
        double screwHole = HoleLines.Write(lines, board);
        PartLines.Write(lines, board);
        Housing(lines, board, screwHole);
        return lines.ToString();
    }

    private static void Outline(BoardFileLines lines, ImportedOutline? outline)
    {
        if (outline is null)
        {
            lines.Todo(2, "board.outline",
                "no file draws the edge; give {disc: d}, {ring: {outer: d, bore: d}} or {polygon: [[x, y], ...]}");
            return;
        }

        string source = $"{outline.File}:{outline.Outer.Line}";
        Point2 c = outline.Centre;
        if (outline.Outer.Circle is { } circle)
        {
            if (c.Length > EcadTolerances.SamePoint)
            {
                lines.Value(2, $"centre: [{Numeral.Text(c.X)}, {Numeral.Text(c.Y)}]", $"{source}, middle of the edge circle");
            }

            string drawn = circle.Deviation > EcadTolerances.SamePoint
                ? $", circle through its chords within {Numeral.Text(circle.Deviation, 4)} mm" : "";
            string shape = IsRing(outline)
                ? $"outline: {{ring: {{outer: {Numeral.Text(circle.Diameter)}, bore: "
                    + $"{Numeral.Text(outline.Bore!.Loop.Circle!.Value.Diameter)}}}}}"
                : $"outline: {{disc: {Numeral.Text(circle.Diameter)}}}";
            lines.Value(2, shape, source + drawn);
            return;
        }

        lines.Value(2, $"centre: [{Numeral.Text(c.X)}, {Numeral.Text(c.Y)}]",
            outline.Bore is null ? "middle of the outline's box" : "middle of the bore");
        Corners(lines, 2, "outline: {arcs: [", "]}", outline.Outer, $"{source}, {ProfileSelection.Size(outline.Outer)}, not round");
    }

    private static bool IsRing(ImportedOutline outline) =>
        outline.Outer.Circle is { } outer && outline.Bore?.Loop.Circle is { } bore
        && Point2.Distance(outer.Centre, bore.Centre) <= EcadTolerances.SameOutline && bore.Diameter >= 1
            && outer.Diameter - bore.Diameter >= 4;

    private static void Corners(BoardFileLines lines, int indent, string open, string close, OutlineLoop loop, string source)
    {
        List<string> corners = [.. OutlineCorners.Of(loop)];
        if (corners.Count <= 4)
        {
            lines.Value(indent, open + string.Join(", ", corners) + close, source);
            return;
        }

        lines.Value(indent, open, source + "; x, y, angle of the arc that leads there");
        for (int i = 0; i < corners.Count; i += 6)
        {
            lines.Value(indent + 4, string.Join(", ", corners.Skip(i).Take(6)) + (i + 6 < corners.Count ? "," : ""));
        }

        lines.Value(indent + 2, close);
    }

    private static void Thickness(BoardFileLines lines, ImportedBoard board)
    {
        if (board.Thickness is { } t)
        {
            lines.Value(2, $"thickness: {Numeral.Text(t)}", board.ThicknessFrom);
            return;
        }

        lines.Todo(2, "board.thickness", "not in the files; 1.6 is the usual one");
        lines.Value(2, "thickness: 1.6");
    }

    private static void Cutouts(BoardFileLines lines, ImportedBoard board)
    {
        if (board.Outline is not { } outline)
        {
            return;
        }

        bool ring = IsRing(outline);
        List<ImportedCutout> cutouts =
            [.. outline.Cutouts.Where(c => !c.AlsoDrilled && !HoleLines.IsHole(c) && !(ring && ReferenceEquals(c, outline.Bore)))];
        List<ImportedHole> notches =
            [.. board.Holes.Where(h => h.Kind == HoleKind.Notch && h.Diameter >= EcadTolerances.SmallestMountingHole)];
        List<ImportedSlot> slots =
            [.. board.Slots.Where(s => s.Plated == false && s.Width >= EcadTolerances.SmallestMountingHole && IsOnBoard(s, outline))];
        if (cutouts.Count + notches.Count + slots.Count == 0)
        {
            return;
        }

        lines.Value(2, "cutouts:");
        foreach (ImportedCutout c in cutouts)
        {
            string source = $"{outline.File}:{c.Loop.Line}";
            if (c.Loop.Circle is { } circle)
            {
                lines.Value(4,
                    $"- {{circle: {Numeral.Text(circle.Diameter)}, at: [{Numeral.Text(circle.Centre.X)}, "
                        + $"{Numeral.Text(circle.Centre.Y)}]}}", source);
            }
            else
            {
                Corners(lines, 4, "- {arcs: [", "]}", c.Loop, $"{source}, {ProfileSelection.Size(c.Loop)}");
            }
        }

        foreach (ImportedHole n in notches)
        {
            lines.Value(4, $"- {{circle: {Numeral.Text(n.Diameter)}, at: [{Numeral.Text(n.At.X)}, {Numeral.Text(n.At.Y)}]}}",
                $"{n.File}:{n.Line}, a drill across the edge: a notch");
        }

        foreach (ImportedSlot s in slots)
        {
            Corners(lines, 4, "- {arcs: [", "]}", SlotLoop(s), $"{s.File}:{s.Line}, slot {Numeral.Text(s.Width)} wide");
        }
    }

    private static bool IsOnBoard(ImportedSlot slot, ImportedOutline outline) => slot.Path.All(outline.Outer.Contains);

    // The tool's way from end to end, with its round ends.
    private static OutlineLoop SlotLoop(ImportedSlot slot)
    {
        Point2 a = slot.Path[0];
        Point2 b = slot.Path.MaxBy(p => Point2.Distance(a, p));
        a = slot.Path.MaxBy(p => Point2.Distance(b, p));
        Point2 along = (1 / Point2.Distance(a, b)) * (b - a);
        Point2 side = (slot.Width / 2) * new Point2(-along.Y, along.X);
        return new OutlineLoop(
            [
                EdgeSegment.Line(a - side, b - side),
                EdgeSegment.ArcByCentre(b - side, b + side, b, true),
                EdgeSegment.Line(b + side, a + side),
                EdgeSegment.ArcByCentre(a + side, a - side, a, true),
            ],
            slot.Line,
            0);
    }

    private static void Housing(BoardFileLines lines, ImportedBoard board, double screwHole)
    {
        lines.Value(0, "housing:");
        (string insert, string thread) = screwHole switch
        {
            >= 4.1 => ("m4x4-od6.0", "M4"),
            >= 3.0 => ("m3x4-od4.6", "M3"),
            >= 2.5 or 0 => ("m2.5x4-od4.6", "M2.5"),
            _ => ("m2x4-od3.6", "M2"),
        };
        string why = screwHole > 0 ? $"the {Numeral.Text(screwHole)} mm holes fit {thread}" : "no screw hole tells the thread";
        lines.Todo(2, "housing.insert", $"{why}; name the insert in your drawer by its body");
        lines.Value(2, $"insert: {insert}");
        List<string> connectors =
            [.. board.Parts.Where(p => p.Skip is null && (p.Match?.HasMouth == true || IsConnector(p.Reference))).Select(p => p.Reference)];
        if (connectors.Count > 0)
        {
            lines.Todo(2, "housing.cable",
                $"say which connector takes the cable, {string.Join(", ", connectors.Take(6))}{(connectors.Count > 6 ? ", ..." : "")}, or "
                    + $"{{round: diameter, angle: degrees}}");
        }
        else
        {
            lines.Todo(2, "housing.cable",
                "the files name no connector; say how power comes in, {round: diameter, angle: degrees}, or none");
        }

        lines.Value(2, "cable: none");
    }

    private static bool IsConnector(string reference)
    {
        (string letters, long number, string _) = ReferenceOrder.Key(reference);
        return number >= 0 && letters.ToUpperInvariant() is "J" or "P" or "CN" or "CON" or "USB";
    }
}
