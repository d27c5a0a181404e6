using NetTopologySuite.Geometries;
using NetTopologySuite.Noding;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>
/// Splits the outlines of an overlay where they meet, by snap rounding: every corner and every crossing, rounded, claims the square of one
/// lattice step round it (its left and lower sides belong to it), and every side that passes a claimed square goes by its middle. After
/// that sides meet in corners only. All in whole numbers, so nothing is near: the library's own noder does the same in floating point
/// through trees of objects and took more than half the time of an overlay.
/// </summary>
internal sealed class LatticeNoder : INoder
{
    // Corners by string, without repeated ones: string s has those from starts[s] to starts[s + 1] - 1.
    private readonly List<(int X, int Y)> _corners = [];
    private readonly List<int> _starts = [0];
    private readonly List<object> _contexts = [];
    private readonly Dictionary<(int X, int Y), int> _pixels = [];
    private readonly List<ISegmentString> _noded = [];

    // Pixels in the order of x, then y; how many corners and passing sides each has, a crossing counting twice: from two on strings end
    // there.
    private (int X, int Y)[] _places = [];
    private int[] _visits = [];

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
        for (int s = 0; s + 1 < _starts.Count; s++)
        {
            Split(s, passed);
        }
    }

    /// <summary>Pieces of the strings that share nothing but their ends, or everything.</summary>
    public IList<ISegmentString> GetNodedSubstrings() => _noded;

    private void Take(ISegmentString line)
    {
        int start = _corners.Count;
        foreach (Coordinate c in line.Coordinates)
        {
            (int X, int Y) corner = (Lattice.ToSteps(c.X), Lattice.ToSteps(c.Y));
            if (_corners.Count == start || _corners[^1] != corner)
            {
                _corners.Add(corner);
            }
        }

        if (_corners.Count - start < 2)
        {
            _corners.RemoveRange(start, _corners.Count - start);
            return;
        }

        _starts.Add(_corners.Count);
        _contexts.Add(line.Context);
    }

    private LatticeSide[] Sides()
    {
        var sides = new List<LatticeSide>(_corners.Count);
        for (int s = 0; s + 1 < _starts.Count; s++)
        {
            for (int i = _starts[s]; i + 1 < _starts[s + 1]; i++)
            {
                sides.Add(new LatticeSide(i, _corners[i], _corners[i + 1]));
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

        _places = [.. _corners.Concat(crossings).Distinct().Order()];
        _pixels.EnsureCapacity(_places.Length);
        for (int i = 0; i < _places.Length; i++)
        {
            _pixels.Add(_places[i], i);
        }

        _visits = new int[_places.Length];
        foreach ((int X, int Y) corner in _corners)
        {
            _visits[_pixels[corner]]++;
        }

        foreach ((int X, int Y) crossing in crossings)
        {
            _visits[_pixels[crossing]] += 2;
        }
    }

    // For the side from each corner the pixels that it passes between its ends, in order; null for most.
    private List<int>?[] Passed(LatticeSide[] sides)
    {
        var passed = new List<int>?[_corners.Count];
        var heights = new HeightSpans(_places.Length, i => (_places[i].Y, _places[i].Y));
        foreach (LatticeSide side in sides)
        {
            int first = ~Array.BinarySearch(_places, (side.MinX, int.MinValue));
            int end = ~Array.BinarySearch(_places, (side.MaxX, int.MaxValue));
            for (int i = heights.Next(first, end, side.MinY, side.MaxY); i < end; i = heights.Next(i + 1, end, side.MinY, side.MaxY))
            {
                if (side.Passes(_places[i]))
                {
                    (passed[side.From] ??= []).Add(i);
                    _visits[i] += 2;
                }
            }

            passed[side.From]?.Sort((a, b) => side.Compare(_places[a], _places[b]));
        }

        return passed;
    }

    private void Split(int s, List<int>?[] passed)
    {
        var way = new List<int>();
        for (int i = _starts[s]; i < _starts[s + 1]; i++)
        {
            way.Add(_pixels[_corners[i]]);
            way.AddRange(passed[i] ?? []);
        }

        int from = 0;
        for (int i = 1; i < way.Count; i++)
        {
            // A way that turns back on itself is split there: its two halves lie on each other.
            if (i + 1 == way.Count || _visits[way[i]] > 1 || way[i - 1] == way[i + 1])
            {
                _noded.Add(new BasicSegmentString([.. way[from..(i + 1)].Select(Corner)], _contexts[s]));
                from = i;
            }
        }
    }

    private Coordinate Corner(int pixel) => new(_places[pixel].X * Lattice.Step, _places[pixel].Y * Lattice.Step);
}
