using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Merging;

/// <summary>Finds the circles, arcs, grids and rows that LEDs lie in, each counted as their designators run.</summary>
internal static class LedPatterns
{
    // A board file takes two thousand LEDs: of more than these, the rest is sought through for none.
    private const int MostLeds = 4000;

    // Two places are told as shortly one by one.
    private const int Fewest = 3;

    // Whole patterns of LEDs that don't count on: fewer might lie so by chance.
    private const int FewestUncounted = 4;

    /// <summary>Patterns of all LEDs on a board, in the order of their first designators.</summary>
    public static ImmutableArray<LedPattern> Of(ImmutableArray<ImportedPart> parts, ImportedOutline? outline)
    {
        if (outline is null)
        {
            return [];
        }

        HashSet<string> repeated = ReferenceOrder.Repeated(parts);
        var found = new List<LedPattern>();
        foreach (List<int> leds in Groups(parts, outline))
        {
            PlacedThing[] things = [.. leds.Select(i => new PlacedThing(parts[i].BodyCentre, parts[i].Rotation))];
            List<LedPattern> counted = [.. Counted([.. leds.Select(i => parts[i].Reference)], things, outline.Centre, repeated)];
            found.AddRange(WithUncounted(counted, things, outline.Centre)
                .Select(led => led with { Pattern = led.Pattern.Renumbered(leds) }));
        }

        return [.. found.OrderBy(led => led.Pattern.Members.Min(m => ReferenceOrder.Key(parts[m].Reference)))];
    }

    // LEDs of one package on one side of the board, in the order of their designators.
    private static IEnumerable<List<int>> Groups(ImmutableArray<ImportedPart> parts, ImportedOutline outline) =>
        parts.Select((p, i) => (Part: p, Index: i))
            .Where(p => p.Part.Placed && p.Part.Skip is null && outline.Outer.Contains(p.Part.BodyCentre)
                && (p.Part.Match?.IsLed == true || PackageBook.IsLed(p.Part.Reference, p.Part.Package, p.Part.Value)))
            .Take(MostLeds)
            .GroupBy(p => (p.Part.Package, p.Part.Bottom))
            .Select(group => group.OrderBy(p => ReferenceOrder.Key(p.Part.Reference)).Select(p => p.Index).ToList());

    private static IEnumerable<LedPattern> Counted(string[] references, PlacedThing[] things, Point2 centre, HashSet<string> repeated)
    {
        foreach ((int first, int count) in ReferenceOrder.CountedRuns(references))
        {
            int[] run = [.. Enumerable.Range(first, count)];
            if (count < Fewest || run.Any(i => repeated.Contains(references[i])))
            {
                continue;
            }

            foreach (PlacePattern pattern in PatternSearch.Counted(things[first..(first + count)], centre, Fewest))
            {
                yield return new LedPattern(pattern.Renumbered(run), true);
            }
        }
    }

    // A whole circle or grid whose designators run in no order is still one: a lamp of many single LEDs would be another. It is taken
    // where more than a third of it would stand alone or in pieces.
    private static List<LedPattern> WithUncounted(List<LedPattern> counted, PlacedThing[] things, Point2 centre)
    {
        if (counted.Sum(led => led.Pattern.Members.Length) == things.Length)
        {
            return counted;
        }

        List<LedPattern> all = counted;
        foreach (PlacePattern whole in PatternSearch.Uncounted(things, centre, FewestUncounted).Where(p => p.Closed))
        {
            var members = whole.Members.ToHashSet();
            List<LedPattern> inside = all.FindAll(led => led.Pattern.Members.Any(members.Contains));
            int pieces = inside.Count + members.Count - inside.Sum(led => led.Pattern.Members.Length);
            if (3 * pieces > members.Count && inside.TrueForAll(led => led.Pattern.Members.All(members.Contains)))
            {
                all = [.. all.Except(inside), new LedPattern(whole, false)];
            }
        }

        return all;
    }
}
