using System.Collections.Immutable;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Corners and arcs as a closed chain of points.</summary>
public static class OutlinePath
{
    // Chords of arcs flatter than this keep the chord error by far.
    private const double LargestArcRadius = 250;

    /// <summary>
    /// The points round the outline; arcs as inscribed chords within the chord error. A last corner that repeats the first, as ECAD files
    /// write it, closes the chain and is not a corner of its own: its arc leads back to the first.
    /// </summary>
    internal static ImmutableArray<Point2> Points(ImmutableArray<OutlineCorner> corners)
    {
        if (corners.Length == 0)
        {
            return [];
        }

        ImmutableArray<Point2>.Builder points = ImmutableArray.CreateBuilder<Point2>();
        Point2 before = corners[^1].At;
        foreach (OutlineCorner corner in corners)
        {
            Point2 from = before;
            before = corner.At;
            if (corner.At == from && corner.Arc == Angle.Zero)
            {
                continue;
            }

            AddArc(points, from, corner);
            points.Add(corner.At);
        }

        return points.ToImmutable();
    }

    /// <summary>A place where sides cross, overlap or touch, or null. Exact on the lattice.</summary>
    public static Point2? Crossing(IReadOnlyList<Point2> points)
    {
        int count = points.Count;
        (long X, long Y)[] p = [.. points.Select(q => ((long)Lattice.ToSteps(q.X), (long)Lattice.ToSteps(q.Y)))];
        int[] byLeft = [.. Enumerable.Range(0, count).OrderBy(i => Math.Min(p[i].X, p[(i + 1) % count].X))];
        var open = new List<int>();
        foreach (int i in byLeft)
        {
            (long X, long Y) a = p[i];
            (long X, long Y) b = p[(i + 1) % count];
            if (a == b)
            {
                return points[i];
            }

            long left = Math.Min(a.X, b.X);
            open.RemoveAll(j => Math.Max(p[j].X, p[(j + 1) % count].X) < left);
            foreach (int j in open)
            {
                if (Meet(p, i, j, count))
                {
                    return points[i];
                }
            }

            open.Add(i);
        }

        return null;
    }

    private static bool Meet((long X, long Y)[] p, int i, int j, int count)
    {
        (long X, long Y) a = p[i];
        (long X, long Y) b = p[(i + 1) % count];
        (long X, long Y) c = p[j];
        (long X, long Y) d = p[(j + 1) % count];
        bool follows = (i + 1) % count == j;
        bool leads = (j + 1) % count == i;
        if (follows || leads)
        {
            // Neighbours share a corner; they may not run back over each other.
            (long X, long Y) shared = follows ? b : a;
            (long X, long Y) one = follows ? a : b;
            (long X, long Y) other = follows ? d : c;
            return Turn(one, shared, other) == 0 && Within(one, shared, other);
        }

        int abc = Turn(a, b, c);
        int abd = Turn(a, b, d);
        int cda = Turn(c, d, a);
        int cdb = Turn(c, d, b);
        return (abc * abd < 0 && cda * cdb < 0)
            || (abc == 0 && InBox(a, b, c))
            || (abd == 0 && InBox(a, b, d))
            || (cda == 0 && InBox(c, d, a))
            || (cdb == 0 && InBox(c, d, b));
    }

    // Differences have 26 bits, so the products stay inside a long.
    private static int Turn((long X, long Y) a, (long X, long Y) b, (long X, long Y) c) =>
        Math.Sign(((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X)));

    private static bool Within((long X, long Y) one, (long X, long Y) shared, (long X, long Y) other) =>
        ((one.X - shared.X) * (other.X - shared.X)) + ((one.Y - shared.Y) * (other.Y - shared.Y)) > 0;

    private static bool InBox((long X, long Y) a, (long X, long Y) b, (long X, long Y) c) =>
        Math.Min(a.X, b.X) <= c.X && c.X <= Math.Max(a.X, b.X) && Math.Min(a.Y, b.Y) <= c.Y && c.Y <= Math.Max(a.Y, b.Y);

    private static void AddArc(ImmutableArray<Point2>.Builder points, Point2 from, OutlineCorner corner)
    {
        double sweep = corner.Arc.Degrees;
        Point2 chord = corner.At - from;
        if (sweep == 0 || chord.Length == 0)
        {
            return;
        }

        // The centre lies on the chord's bisector, left of it for a counter-clockwise arc of less than half a turn.
        Angle half = Angle.FromDegrees(sweep / 2);
        double radius = Math.Abs(chord.Length / (2 * half.Sin));
        Point2 middle = from + (0.5 * chord);
        double apart = chord.Length / 2 * half.Cos / half.Sin;
        Point2 left = new(-chord.Y / chord.Length, chord.X / chord.Length);
        Point2 centre = middle + (apart * left);
        int full = Ring.CountFor(Math.Min(radius, LargestArcRadius));
        int pieces = Math.Max(1, (int)Math.Ceiling(full * Math.Abs(sweep) / 360));
        for (int i = 1; i < pieces; i++)
        {
            points.Add(centre + (from - centre).Turned(Angle.FromDegrees(sweep * i / pieces)));
        }
    }
}
