using ShellForge.Board.Yaml;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Writing;

/// <summary>Writes LEDs and parts, those that lie in patterns together, and what their heights still need.</summary>
internal static class PartLines
{
    // The board file takes a thousand entries; the lowest passives are left out before any other part.
    private const int MostParts = 950;

    // A board file takes a thousand lines: of more parts than these, the rest is sought through for none.
    private const int MostSought = 4000;

    // Three parts in a row may be chance.
    private const int FewestTogether = 4;

    public static void Write(BoardFileLines lines, ImportedBoard board)
    {
        var written = new HashSet<int>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        PixelLines.Write(lines, board, written, names);
        List<int> rest =
            [.. Enumerable.Range(0, board.Parts.Length)
                .Where(i => board.Parts[i].Placed && board.Parts[i].Skip is null && !written.Contains(i))];
        rest = [.. rest.OrderBy(i => board.Parts[i].Bottom ? 0 : 1).ThenBy(i => ReferenceOrder.Key(board.Parts[i].Reference))];
        Dictionary<int, PlacePattern> patterns = Patterns(board, rest);
        rest.RemoveAll(patterns.Values.SelectMany(pattern => pattern.Members.Skip(1)).ToHashSet().Contains);
        List<int> kept =
            [.. rest.OrderByDescending(i => board.Parts[i].Match?.Passive == true && !patterns.ContainsKey(i) ? 0 : 1).Take(MostParts)];
        kept = [.. rest.Where(new HashSet<int>(kept).Contains)];
        if (kept.Count > 0)
        {
            // A part past the edge is a line to be settled, and a list of such lines alone is none.
            if (kept.Exists(i => board.Holds(board.Parts[i])))
            {
                lines.Value(2, "parts:");
            }

            names.UnionWith(patterns.Values.SelectMany(pattern => pattern.Members).Select(i => board.Parts[i].Reference));
            var unknown = new List<(ImportedPart Part, string Name)>();
            foreach (int i in kept)
            {
                if (patterns.TryGetValue(i, out PlacePattern? pattern))
                {
                    Together(lines, board, pattern);
                }
                else
                {
                    Part(lines, board, board.Parts[i], names, unknown);
                }
            }

            Unknown(lines, unknown);
        }

        if (kept.Count < rest.Count)
        {
            lines.Remark(2, $"{rest.Count - kept.Count} small passives are not written: a board file takes a thousand parts");
        }

        Skipped(lines, board);
    }

    /// <summary>A name that no line before has: designators stand once in a board file, and hand-over files repeat NOREFDES.</summary>
    public static string Unique(string reference, HashSet<string> names)
    {
        string name = reference.Length > 50 ? reference[..50] : reference;
        for (int i = 2; !names.Add(name); i++)
        {
            name = $"{(reference.Length > 50 ? reference[..50] : reference)}.{i}";
        }

        return name;
    }

    // Parts of one body on one side whose designators count on, by the first of each pattern that they lie in.
    private static Dictionary<int, PlacePattern> Patterns(ImportedBoard board, List<int> rest)
    {
        var patterns = new Dictionary<int, PlacePattern>();
        HashSet<string> repeated = ReferenceOrder.Repeated(board.Parts);
        var groups = rest.Take(MostSought)
            .Where(i => board.Parts[i] is var p && PartBodyText.IsAlike(p) && !repeated.Contains(p.Reference) && board.Holds(p))
            .GroupBy(i => (PartBodyText.Of(board.Parts[i]), board.Parts[i].Bottom));
        foreach (var group in groups)
        {
            List<int> parts = [.. group];
            foreach ((int first, int count) in ReferenceOrder.CountedRuns([.. parts.Select(i => board.Parts[i].Reference)]))
            {
                List<int> run = parts.GetRange(first, count);
                PlacedThing[] things = [.. run.Select(i => new PlacedThing(board.Parts[i].BodyCentre, board.Parts[i].Rotation))];
                foreach (PlacePattern pattern in PatternSearch.Counted(things, board.Outline?.Centre, FewestTogether))
                {
                    patterns.Add(run[pattern.Members[0]], pattern.Renumbered(run));
                }
            }
        }

        return patterns;
    }

    private static void Together(BoardFileLines lines, ImportedBoard board, PlacePattern pattern)
    {
        ImportedPart first = board.Parts[pattern.Members[0]];
        string places = pattern.Keys(board.Outline?.Centre ?? default);
        lines.Value(4,
            $"- {{ref: {YamlText.Scalar(first.Reference)}, {PartBodyText.Of(first)}, side: {Side(first)}, {places}"
                + $"{PatternText.Turned(pattern.Turn.Follows, pattern.Turn.Degrees)}}}",
            $"{first.File}:{first.Line}, {pattern.Members.Length} x {first.Package}");
    }

    private static string Side(ImportedPart part) => part.Bottom ? "bottom" : "top";

    private static void Part(BoardFileLines lines, ImportedBoard board, ImportedPart p, HashSet<string> names,
        List<(ImportedPart Part, string Name)> unknown)
    {
        string name = Unique(p.Reference, names);
        Point2 at = p.BodyCentre;
        string place = $"at: [{Numeral.Text(at.X)}, {Numeral.Text(at.Y)}]";
        double turn = Math.Round(Turns.Positive(p.Rotation), 2, MidpointRounding.AwayFromZero);
        string rotation = turn is 0 or 360 ? "" : $", rotation: {Numeral.Text(turn, 2)}";
        string entry = $"{{ref: {YamlText.Scalar(name)}, {PartBodyText.Of(p)}, side: {Side(p)}, {place}{rotation}}}";
        if (!board.Holds(p))
        {
            lines.Todo(4, $"board.parts[{Plain(name)}]",
                $"{name} lies past the edge; if it is on the board, give at, or faces and past-edge: {entry}");
            return;
        }

        lines.Value(4, "- " + entry, $"{p.File}:{p.Line}, {p.Package}");
        if (PartBodyText.IsOpen(p))
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

    // Paths have no blanks and no brackets inside brackets.
    private static string Plain(string name) => string.Concat(name.Select(c => char.IsWhiteSpace(c) || c is '[' or ']' ? '_' : c));
}
