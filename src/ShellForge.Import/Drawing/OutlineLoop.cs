using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Drawing;

/// <summary>A closed chain of segments, counter-clockwise, each starting where the one before ends.</summary>
internal sealed class OutlineLoop
{
    private LoopIndex? _index;

    public OutlineLoop(IReadOnlyList<EdgeSegment> segments, int line, double largestGap)
    {
        double area = segments.Sum(s => s.AreaShare());
        Segments = area >= 0 ? segments : [.. segments.Reverse().Select(s => s.Reversed)];
        Area = Math.Abs(area);
        Line = line;
        LargestGap = largestGap;
        Box2 box = Box2.Empty;
        foreach (EdgeSegment s in segments)
        {
            Box2 b = s.Bounds();
            box = box.Including(b.Min).Including(b.Max);
        }

        Bounds = box;
        Circle = CircleFit.Of(this);
    }

    public IReadOnlyList<EdgeSegment> Segments { get; }

    /// <summary>Enclosed area in mm2, arcs as true arcs.</summary>
    public double Area { get; }

    public Box2 Bounds { get; }

    /// <summary>Line of the file where the loop's first stroke stands.</summary>
    public int Line { get; }

    /// <summary>Largest distance in mm that was bridged to close it.</summary>
    public double LargestGap { get; }

    /// <summary>The circle this loop is, if it is one.</summary>
    public FittedCircle? Circle { get; }

    public bool Contains(Point2 p) => Index.Contains(p);

    /// <summary>Distance in mm from a point to the loop, or the limit when it is farther.</summary>
    public double Distance(Point2 p, double limit) => Index.Distance(p, limit);

    public OutlineLoop Moved(Point2 by) => new([.. Segments.Select(s => s.Moved(by))], Line, LargestGap);

    private LoopIndex Index => _index ??= new LoopIndex(Segments, Bounds);
}
