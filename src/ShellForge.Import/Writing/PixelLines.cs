using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Writing;

/// <summary>Writes LEDs: patterns in a line each, then those that stand alone, all in the order of their designators.</summary>
internal static class PixelLines
{
    // What a list in a board file takes.
    private const int MostLines = 1000;

    /// <summary>Writes them.</summary>
    /// <param name="lines">Where to.</param>
    /// <param name="board">The board.</param>
    /// <param name="written">Takes the parts that were written.</param>
    /// <param name="names">Takes their names.</param>
    public static void Write(BoardFileLines lines, ImportedBoard board, HashSet<int> written, HashSet<string> names)
    {
        ImmutableArray<LedLine> patterns = LedLine.AllOf(board);
        bool IsKnown(LedLine line) => line.Led is not null && !line.First.Bottom;
        LedLine[] asked = [.. patterns.Where(line => !IsKnown(line) && line.IsLamp)];
        foreach (LedLine line in asked)
        {
            string why = line.First.Bottom ? "they sit on the bottom side" : $"no LED profile is called {line.First.Package}";
            lines.Todo(
                2, "board.pixels",
                $"{line.Members.Length} LEDs {line.First.Reference}, ... {line.Pattern.Lie}, but {why}; {BoardFileWriter.PatternFound}"
                    + $"{line.Entry("\"5050\"", line.First.Reference, [])} with the right package");
        }

        var entries = new List<(ImportedPart First, string Entry, string Source)>();
        var free = new HashSet<int>(Enumerable.Range(0, board.Parts.Length).Where(i => IsFree(board, board.Parts[i])));
        foreach (LedLine line in patterns.Where(IsKnown))
        {
            List<BesideLeds> beside = BesideLeds.Of(board, line.Pattern, free);
            free.ExceptWith(beside.SelectMany(each => each.Members));
            written.UnionWith(line.Members);
            written.UnionWith(beside.SelectMany(each => each.Members));
            string package = YamlText.Scalar(line.Led!.Profile);
            entries.Add((line.First, line.Entry(package, line.Name(entries.Count + 1), beside), line.Source(beside)));
        }

        names.UnionWith(written.Select(i => board.Parts[i].Reference));
        int[] alone = [.. Enumerable.Range(0, board.Parts.Length).Where(i => IsLit(board, board.Parts[i]) && !written.Contains(i))
            .OrderBy(i => ReferenceOrder.Key(board.Parts[i].Reference)).Take(MostLines - entries.Count)];
        written.UnionWith(alone);
        entries.AddRange(alone.Select(i => (board.Parts[i], Alone(board, board.Parts[i], names),
            $"{board.Parts[i].File}:{board.Parts[i].Line}, {board.Parts[i].Package}")));
        if (entries.Count == 0 && asked.Length == 0)
        {
            lines.Todo(2, "board.pixels",
                "no LED that a profile is made for was found on the LED side; "
                    + "give {package: \"5050\", circle: d, count: n, from: a, direction: cw}");
        }

        Entries(lines, [.. entries.OrderBy(entry => ReferenceOrder.Key(entry.First.Reference))]);
    }

    private static void Entries(BoardFileLines lines, List<(ImportedPart First, string Entry, string Source)> entries)
    {
        if (entries.Count == 0)
        {
            lines.Value(2, "pixels: []");
            return;
        }

        if (entries.Count > 1)
        {
            lines.Value(2, "pixels:");
        }

        foreach ((_, string entry, string source) in entries)
        {
            lines.Value(entries.Count > 1 ? 4 : 2, (entries.Count > 1 ? "- " : "pixels: ") + entry, source);
        }
    }

    private static bool IsFree(ImportedBoard board, ImportedPart part) =>
        part.Placed && part.Skip is null && PartBodyText.IsAlike(part) && board.Holds(part);

    private static bool IsLit(ImportedBoard board, ImportedPart part) =>
        part is { Placed: true, Skip: null, Bottom: false, Match.IsLed: true } && board.Holds(part);

    private static string Alone(ImportedBoard board, ImportedPart led, HashSet<string> names)
    {
        Point2 at = led.BodyCentre;
        string name = YamlText.Scalar(PartLines.Unique(led.Reference, names));
        string facing = LedFacing.Of(led, board.Outline?.Centre ?? default).Key;
        return $"{{package: {YamlText.Scalar(led.Match!.Profile)}, at: [{Numeral.Text(at.X)}, {Numeral.Text(at.Y)}], "
            + $"ref: {name}{facing}{PatternText.Rotation(Math.Round(led.Rotation, 2))}}}";
    }
}
