using System.Collections.Immutable;
using ShellForge.Board.Yaml;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>Writes LEDs and parts, and what their heights still need.</summary>
internal static class PartLines
{
    // The board file takes a thousand entries; the lowest passives are left out before any other part.
    private const int MostParts = 950;

    public static void Write(BoardFileLines lines, ImportedBoard board)
    {
        var written = new HashSet<int>();
        Leds(lines, board, written);
        List<int> rest =
            [.. Enumerable.Range(0, board.Parts.Length)
                .Where(i => board.Parts[i].Placed && board.Parts[i].Skip is null && !written.Contains(i))];
        rest = [.. rest.OrderBy(i => board.Parts[i].Bottom ? 0 : 1).ThenBy(i => ReferenceOrder.Key(board.Parts[i].Reference))];
        List<int> kept = [.. rest.OrderByDescending(i => board.Parts[i].Match?.Passive == true ? 0 : 1).Take(MostParts)];
        kept = [.. rest.Where(new HashSet<int>(kept).Contains)];
        if (kept.Count > 0)
        {
            lines.Value(2, "parts:");
            var names = new HashSet<string>(StringComparer.Ordinal);
            names.UnionWith(written.Select(i => board.Parts[i].Reference));
            var unknown = new List<(ImportedPart Part, string Name)>();
            foreach (int i in kept)
            {
                Part(lines, board, board.Parts[i], names, unknown);
            }

            Unknown(lines, unknown);
        }

        if (kept.Count < rest.Count)
        {
            lines.Remark(2, $"{rest.Count - kept.Count} small passives are not written: a board file takes a thousand parts");
        }

        Skipped(lines, board);
    }

    private static void Leds(BoardFileLines lines, ImportedBoard board, HashSet<int> written)
    {
        ImmutableArray<LedLine> patterns = LedLine.AllOf(board);
        bool IsKnown(LedLine line) => line.Led is not null && !line.First.Bottom;
        foreach (LedLine line in patterns.Where(line => !IsKnown(line)))
        {
            string why = line.First.Bottom ? "they sit on the bottom side" : $"no LED profile is called {line.First.Package}";
            lines.Todo(
                2, "board.pixels",
                $"{line.Members.Length} LEDs {line.First.Reference}, ... {line.Lie}, but {why}; {BoardFileWriter.PatternFound}"
                    + $"{line.Entry("\"5050\"")} with the right package");
        }

        LedLine[] known = [.. patterns.Where(IsKnown)];
        if (known.Length == 0)
        {
            if (patterns.IsEmpty)
            {
                lines.Todo(2, "board.pixels",
                    "no circle and no grid of LEDs was found; give {package: \"5050\", circle: d, count: n, from: a, direction: cw}");
            }

            lines.Value(2, "pixels: []");
            return;
        }

        if (known.Length > 1)
        {
            lines.Value(2, "pixels:");
        }

