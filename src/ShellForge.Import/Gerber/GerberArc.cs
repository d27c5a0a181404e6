using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Gerber;

/// <summary>
/// Arcs as Gerber gives them: start, end, and the centre's offset from the start, rounded, so that they rarely fit exactly.
/// </summary>
internal static class GerberArc
{
    /// <summary>Multi-quadrant: signed offset, any sweep, equal ends a full circle.</summary>
    public static EdgeSegment? Through(Point2 from, Point2 to, Point2 centre, bool counterClockwise, GerberState state)
    {
        double r1 = Point2.Distance(from, centre);
        double r2 = Point2.Distance(to, centre);
        if (r1 <= EcadTolerances.SamePoint && r2 <= EcadTolerances.SamePoint)
        {
            return from == to ? null : EdgeSegment.Line(from, to);
        }

        if (from == to)
        {
            EdgeSegment circle = EdgeSegment.Circle(centre, from);
            return counterClockwise ? circle : circle.Reversed;
        }

        if (Math.Abs(r1 - r2) > EcadTolerances.ArcCentre)
        {
            state.Warn(
                "gerber-arc",
                $"an arc's centre is {Numeral.Text(Math.Abs(r1 - r2))} mm nearer to one end than to the other; the nearest centre that "
                    + $"fits is taken");
        }

        // The centre moved onto the chord's perpendicular bisector: then both ends lie on the arc exactly.
        EdgeSegment rough = EdgeSegment.ArcByCentre(from, to, centre, counterClockwise);
        Point2 chord = to - from;
        double square = Point2.Dot(chord, chord);
        if (square < EcadTolerances.SamePoint * EcadTolerances.SamePoint)
        {
            return rough;
        }

        Point2 middle = 0.5 * (from + to);
        double off = Point2.Dot(centre - middle, chord) / square;
        EdgeSegment exact = EdgeSegment.ArcByCentre(from, to, centre - (off * chord), counterClockwise);

        if (Math.Abs(exact.SweepDegrees - rough.SweepDegrees) < 90)
        {
            return exact;
        }

        // Next to a full circle the sweep may jump between nothing and a turn: then the rough one is right. A centre that fits
        // neither end makes no arc at all, which has been told.
        return Math.Abs(r1 - r2) <= EcadTolerances.ArcCentre ? rough : EdgeSegment.Line(from, to);
    }

    /// <summary>
    /// Single-quadrant: offsets without sign and at most a quarter turn, so of the four possible centres the one that makes
    /// such an arc and fits best is meant. Equal ends are an arc of no length.
    /// </summary>
    public static EdgeSegment? SingleQuadrant(Point2 from, Point2 to, Point2 offset, bool counterClockwise, GerberState state)
    {
        if (from == to)
        {
            return null;
        }

        EdgeSegment? best = null;
        double bestMisfit = double.PositiveInfinity;
        foreach (double sx in new[] { 1.0, -1.0 })
        {
            foreach (double sy in new[] { 1.0, -1.0 })
            {
                Point2 centre = from + new Point2(sx * Math.Abs(offset.X), sy * Math.Abs(offset.Y));
                double misfit = Math.Abs(Point2.Distance(from, centre) - Point2.Distance(to, centre));
                EdgeSegment arc = EdgeSegment.ArcByCentre(from, to, centre, counterClockwise);
                bool isQuarter = Math.Abs(arc.SweepDegrees) <= 91;
                misfit += isQuarter ? 0 : EcadTolerances.LargestBoard;
                if (misfit < bestMisfit)
                {
                    (best, bestMisfit) = (arc, misfit);
                }
            }
        }

        return best is { } found && bestMisfit < EcadTolerances.LargestBoard
            ? Through(from, to, found.Centre, counterClockwise, state)
            : Through(from, to, from + offset, counterClockwise, state);
    }
}
