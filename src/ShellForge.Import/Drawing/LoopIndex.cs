using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Drawing;

/// <summary>
/// Segments of one loop sorted into horizontal bands, so that a hundred thousand holes against a long outline stay quick.
/// </summary>
internal sealed class LoopIndex
{
    private const int MostBands = 1024;

    // Long upright segments enter every band; the bands are halved until that costs no more than this many entries a segment.
    private const int EntriesPerSegment = 8;

    private readonly IReadOnlyList<EdgeSegment> _segments;
    private readonly double _bottom;
    private readonly double _bandHeight;
    private readonly List<int>[] _bands;

    public LoopIndex(IReadOnlyList<EdgeSegment> segments, Box2 bounds)
    {
        _segments = segments;
        _bottom = bounds.Min.Y;
        double height = bounds.Max.Y - bounds.Min.Y;
        int count = Math.Clamp(segments.Count, 1, MostBands);
        Box2[] boxes = [.. segments.Select(s => s.Bounds())];
        while (count > 1 && Entries(boxes, height / count) > (long)EntriesPerSegment * segments.Count)
        {
            count /= 2;
        }

        _bandHeight = height > 0 ? height / count : 1;
        _bands = new List<int>[count];
        for (int b = 0; b < count; b++)
        {
            _bands[b] = [];
        }

        for (int i = 0; i < boxes.Length; i++)
        {
            for (int b = Band(boxes[i].Min.Y); b <= Band(boxes[i].Max.Y); b++)
            {
                _bands[b].Add(i);
            }
        }
    }

    public bool Contains(Point2 p)
    {
        int crossings = 0;
        foreach (int i in _bands[Band(p.Y)])
        {
            crossings += _segments[i].Crossings(p);
        }

        return crossings % 2 == 1;
    }

    public double Distance(Point2 p, double limit)
    {
        double nearest = limit;
        int first = Band(p.Y - limit);
        int last = Band(p.Y + limit);
        for (int b = first; b <= last; b++)
        {
            foreach (int i in _bands[b])
            {
                nearest = Math.Min(nearest, _segments[i].Distance(p));
            }
        }

        return nearest;
    }

    private static long Entries(Box2[] boxes, double height)
    {
        long sum = 0;
        foreach (Box2 box in boxes)
        {
            sum += height > 0 ? (long)((box.Max.Y - box.Min.Y) / height) + 1 : 1;
        }

        return sum;
    }

    private int Band(double y)
    {
        double band = Math.Floor((y - _bottom) / _bandHeight);
        return band <= 0 ? 0 : band >= _bands.Length ? _bands.Length - 1 : (int)band;
    }
}
