using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Drawing;

/// <summary>A circle found in a drawing.</summary>
/// <param name="Centre">Its middle in file coordinates.</param>
/// <param name="Diameter">In mm.</param>
/// <param name="Deviation">Largest distance in mm of a drawn point from it.</param>
internal readonly record struct FittedCircle(Point2 Centre, double Diameter, double Deviation);

/// <summary>Recognises loops that are circles: one full arc, several arcs round one centre, or many short lines.</summary>
internal static class CircleFit
{
    // A triangle, square or hexagon has all corners on a circle too; no exporter draws a round hole with fewer chords.
    private const int FewestChords = 8;

    public static FittedCircle? Of(OutlineLoop loop)
    {
        IReadOnlyList<EdgeSegment> segments = loop.Segments;
        if (segments.Count == 1)
        {
            return segments[0].IsFullCircle
                ? new FittedCircle(segments[0].Centre, 2 * segments[0].Radius, 0)
                : null;
        }

        var points = new List<Point2>(segments.Count * 2);
        foreach (EdgeSegment s in segments)
        {
            points.Add(s.From);
            if (s.IsArc)
            {
                points.Add(s.At(0.25));
                points.Add(s.At(0.5));
                points.Add(s.At(0.75));
            }
        }

        if (segments.All(s => s.IsArc) ? points.Count < 3 : points.Count < FewestChords)
        {
            return null;
        }

        return Through(points) is { } circle
            && circle.Deviation <= EcadTolerances.CircleFit
            && ChordsFollow(segments, circle)
                ? circle
                : null;
    }

    /// <summary>The circle with the least sum of squared algebraic distances through points; null when they lie on a line.</summary>
    public static FittedCircle? Through(IReadOnlyList<Point2> points)
    {
        if (points.Count < 3)
        {
            return null;
        }

        Point2 mean = default;
        foreach (Point2 p in points)
        {
            mean += p;
        }

        mean = (1.0 / points.Count) * mean;
        double sxx = 0, sxy = 0, syy = 0, sx = 0, sy = 0;
        foreach (Point2 p in points)
        {
            Point2 d = p - mean;
            double square = Point2.Dot(d, d);
            sxx += d.X * d.X;
            sxy += d.X * d.Y;
            syy += d.Y * d.Y;
            sx += d.X * square;
            sy += d.Y * square;
        }

        double determinant = (sxx * syy) - (sxy * sxy);
        double scale = (sxx + syy) * (sxx + syy);
        if (!(Math.Abs(determinant) > scale * EcadTolerances.ShortestStroke))
        {
            return null;
        }

        var offset = new Point2(
            ((sx * syy) - (sy * sxy)) / (2 * determinant),
            ((sy * sxx) - (sx * sxy)) / (2 * determinant));
        Point2 centre = mean + offset;
        double radius = points.Average(p => Point2.Distance(p, centre));
        double deviation = points.Max(p => Math.Abs(Point2.Distance(p, centre) - radius));
        return new FittedCircle(centre, 2 * radius, deviation);
    }

    // Flats show as chords that leave the circle; arcs of another centre were refused by the deviation already.
    private static bool ChordsFollow(IReadOnlyList<EdgeSegment> segments, FittedCircle circle)
    {
        double radius = circle.Diameter / 2;
        double allowed = Math.Max(radius * EcadTolerances.CircleChordRatio, EcadTolerances.CircleChord);
        foreach (EdgeSegment s in segments)
        {
            double sagitta = radius - Point2.Distance(circle.Centre, s.At(0.5));
            if (Math.Abs(sagitta) > (s.IsArc ? EcadTolerances.CircleFit : Math.Min(allowed, radius / 2)))
            {
                return false;
            }
        }

        return true;
    }
}
