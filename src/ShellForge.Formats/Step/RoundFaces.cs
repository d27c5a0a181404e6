using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// Finds the walls that stand for cylinders and cones about upright axes: rows of upright quads between two levels, of one width, turned by
/// one angle. A quad counts only where its level edges meet a level face or another such quad, so that they may become arcs; a quad that a
/// feature has cut stays flat.
/// </summary>
internal sealed class RoundFaces
{
    // A full circle has 32 sides at least, so neighbours turn by 11.25 degrees at most; small roundings turn faster, as long as their
    // chords stray from the arc by no more than the chord error.
    private const double MostTurnDegrees = 12;
    private const double MostTurnOfSmallDegrees = 50;

    // Corners lie up to a step off their circle in each direction.
    private const double CornerSteps = 4;

    // Four corners on one circle are no chance.
    private const int FewestInRow = 3;

    private readonly HalfEdges _edges;
    private readonly int[] _facets;
    private readonly List<List<BorderRun>>[] _borders;
    private readonly Quad?[] _quads;
    private readonly bool[] _level;

    private RoundFaces(HalfEdges edges, int[] facets)
    {
        _edges = edges;
        _facets = facets;
        _borders = Borders.Of(edges, facets);
        _quads = new Quad?[_borders.Length];
        _level = [.. CoplanarFaces.Normals(edges, facets).Select((normal, facet) => normal is { X: 0, Y: 0 } && IsWide(facet, normal))];
        for (int facet = 0; facet < _quads.Length; facet++)
        {
            _quads[facet] = QuadOf(facet);
        }
    }

    /// <summary>The round patch of each facet; null for those that stay flat. Facets of one patch have the same one.</summary>
    public static RoundPatch?[] Of(HalfEdges edges, int[] facets) => new RoundFaces(edges, facets).Found();

    private RoundPatch?[] Found()
    {
        var patches = new RoundPatch?[_quads.Length];
        var circles = new (Point2 Axis, double Low, double High)?[_quads.Length];
        bool[] seen = new bool[_quads.Length];
        var rows = new List<List<int>>();
        for (int facet = 0; facet < _quads.Length; facet++)
        {
            if (_quads[facet] is not null && !seen[facet])
            {
                List<int> row = Row(facet, seen);
                if (row.Count >= FewestInRow && Fitted(row) is { } circle)
                {
                    rows.Add(row);
                    row.ForEach(each => circles[each] = circle);
                }
            }
        }

        while (Enumerable.Range(0, circles.Length)
            .Any(facet => circles[facet] is not null && !MayBeRound(facet, circles) && Dropped(circles, facet)))
        {
        }

        foreach (List<int> row in rows)
        {
            Split(row, circles, patches);
        }

        return patches;
    }

    private static bool Dropped((Point2, double, double)?[] circles, int facet)
    {
        circles[facet] = null;
        return true;
    }

    // An arc strays from its chords by the chord error: across a strip that is hardly wider it would meet the other side.
    private bool IsWide(int facet, Point3 normal)
    {
        const double leastWidth = 4 * Tolerances.ChordError / Lattice.Step;
        double around = _borders[facet].SelectMany(loop => loop).SelectMany(run => run.Edges)
            .Sum(e => Point3.Distance(_edges.Start(e), _edges.At(_edges.To(e))));
        return normal.Length >= leastWidth * around;
    }

    private bool MayBeRound(int facet, (Point2, double, double)?[] circles) =>
        new[] { _quads[facet]!.LowOther, _quads[facet]!.HighOther }.All(other => _level[other] || circles[other] is not null);

    // A wall of four runs: along a level, up, back along a level, down.
    private Quad? QuadOf(int facet)
    {
        if (_borders[facet] is not [{ Count: 4 } runs])
        {
            return null;
        }

        int[] corners = [.. runs.Select(run => _edges.From(run.Edges[0]))];
        double[] z = [.. corners.Select(v => At(v).Z)];
        int low = RoundPatch.IsLevel(z[0], z[1]) && RoundPatch.IsLevel(z[2], z[3]) ? (z[0] < z[2] ? 0 : 2)
            : RoundPatch.IsLevel(z[1], z[2]) && RoundPatch.IsLevel(z[3], z[0]) ? (z[1] < z[3] ? 1 : 3)
            : -1;
        if (low < 0 || RoundPatch.IsLevel(z[low], z[(low + 2) % 4]))
        {
            return null;
        }

        // Outside seen, the lower edge runs to the right.
        int Corner(int k) => corners[(low + k) % 4];
        int Other(int k) => runs[(low + k) % 4].Other;
        return new Quad(Corner(0), Corner(1), Corner(2), Corner(3), Other(0), Other(1), Other(2), Other(3));
    }

