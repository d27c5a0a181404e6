using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Dxf;

/// <summary>Where an inserted block goes: scaled, turned, moved, perhaps mirrored. Arcs survive only equal scales.</summary>
internal readonly record struct DxfPlacement(double Xx, double Xy, double Yx, double Yy, Point2 Shift)
{
    public static DxfPlacement Identity => new(1, 0, 0, 1, default);

    private double Determinant => (Xx * Yy) - (Xy * Yx);

    /// <summary>Whether circles stay circles.</summary>
    public bool IsSimilar
    {
        get
        {
            double first = (Xx * Xx) + (Yx * Yx);
            double second = (Xy * Xy) + (Yy * Yy);
            double skew = (Xx * Xy) + (Yx * Yy);
            return Math.Abs(first - second) <= EcadTolerances.SamePoint * first && Math.Abs(skew) <= EcadTolerances.SamePoint * first;
        }
    }

    public Point2 Apply(Point2 p) => new((Xx * p.X) + (Xy * p.Y) + Shift.X, (Yx * p.X) + (Yy * p.Y) + Shift.Y);

    public DxfPlacement Then(DxfPlacement outer) => new(
        (outer.Xx * Xx) + (outer.Xy * Yx),
        (outer.Xx * Xy) + (outer.Xy * Yy),
        (outer.Yx * Xx) + (outer.Yy * Yx),
        (outer.Yx * Xy) + (outer.Yy * Yy),
        outer.Apply(Shift));

    public static DxfPlacement Insert(Point2 basePoint, Point2 scale, Angle turn, Point2 at)
    {
        var linear = new DxfPlacement(turn.Cos * scale.X, -turn.Sin * scale.Y, turn.Sin * scale.X, turn.Cos * scale.Y, default);
        return linear with { Shift = at - linear.Apply(basePoint) };
    }

    /// <summary>Seen from below, as the extrusion direction 0,0,-1 says.</summary>
    public static DxfPlacement MirrorX => new(-1, 0, 0, 1, default);

    public void Append(List<EdgeSegment> into, EdgeSegment s)
    {
        if (!s.IsArc)
        {
            into.Add(EdgeSegment.Line(Apply(s.From), Apply(s.To)));
        }
        else if (IsSimilar)
        {
            double sweep = Determinant < 0 ? -s.SweepDegrees : s.SweepDegrees;
            Point2 from = Apply(s.From);
            into.Add(new EdgeSegment(from, s.IsFullCircle ? from : Apply(s.To), Apply(s.Centre), sweep));
        }
        else
        {
            DxfPlacement map = this;
            for (int quarter = 0; quarter < 4; quarter++)
            {
                CurveArcs.Append(into, t => map.Apply(s.At(t)), quarter / 4.0, (quarter + 1) / 4.0);
            }
        }
    }
}
