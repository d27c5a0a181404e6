using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Dxf;

/// <summary>Entities as segments, in their own coordinates; null for kinds that are no edges.</summary>
internal static class DxfShapes
{
    public static List<EdgeSegment>? Segments(DxfEntity e, string file, EcadLog log) => e.Kind switch
    {
        "LINE" => [EdgeSegment.Line(e.Point(), e.Point(11))],
        "CIRCLE" => e.Number(40) > 0 ? [EdgeSegment.Circle(e.Point(), e.Point() + new Point2(e.Number(40), 0))] : [],
        "ARC" => Arc(e),
        "LWPOLYLINE" => LightPolyline(e),
        "POLYLINE" => OldPolyline(e),
        "SPLINE" => DxfSpline.Segments(e, file, log),
        "ELLIPSE" => Ellipse(e),
        _ => null,
    };

    private static List<EdgeSegment> Arc(DxfEntity e)
    {
        Point2 centre = e.Point();
        double radius = e.Number(40);
        if (!(radius > 0))
        {
            return [];
        }

        double start = e.Number(50);
        double sweep = (((e.Number(51, 360) - start) % 360) + 360) % 360;
        sweep = sweep == 0 ? 360 : sweep;
        Point2 from = centre + Point2.Polar(radius, Angle.FromDegrees(start));
        Point2 to = sweep >= 360 ? from : centre + Point2.Polar(radius, Angle.FromDegrees(start + sweep));
        return [new EdgeSegment(from, to, centre, sweep)];
    }

    private static List<EdgeSegment> LightPolyline(DxfEntity e)
    {
        var corners = new List<(Point2 At, double Bulge)>();
        double x = 0;
        foreach ((int code, double value) in e.Numbers)
        {
            switch (code)
            {
                case 10:
                    x = value;
                    break;
                case 20:
                    corners.Add((new Point2(x, value), 0));
                    break;
                case 42 when corners.Count > 0:
                    corners[^1] = corners[^1] with { Bulge = value };
                    break;
                default:
                    break;
            }
        }

        return Polyline(corners, ((int)Math.Clamp(e.Number(70), 0, 255) & 1) == 1);
    }

    private static List<EdgeSegment>? OldPolyline(DxfEntity e)
    {
        int flags = (int)Math.Clamp(e.Number(70), 0, 255);

        // 3D polylines, meshes and polyfaces are no board edge.
        if ((flags & (8 | 16 | 64)) != 0)
        {
            return null;
        }

        // Control points of a fitted spline are marked 16 and are not on the curve.
        var corners = e.Vertices.Where(v => ((int)Math.Clamp(v.Number(70), 0, 255) & 16) == 0 && v.BadNumbers == 0)
            .Select(v => (v.Point(), v.Number(42))).ToList();
        return Polyline(corners, (flags & 1) == 1);
    }

    // A bulge is the tangent of a quarter of the arc's angle, counter-clockwise positive.
    private static List<EdgeSegment> Polyline(List<(Point2 At, double Bulge)> corners, bool closed)
    {
        var segments = new List<EdgeSegment>(corners.Count);
        int last = closed ? corners.Count : corners.Count - 1;
        for (int i = 0; i < last; i++)
        {
            (Point2 from, double bulge) = corners[i];
            Point2 to = corners[(i + 1) % corners.Count].At;
            if (from != to)
            {
                double sweep = bulge == 0 ? 0 : 4 * Trigonometry.Atan2Degrees(bulge, 1);
                segments.Add(EdgeSegment.ArcByAngle(from, to, sweep));
            }
        }

        return segments;
    }

    private static List<EdgeSegment> Ellipse(DxfEntity e)
    {
        Point2 centre = e.Point();
        Point2 major = e.Point(11);
        double ratio = e.Number(40, 1);
        if (!(major.Length > 0) || !(ratio > 0))
        {
            return [];
        }

        // Parameters run counter-clockwise from the major axis, or clockwise when seen from below.
        double turn = e.ExtrusionZ < 0 ? -1 : 1;
        Point2 minor = (ratio * turn) * new Point2(-major.Y, major.X);
        double start = Angle.FromRadians(e.Number(41)).Degrees;
        double end = Angle.FromRadians(e.Number(42, 2 * Math.PI)).Degrees;
        double sweep = end - start;
        sweep = sweep <= 0 ? sweep + 360 : sweep;
        if (!(Math.Abs(start) <= 100_000 && sweep <= 100_000))
        {
            return [];
        }

        sweep = Math.Min(sweep, 360);
        Point2 At(double degrees)
        {
            Angle a = Angle.FromDegrees(degrees);
            return centre + (a.Cos * major) + (a.Sin * minor);
        }

        // A whole turn ends exactly where it began.
        Point2 Closed(double degrees) => sweep >= 360 && degrees >= start + 360 ? At(start) : At(degrees);
        var segments = new List<EdgeSegment>();
        int pieces = Math.Max(1, (int)Math.Ceiling(sweep / 45));
        for (int i = 0; i < pieces; i++)
        {
            double to = i + 1 == pieces ? start + sweep : start + (sweep * (i + 1) / pieces);
            CurveArcs.Append(segments, Closed, start + (sweep * i / pieces), to);
        }

        return segments;
    }
}