    // To the right as far as it goes, then to the left from where it began.
    private List<int> Row(int first, bool[] seen)
    {
        var row = new LinkedList<int>([first]);
        seen[first] = true;
        for (int at = first; Follows(at, _quads[at]!.RightOther) && !seen[_quads[at]!.RightOther];)
        {
            at = _quads[at]!.RightOther;
            seen[at] = true;
            row.AddLast(at);
        }

        for (int at = first; Follows(_quads[at]!.LeftOther, at) && !seen[_quads[at]!.LeftOther];)
        {
            at = _quads[at]!.LeftOther;
            seen[at] = true;
            row.AddFirst(at);
        }

        return [.. row];
    }

    private bool Follows(int left, int right)
    {
        if (_quads[left] is not { } a || _quads[right] is not { } b || a.LowRight != b.LowLeft || a.HighRight != b.HighLeft)
        {
            return false;
        }

        Point2 along = At(a.LowRight).XY - At(a.LowLeft).XY;
        Point2 next = At(b.LowRight).XY - At(b.LowLeft).XY;
        double turn = Angle.Between(Angle.Of(along), Angle.Of(next)).Degrees;
        return Math.Abs(along.Length - next.Length) <= 2 * CornerSteps && turn > 0 && turn <= MostTurn(along.Length)
            && RoundPatch.IsLevel(At(a.LowLeft).Z, At(b.LowRight).Z) && RoundPatch.IsLevel(At(a.HighLeft).Z, At(b.HighRight).Z);
    }

    // How far chords of a length, in lattice steps, may turn: they stray from their arc by half of it times the tangent of a quarter of
    // that angle.
    private static double MostTurn(double chord)
    {
        double quarter = Angle.Of(new Point2(chord / 2, Tolerances.ChordError / Lattice.Step)).Degrees;
        return Math.Clamp(4 * quarter, MostTurnDegrees, MostTurnOfSmallDegrees);
    }

    // The circle of the wider end by least squares, then both radii about its centre.
    private (Point2 Axis, double Low, double High)? Fitted(List<int> row)
    {
        Point2[] low = [.. row.Select(f => At(_quads[f]!.LowLeft).XY), At(_quads[row[^1]]!.LowRight).XY];
        Point2[] high = [.. row.Select(f => At(_quads[f]!.HighLeft).XY), At(_quads[row[^1]]!.HighRight).XY];
        Point2[] wide = Point2.Distance(low[0], low[1]) >= Point2.Distance(high[0], high[1]) ? low : high;
        Point2 axis = CircleCentre.Of(wide);
        double lowRadius = low.Average(p => Point2.Distance(p, axis));
        double highRadius = high.Average(p => Point2.Distance(p, axis));
        return low.All(p => Math.Abs(Point2.Distance(p, axis) - lowRadius) <= CornerSteps)
            && high.All(p => Math.Abs(Point2.Distance(p, axis) - highRadius) <= CornerSteps)
            ? (axis, lowRadius, highRadius)
            : null;
    }

    // Pieces of what is left of a row, none longer than a half turn: then no face meets itself along a seam.
    private void Split(List<int> row, (Point2 Axis, double Low, double High)?[] circles, RoundPatch?[] patches)
    {
        RoundPatch? piece = null;
        double turned = 0;
        foreach (int facet in row)
        {
            Quad quad = _quads[facet]!;
            if (circles[facet] is not { } circle)
            {
                piece = null;
                continue;
            }

            Point2 left = At(quad.LowLeft).XY - circle.Axis;
            Point2 right = At(quad.LowRight).XY - circle.Axis;
            double turn = Angle.Between(Angle.Of(left), Angle.Of(right)).Degrees;
            const double half = 180;
            if (piece is null || turned + turn > half + (turn / 2))
            {
                bool facesOut = Point2.Cross(left, right) > 0;
                piece = new RoundPatch(circle.Axis, At(quad.LowLeft).Z, circle.Low, At(quad.HighLeft).Z, circle.High, facesOut);
                turned = 0;
            }

            turned += turn;
            patches[facet] = piece;
        }
    }

    private Point3 At(int vertex) => _edges.At(vertex);

    /// <summary>An upright quad seen from outside, with the facet beyond each side.</summary>
    private sealed record Quad(
        int LowLeft, int LowRight, int HighRight, int HighLeft, int LowOther, int RightOther, int HighOther, int LeftOther);
}
