using NetTopologySuite.Geometries;
using NetTopologySuite.Noding;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>
/// Splits the outlines of an overlay where they meet, by snap rounding: every corner and every crossing, rounded, claims the square of one
/// lattice step round it (its left and lower sides belong to it), and every side that passes a claimed square goes by its middle. After that
/// sides meet in corners only. All in whole numbers, so nothing is near: the library's own noder does the same in floating point through
/// trees of objects and took more than half the time of an overlay.
/// </summary>
internal sealed class LatticeNoder : INoder
{
    // Corners by string, without repeated ones: string s has those from starts[s] to starts[s + 1] - 1.
    private readonly List<(int X, int Y)> corners = [];
    private readonly List<int> starts = [0];
    private readonly List<object> contexts = [];
    private readonly Dictionary<(int X, int Y), int> pixels = [];
    private readonly List<ISegmentString> noded = [];

    // Pixels in the order of x, then y; how many corners and passing sides each has, a crossing counting twice: from two on strings end there.
    private (int X, int Y)[] places = [];
    private int[] visits = [];

    /// <summary>Splits the strings; see <see cref="GetNodedSubstrings"/>.</summary>
    public void ComputeNodes(IList<ISegmentString> segStrings)
    {
        foreach (ISegmentString line in segStrings)
        {
            Take(line);
        }

        LatticeSide[] sides = Sides();
        FindPixels(sides);
        List<int>?[] passed = Passed(sides);
        for (int s = 0; s + 1 < starts.Count; s++)
        {
            Split(s, passed);
        }
    }

    /// <summary>Pieces of the strings that share nothing but their ends, or everything.</summary>
    public IList<ISegmentString> GetNodedSubstrings() => noded;

    private void Take(ISegmentString line)
    {
        int start = corners.Count;
        foreach (Coordinate c in line.Coordinates)
        {
            (int X, int Y) corner = (Lattice.ToSteps(c.X), Lattice.ToSteps(c.Y));
            if (corners.Count == start || corners[^1] != corner)
            {
                corners.Add(corner);
            }
        }

        if (corners.Count - start < 2)
        {
            corners.RemoveRange(start, corners.Count - start);
            return;
        }

        starts.Add(corners.Count);
        contexts.Add(line.Context);
    }

    private LatticeSide[] Sides()
    {
        var sides = new List<LatticeSide>(corners.Count);
        for (int s = 0; s + 1 < starts.Count; s++)
        {
            for (int i = starts[s]; i + 1 < starts[s + 1]; i++)
            {
                sides.Add(new LatticeSide(i, corners[i], corners[i + 1]));
            }
        }

        return [.. sides];
    }

    private void FindPixels(LatticeSide[] sides)
    {
        var crossings = new List<(int X, int Y)>();
        foreach ((LatticeSide side, LatticeSide other) in LatticeSide.Pairs(sides))
        {
            if (side.Crossing(other) is { } crossing)
            {
                crossings.Add(crossing);
            }
        }

        places = [.. corners.Concat(crossings).Distinct().Order()];
        pixels.EnsureCapacity(places.Length);
        for (int i = 0; i < places.Length; i++)
        {
            pixels.Add(places[i], i);
        }

        visits = new int[places.Length];
        foreach ((int X, int Y) corner in corners)
        {
            visits[pixels[corner]]++;
        }

        foreach ((int X, int Y) crossing in crossings)
        {
            visits[pixels[crossing]] += 2;
        }
    }

    // For the side from each corner the pixels that it passes between its ends, in order; null for most.
    private List<int>?[] Passed(LatticeSide[] sides)
    {
        var passed = new List<int>?[corners.Count];
        var heights = new HeightSpans(places.Length, i => (places[i].Y, places[i].Y));
        foreach (LatticeSide side in sides)
        {
            int first = ~Array.BinarySearch(places, (side.MinX, int.MinValue));
            int end = ~Array.BinarySearch(places, (side.MaxX, int.MaxValue));
            for (int i = heights.Next(first, end, side.MinY, side.MaxY); i < end; i = heights.Next(i + 1, end, side.MinY, side.MaxY))
            {
                if (side.Passes(places[i]))
                {
                    (passed[side.From] ??= []).Add(i);
                    visits[i] += 2;
                }
            }

            passed[side.From]?.Sort((a, b) => side.Compare(places[a], places[b]));
        }

        return passed;
    }

    private void Split(int s, List<int>?[] passed)
    {
        var way = new List<int>();
        for (int i = starts[s]; i < starts[s + 1]; i++)
        {
            way.Add(pixels[corners[i]]);
            way.AddRange(passed[i] ?? []);
        }

        int from = 0;
        for (int i = 1; i < way.Count; i++)
        {
            // A way that turns back on itself is split there: its two halves lie on each other.
            if (i + 1 == way.Count || visits[way[i]] > 1 || way[i - 1] == way[i + 1])
            {
                noded.Add(new BasicSegmentString([.. way[from..(i + 1)].Select(Corner)], contexts[s]));
                from = i;
            }
        }
    }

    private Coordinate Corner(int pixel) => new(places[pixel].X * Lattice.Step, places[pixel].Y * Lattice.Step);
}
