using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Drawing;

/// <summary>
/// A straight line or a circular arc, directed, in mm. An arc has a centre and a sweep, counter-clockwise positive; a sweep of
/// a full turn starts and ends at the same point. A line has no sweep and its centre means nothing.
/// </summary>
internal readonly record struct EdgeSegment(Point2 From, Point2 To, Point2 Centre, double SweepDegrees)
{
    public bool IsArc => SweepDegrees != 0;

    public bool IsFullCircle => Math.Abs(SweepDegrees) >= 360;

    public double Radius => IsArc ? Point2.Distance(Centre, From) : 0;

    public double Length => IsArc
        ? Math.Abs(SweepDegrees) * (Math.PI / 180) * Radius
        : Point2.Distance(From, To);

    public EdgeSegment Reversed => new(To, From, Centre, -SweepDegrees);

    public static EdgeSegment Line(Point2 from, Point2 to) => new(from, to, default, 0);

    public static EdgeSegment Circle(Point2 centre, Point2 on) => new(on, on, centre, 360);

    /// <summary>The arc from a point to a point that turns by an angle: positive counter-clockwise, its size below a full turn.</summary>
    public static EdgeSegment ArcByAngle(Point2 from, Point2 to, double sweepDegrees)
    {
        double half = sweepDegrees / 2;
        double sine = Trigonometry.SinDegrees(half);
        if (sine == 0)
        {
            return Line(from, to);
        }

        // The centre lies on the perpendicular bisector; to its left for a counter-clockwise minor arc.
        Point2 chord = to - from;
        double along = 0.5 * Trigonometry.CosDegrees(half) / sine;
        Point2 centre = (0.5 * (from + to)) + new Point2(-chord.Y * along, chord.X * along);
        return new EdgeSegment(from, to, centre, sweepDegrees);
    }

    /// <summary>The arc round a centre from a direction to a direction; equal ends make a full circle.</summary>
    public static EdgeSegment ArcByCentre(Point2 from, Point2 to, Point2 centre, bool counterClockwise)
    {
        double start = Trigonometry.Atan2Degrees(from.Y - centre.Y, from.X - centre.X);
        double end = Trigonometry.Atan2Degrees(to.Y - centre.Y, to.X - centre.X);
        double sweep = counterClockwise ? end - start : start - end;
        sweep = sweep <= 0 ? sweep + 360 : sweep;
        if (from == to)
        {
            sweep = 360;
        }

        return new EdgeSegment(from, to, centre, counterClockwise ? sweep : -sweep);
    }

    /// <summary>The point at a part of the way, 0 to 1.</summary>
    public Point2 At(double part)
    {
        if (!IsArc)
        {
            return From + (part * (To - From));
        }

        return Centre + (From - Centre).Turned(Angle.FromDegrees(SweepDegrees * part));
    }

    /// <summary>Unit direction of travel at the start.</summary>
    public Point2 StartDirection()
    {
        Point2 d = IsArc ? Quarter(From - Centre) : To - From;
        double length = d.Length;
        return length > 0 ? (1 / length) * d : default;
    }

    /// <summary>The smallest axis-parallel box round the segment, extremes of the arc included.</summary>
    public Box2 Bounds()
    {
        Box2 box = Box2.Empty.Including(From).Including(To);
        if (!IsArc)
        {
            return box;
        }

        double radius = Radius;
        double start = Trigonometry.Atan2Degrees(From.Y - Centre.Y, From.X - Centre.X);
        for (int quarter = 0; quarter < 4; quarter++)
        {
            double turn = SweepDegrees > 0 ? (quarter * 90) - start : start - (quarter * 90);
            turn = ((turn % 360) + 360) % 360;
            if (turn <= Math.Abs(SweepDegrees))
            {
                box = box.Including(Centre + Point2.Polar(radius, Angle.FromDegrees(quarter * 90)));
            }
        }

        return box;
    }

    /// <summary>The segment's share of the area enclosed by its loop: counter-clockwise positive.</summary>
    public double AreaShare()
    {
        double chord = 0.5 * Point2.Cross(From, To);
        if (!IsArc)
        {
            return chord;
        }

        double radius = Radius;
        double radians = SweepDegrees * (Math.PI / 180);
        return chord + (0.5 * radius * radius * (radians - Trigonometry.SinDegrees(SweepDegrees)));
    }

    /// <summary>Distance in mm from a point to the nearest point of the segment.</summary>
    public double Distance(Point2 p)
    {
        if (IsArc)
        {
            if (Covers(p))
            {
                return Math.Abs(Point2.Distance(p, Centre) - Radius);
            }

            return Math.Min(Point2.Distance(p, From), Point2.Distance(p, To));
        }

        Point2 d = To - From;
        double square = Point2.Dot(d, d);
        double t = square > 0 ? Math.Clamp(Point2.Dot(p - From, d) / square, 0, 1) : 0;
        return Point2.Distance(p, From + (t * d));
    }

    /// <summary>How often a ray from the point along +x crosses the segment, for the odd-even rule.</summary>
    public int Crossings(Point2 p)
    {
        if (!IsArc)
        {
            return CrossesLine(p, From, To) ? 1 : 0;
        }

        // The chord's crossing, corrected when the point lies between chord and arc: for arcs up to half a turn that
        // is exact, and longer arcs are halved.
        if (Math.Abs(SweepDegrees) > 180)
        {
            Point2 middle = At(0.5);
            var first = new EdgeSegment(From, middle, Centre, SweepDegrees / 2);
            var second = new EdgeSegment(middle, To, Centre, SweepDegrees / 2);
            return first.Crossings(p) + second.Crossings(p);
        }

        int crossings = CrossesLine(p, From, To) ? 1 : 0;
        Point2 d = To - From;
        double side = Point2.Cross(d, p - From);

        // A point on the chord itself counts as the line test counts it: a hair to the right, and a hair of that hair above.
        side = side != 0 ? side : d.Y != 0 ? -d.Y : d.X;
        bool beyondChord = SweepDegrees > 0 ? side < 0 : side > 0;
        return beyondChord && Point2.Distance(p, Centre) < Radius ? crossings + 1 : crossings;
    }

    public EdgeSegment Moved(Point2 by) => new(From + by, To + by, Centre + by, SweepDegrees);

    private bool Covers(Point2 p)
    {
        double start = Trigonometry.Atan2Degrees(From.Y - Centre.Y, From.X - Centre.X);
        double here = Trigonometry.Atan2Degrees(p.Y - Centre.Y, p.X - Centre.X);
        double turn = SweepDegrees > 0 ? here - start : start - here;
        turn = ((turn % 360) + 360) % 360;
        return turn <= Math.Abs(SweepDegrees);
    }

    private Point2 Quarter(Point2 r) => SweepDegrees > 0 ? new Point2(-r.Y, r.X) : new Point2(r.Y, -r.X);

    private static bool CrossesLine(Point2 p, Point2 a, Point2 b)
    {
        if ((a.Y > p.Y) == (b.Y > p.Y))
        {
            return false;
        }

        return p.X < a.X + ((p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X));
    }
}
