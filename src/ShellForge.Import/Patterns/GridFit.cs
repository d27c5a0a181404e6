using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Patterns;

/// <summary>Columns and rows through points, before they are counted.</summary>
/// <param name="Columns">Columns.</param>
/// <param name="Rows">Rows.</param>
/// <param name="Cells">Column from the left and row from the top of each point.</param>
/// <param name="Pitch">From column to column and from row to row; 0 where there is one alone.</param>
/// <param name="Middle">Its middle.</param>
/// <param name="TurnDegrees">Its turn, above -45 and up to 45 degrees.</param>
internal sealed record GridFit(int Columns, int Rows, (int Column, int Row)[] Cells, Point2 Pitch, Point2 Middle, double TurnDegrees)
{
    // What the board file takes.
    private const int MostLines = 100;
    private const int MostPlaces = 1000;
    private const double WidestPitch = 200;
    private const double Widest = 4000;

    // Points of one line differ by the files' rounding, and by what the direction found so far is off over a distance twice as long.
    private const double OnLine = 0.2;

    // Each pass leaves a small part of what the one before was off.
    private const int Passes = 4;

    /// <summary>The grid through points; null where they lie in none.</summary>
    /// <param name="points">The points.</param>
    /// <param name="counted">Whether those that follow each other are neighbours, most of them.</param>
    public static GridFit? Through(Point2[] points, bool counted)
    {
        // Nothing in a grid is nearer to each other than two neighbours in a line.
        IEnumerable<Point2> steps = counted ? points.Zip(points.Skip(1), (a, b) => b - a)
            : points.SelectMany((a, i) => points.Skip(i + 1).Select(b => b - a));
        Point2 nearest = steps.MinBy(step => step.Length);
        return nearest.Length is > 0 and <= 2 * WidestPitch && Array.TrueForAll(points, p => Point2.Distance(p, points[0]) <= Widest)
            ? Along(points, Direction(points, nearest)) : null;
    }

    /// <summary>How far the farthest point lies from its place.</summary>
    public double Farthest(Point2[] points)
    {
        double farthest = 0;
        for (int i = 0; i < points.Length; i++)
        {
            Point2 offset = GridPattern.Offset(Cells[i].Column, Cells[i].Row, Columns, Rows, Pitch);
            farthest = Math.Max(farthest, Point2.Distance(points[i], Middle + offset.Turned(Angle.FromDegrees(TurnDegrees))));
        }

        return farthest;
    }

    // From a step between neighbours to ever farther points in the same line or across it: the farther, the truer.
    private static double Direction(Point2[] points, Point2 step)
    {
        double turn = Square(Angle.Of(step).Degrees);
        double last = points.Max(p => Point2.Distance(p, points[0]));
        for (double reach = 2 * step.Length; ; reach *= 2)
        {
            Point2 far = default;
            foreach (Point2 p in points)
            {
                Point2 from = p - points[0];
                Point2 here = from.Turned(Angle.FromDegrees(-turn));
                if (from.Length <= reach && from.Length > far.Length && Math.Min(Math.Abs(here.X), Math.Abs(here.Y)) <= OnLine)
                {
                    far = from;
                }
            }

            turn = far.Length > step.Length ? turn + Square(Angle.Of(far).Degrees - turn) : turn;
            if (reach > last)
            {
                return Square(turn);
            }
        }
    }

    // The same directions of columns and rows, nearest to none at all.
    private static double Square(double degrees) => Math.IEEERemainder(degrees, 90);

    private static GridFit? Along(Point2[] points, double turn)
    {
        Point2[] here = [.. points.Select(p => (p - points[0]).Turned(Angle.FromDegrees(-turn)))];
        if (GridLines.Of([.. here.Select(p => p.X)], MostLines) is not { } across
            || GridLines.Of([.. here.Select(p => p.Y)], MostLines) is not { } up
            || across.Count * up.Count > Math.Min(MostPlaces, (2 * points.Length) + Math.Max(across.Count, up.Count)))
        {
            return null;
        }

        var cells = new (int Column, int Row)[points.Length];
        for (int i = 0; i < points.Length; i++)
        {
            cells[i] = (across.Indices[i], up.Count - 1 - up.Indices[i]);
        }

        return cells.Distinct().Count() < cells.Length ? null
            : new GridFit(across.Count, up.Count, cells, new Point2(across.Step, up.Step), default, turn).Fitted(points);
    }

    // The least squares of pitch, middle and turn, each with the others held.
    private GridFit Fitted(Point2[] points)
    {
        GridFit fit = this;
        Point2 mean = Mean(points);
        for (int pass = 0; pass < Passes; pass++)
        {
            Point2[] places = [.. fit.Cells.Select(c => GridPattern.Offset(c.Column, c.Row, Columns, Rows, new Point2(1, 1)))];
            Point2 from = Mean(places);
            Point2[] seen = [.. points.Select(p => (p - mean).Turned(Angle.FromDegrees(-fit.TurnDegrees)))];
            double across = places.Sum(p => (p.X - from.X) * (p.X - from.X));
            double up = places.Sum(p => (p.Y - from.Y) * (p.Y - from.Y));
            var pitch = new Point2(
                across == 0 ? 0 : places.Zip(seen, (p, s) => (p.X - from.X) * s.X).Sum() / across,
                up == 0 ? 0 : places.Zip(seen, (p, s) => (p.Y - from.Y) * s.Y).Sum() / up);
            Point2[] model = [.. places.Select(p => new Point2((p.X - from.X) * pitch.X, (p.Y - from.Y) * pitch.Y))];
            double off = model.Zip(seen, Point2.Cross).Sum() / model.Sum(p => Point2.Dot(p, p));
            double turn = fit.TurnDegrees + Angle.FromRadians(off).Degrees;
            fit = fit with
            {
                Pitch = pitch,
                TurnDegrees = turn,
                Middle = mean - new Point2(from.X * pitch.X, from.Y * pitch.Y).Turned(Angle.FromDegrees(turn)),
            };
        }

        return fit;
    }

    private static Point2 Mean(Point2[] points) => new(points.Average(p => p.X), points.Average(p => p.Y));
}
