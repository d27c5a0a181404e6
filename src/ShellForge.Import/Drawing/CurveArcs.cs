using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Drawing;

/// <summary>
/// Turns any smooth curve into few arcs and lines that stay within a tolerance: a piece through whose start, middle and end an
/// arc runs that meets the curve in between as well is taken as that arc, otherwise it is halved. Circles come out exact.
/// </summary>
internal static class CurveArcs
{
    private const int DeepestHalving = 9;

    // Part of the curve's own size, since drawings come in inches too: below 2 um on a 60 mm board.
    private const double RelativeTolerance = 3e-5;

    public static void Append(List<EdgeSegment> into, Func<double, Point2> curve, double from, double to)
    {
        Point2 start = curve(from);
        Point2 end = curve(to);
        double size = Box2.Of([start, curve(from + (0.3 * (to - from))), curve(from + (0.6 * (to - from))), end]).Size.Length;
        Append(into, curve, (from, start), (to, end), 0, RelativeTolerance * size);
    }

    private static void Append(
        List<EdgeSegment> into, Func<double, Point2> curve, (double T, Point2 At) begin, (double T, Point2 At) finish, int depth,
        double tolerance)
    {
        ((double from, Point2 start), (double to, Point2 end)) = (begin, finish);
        Point2 middle = curve((from + to) / 2);
        EdgeSegment piece = Through(start, middle, end);
        bool fits = depth >= DeepestHalving
            || into.Count >= EcadLimits.Strokes / 4
            || (piece.Distance(curve(from + (0.25 * (to - from)))) <= tolerance
                && piece.Distance(curve(from + (0.75 * (to - from)))) <= tolerance
                && piece.Distance(curve(from + (0.1 * (to - from)))) <= tolerance
                && Math.Abs(piece.SweepDegrees) <= 180);
        if (fits)
        {
            if (start != end)
            {
                into.Add(piece);
            }

            return;
        }

        double half = (from + to) / 2;
        Append(into, curve, begin, (half, middle), depth + 1, tolerance);
        Append(into, curve, (half, middle), finish, depth + 1, tolerance);
    }

    /// <summary>The arc through three points, or the line when they lie straight.</summary>
    public static EdgeSegment Through(Point2 start, Point2 middle, Point2 end)
    {
        Point2 chord = end - start;
        double length = chord.Length;
        double rise = length > 0 ? Point2.Cross(chord, middle - start) / length : 0;
        if (Math.Abs(rise) <= EcadTolerances.ShortestStroke || CircleFit.Through([start, middle, end]) is not { } circle)
        {
            return EdgeSegment.Line(start, end);
        }

        // The middle right of the chord: the arc turns counter-clockwise.
        return EdgeSegment.ArcByCentre(start, end, circle.Centre, counterClockwise: rise < 0);
    }
}
