using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Writing;

/// <summary>Writes the holes that matter to a housing: for screws and tooling, circles, arcs and grids of equal ones in one line.</summary>
internal static class HoleLines
{
    private const int MostLines = 200;

    // Two holes are told as shortly one by one.
    private const int FewestTogether = 3;

    /// <summary>Beside larger holes, smaller ones are for pins of a jig, mm: M2 is the thinnest screw with an insert.</summary>
    private const double SmallestScrewHole = 2.0;

    /// <summary>Whether a round cutout is a screw hole that no drill file lists.</summary>
    public static bool IsHole(ImportedCutout cutout) =>
        cutout.Loop.Circle is { Diameter: >= EcadTolerances.SmallestMountingHole and <= EcadTolerances.LargestMountingHole }
            && !cutout.AlsoDrilled;

    /// <summary>Writes them; returns the diameter of most screw holes, 0 without any.</summary>
    public static double Write(BoardFileLines lines, ImportedBoard board)
    {
        List<(Point2 At, double Diameter, string Source)> mounting =
            [.. board.Holes.Where(h => h.Kind == HoleKind.Mounting && h.Diameter <= 30)
                .Select(h => (h.At, h.Diameter, $"{h.File}:{h.Line}{Plated(h)}"))];
        if (board.Outline is { } outline)
        {
            mounting.AddRange(outline.Cutouts.Where(c => IsHole(c) && !ReferenceEquals(c, outline.Bore))
                .Select(c => (c.Loop.Circle!.Value.Centre, c.Loop.Circle!.Value.Diameter,
                    $"{outline.File}:{c.Loop.Line}, drawn on the outline")));
        }

        mounting = Apart(mounting);
        List<(Point2 At, double Diameter, string Source)> small =
            [.. board.Holes.Where(h => h.Kind == HoleKind.Tooling && h.Diameter >= 0.8)
                .Select(h => (h.At, h.Diameter, $"{h.File}:{h.Line}{Plated(h)}"))];
        if (mounting.Exists(h => h.Diameter >= SmallestScrewHole))
        {
            small.AddRange(mounting.Where(h => h.Diameter < SmallestScrewHole));
            mounting.RemoveAll(h => h.Diameter < SmallestScrewHole);
        }

        if (mounting.Count == 0)
        {
            lines.Todo(2, "board.holes",
                "the files have no screw hole; add {at: [x, y], diameter: d} or {circle: d, count: n, from: a, diameter: d}, or hold the "
                    + "board by its edge");
        }

        if (mounting.Count + small.Count > 0)
        {
            lines.Value(2, "holes:");
            Point2 centre = board.Outline?.Centre ?? default;
            foreach (var group in mounting.GroupBy(h => Math.Round(h.Diameter, 2)).OrderByDescending(g => g.Count())
                .ThenByDescending(g => g.Key))
            {
                Group(lines, [.. group], centre, "");
            }

            List<(Point2 At, double Diameter, string Source)> tooling = Apart([.. mounting, .. small])[mounting.Count..];
            foreach (var group in tooling.GroupBy(h => Math.Round(h.Diameter, 2)).OrderByDescending(g => g.Key))
            {
                Group(lines, [.. group], centre, ", for: tooling");
            }
        }

        Uncounted(lines, board);
        return mounting.Count == 0 ? 0
            : mounting.GroupBy(h => Math.Round(h.Diameter, 2)).OrderByDescending(g => g.Count()).ThenByDescending(g => g.Key).First().Key;
    }

    private static void Group(BoardFileLines lines, List<(Point2 At, double Diameter, string Source)> holes, Point2 centre, string purpose)
    {
        // Holes have no order of their own: that of their directions.
        holes.Sort((a, b) => Direction(a.At - centre).CompareTo(Direction(b.At - centre)));
        PlacedThing[] places = [.. holes.Select(h => new PlacedThing(h.At, null))];
        var left = new List<int>(Enumerable.Range(0, holes.Count));
        foreach (PlacePattern pattern in PatternSearch.Uncounted(places, centre, FewestTogether))
        {
            var first = holes[pattern.Members[0]];
            lines.Value(
                4, $"- {{{pattern.Keys(centre)}, diameter: {Numeral.Text(first.Diameter)}{purpose}}}",
                $"{first.Source}, one of {pattern.Members.Length}");
            left.RemoveAll(i => pattern.Members.Contains(i));
        }

        foreach (int i in left.Take(MostLines))
        {
            lines.Value(4,
                $"- {{at: [{Numeral.Text(holes[i].At.X)}, {Numeral.Text(holes[i].At.Y)}], diameter: "
                    + $"{Numeral.Text(holes[i].Diameter)}{purpose}}}", holes[i].Source);
        }

        if (left.Count > MostLines)
        {
            lines.Remark(4, $"{left.Count - MostLines} more holes of {Numeral.Text(holes[0].Diameter)} mm are not written");
        }
    }

    private static void Uncounted(BoardFileLines lines, ImportedBoard board)
    {
        int vias = board.Holes.Count(h => h.Kind == HoleKind.Via);
        int pins = board.Holes.Count(h => h.Kind == HoleKind.Pin);
        int slots = board.Slots.Length;
        string[] left =
            [.. new[] { (vias, "vias"), (pins, "holes for leads"), (slots, "slots") }.Where(kind => kind.Item1 > 0)
                .Select(kind => $"{kind.Item1} {kind.Item2}")];
        if (left.Length > 0)
        {
            lines.Remark(2, $"not written: {string.Join(", ", left)}");
        }
    }

    private static string Plated(ImportedHole h) => h.Plated switch { true => ", plated", false => ", not plated", null => "" };

    private static double Direction(Point2 p) => Angle.Of(p).Normalized.Degrees;

    // Concentric holes are one hole drilled in steps: the widest counts.
    private static List<(Point2 At, double Diameter, string Source)> Apart(List<(Point2 At, double Diameter, string Source)> holes)
    {
        var kept = new List<(Point2 At, double Diameter, string Source)>();
        foreach (var hole in holes.Take(4000))
        {
            int same = kept.FindIndex(k => Point2.Distance(k.At, hole.At) <= (k.Diameter + hole.Diameter) / 2);
            if (same < 0)
            {
                kept.Add(hole);
            }
        }

        return kept;
    }
}
