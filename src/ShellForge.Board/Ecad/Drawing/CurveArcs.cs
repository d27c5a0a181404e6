using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Ecad.Drawing;

/// <summary>
/// Turns any smooth curve into few arcs and lines that stay within a tolerance: a piece through whose start, middle and end an
/// arc runs that meets the curve in between as well is taken as that arc, otherwise it is halved. Circles come out exact.
/// </summary>
internal static class CurveArcs
{
    private const int DeepestHalving = 9;

    // A fiftieth of what a board maker holds.
    private const double Tolerance = 0.002;

    public static void Append(List<EdgeSegment> into, Func<double, Point2> curve, double from, double to) =>
        Append(into, curve, from, curve(from), to, curve(to), 0);

    private static void Append(
        List<EdgeSegment> into, Func<double, Point2> curve, double from, Point2 start, double to, Point2 end, int depth)
    {
        Point2 middle = curve((from + to) / 2);
        EdgeSegment piece = Through(start, middle, end);
        bool fits = depth >= DeepestHalving
            || into.Count >= EcadLimits.Strokes / 4
            || (piece.Distance(curve(from + (0.25 * (to - from)))) <= Tolerance
                && piece.Distance(curve(from + (0.75 * (to - from)))) <= Tolerance
                && piece.Distance(curve(from + (0.1 * (to - from)))) <= Tolerance
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
        Append(into, curve, from, start, half, middle, depth + 1);
        Append(into, curve, half, middle, to, end, depth + 1);
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