        foreach (LedLine line in known)
        {
            string entry = line.Entry(YamlText.Scalar(line.Led!.Profile));
            string source = $"{line.First.File}:{line.First.Line}, {line.Members.Length} x {line.First.Package}";
            lines.Value(known.Length > 1 ? 4 : 2, (known.Length > 1 ? "- " : "pixels: ") + entry, source);
            written.UnionWith(line.Members);
            written.UnionWith(line.Companions);
        }
    }

    private static void Part(BoardFileLines lines, ImportedBoard board, ImportedPart p, HashSet<string> names,
        List<(ImportedPart Part, string Name)> unknown)
    {
        string name = Unique(p.Reference, names);
        string source = $"{p.File}:{p.Line}, {p.Package}";
        Point2 at = p.BodyCentre;
        bool isOn = board.Outline is null || board.Outline.Outer.Contains(at);
        string place = $"at: [{Numeral.Text(at.X)}, {Numeral.Text(at.Y)}]";
        double turn = Math.Round(p.Rotation - (360 * Math.Floor(p.Rotation / 360)), 2, MidpointRounding.AwayFromZero);
        string rotation = turn is 0 or 360 ? "" : $", rotation: {Numeral.Text(turn, 2)}";
        string side = p.Bottom ? "bottom" : "top";
        string body;
        if (p.Match is { Profile.Length: > 0, IsLed: false } match && (p.HeightFrom != HeightSource.Library || p.Body.IsEmpty))
        {
            body = $"package: {YamlText.Scalar(match.Profile)}";
            body += p.HeightFrom == HeightSource.Library ? $", height: {Numeral.Text(p.Height!.Value)}"
                : match.MountingRequired ? ", height: unknown" : "";
        }
        else
        {
            Point2 size = !p.Body.IsEmpty ? p.Body.Size : p.Match is { Length: > 0 } m ? new Point2(m.Length, m.Width) : new Point2(2, 2);
            size = new Point2(Math.Clamp(size.X, 0.1, 300), Math.Clamp(size.Y, 0.1, 300));
            bool knows = p.Height is >= 0 and <= 100;
            body = knows
                ? $"size: [{Numeral.Text(size.X)}, {Numeral.Text(size.Y)}, {Numeral.Text(p.Height!.Value)}]"
                : $"size: [{Numeral.Text(size.X)}, {Numeral.Text(size.Y)}], height: unknown";
        }

        string entry = $"{{ref: {YamlText.Scalar(name)}, {body}, side: {side}, {place}{rotation}}}";
        if (!isOn)
        {
            lines.Todo(4, $"board.parts[{Plain(name)}]",
                $"{name} lies past the edge; if it is on the board, give at, or faces and past-edge: {entry}");
            return;
        }

        lines.Value(4, "- " + entry, source);
        if ((p.Height is null && p.Match?.Passive != true) || (p.Body.IsEmpty && p.Match is null))
        {
            unknown.Add((p, name));
        }
        else if (p.Match is { HasMouth: true })
        {
            lines.Todo(4, $"board.parts[{Plain(name)}].faces",
                "the angle its mouth looks to, in place of rotation; and past-edge, how far it stands out past the board's edge");
        }
    }

    // One line a package: the same number settles all of them.
    private static void Unknown(BoardFileLines lines, List<(ImportedPart Part, string Name)> unknown)
    {
        foreach (var group in unknown.GroupBy(u => u.Part.Package, StringComparer.OrdinalIgnoreCase))
        {
            List<(ImportedPart Part, string Name)> all = [.. group];
            string others = TodoLine.AlsoFor([.. all.Skip(1).Select(u => u.Name)]);
            string size = all[0].Part.Body.IsEmpty && all[0].Part.Match is null ? ", and its size, for which 2 x 2 stands in" : "";
            string filler = all[0].Part.LibraryHeight is { } h ? $" (the library's {Numeral.Text(h)} is a filler)" : "";
            lines.Todo(4, $"board.parts[{Plain(all[0].Name)}].height", $"height of {all[0].Part.Package}{filler}{size}{others}");
        }
    }

    private static void Skipped(BoardFileLines lines, ImportedBoard board)
    {
        foreach (var group in board.Parts.Where(p => p.Skip is not null).GroupBy(p => p.Skip!).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            List<string> names = [.. group.Select(p => p.Reference)];
            lines.Remark(2,
                $"not written, {group.Key}: "
                    + $"{string.Join(", ", names.Take(12))}{(names.Count > 12 ? $" and {names.Count - 12} more" : "")}");
        }
    }

    // Designators stand once in a board file; hand-over files repeat NOREFDES.
    private static string Unique(string reference, HashSet<string> names)
    {
        string name = reference.Length > 50 ? reference[..50] : reference;
        for (int i = 2; !names.Add(name); i++)
        {
            name = $"{(reference.Length > 50 ? reference[..50] : reference)}.{i}";
        }

        return name;
    }

    // Paths have no blanks and no brackets inside brackets.
    private static string Plain(string name) => string.Concat(name.Select(c => char.IsWhiteSpace(c) || c is '[' or ']' ? '_' : c));
}
