using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>Facets that stand for one cylinder or cone.</summary>
/// <param name="Surface">The surface.</param>
/// <param name="Facets">The facets.</param>
/// <param name="TurnDegrees">How far neighbours turn.</param>
/// <param name="IsSure">Whether more chords than two say so: where groups can't both be round, the others go first.</param>
internal sealed record RoundGroup(RoundSurface Surface, List<int> Facets, double TurnDegrees, bool IsSure);

/// <summary>
/// Finds the facets that stand for cylinders and cones about upright axes. A row of chords of one width, each turned by one angle, says
/// which surface it is; from there every neighbour joins whose corners lie on it or between a chord and its arc, cut or not.
/// </summary>
internal sealed class RoundGroups
{
    // Four ribs on one circle are no chance; three are, but for walls alike in width that turn no more than an arc's.
    private const int SureRow = 3;
    private const int FewestInRow = 2;

    // Rounding turns a facet of a tenth of a millimetre by this much.
    private const double UprightLean = 1e-4;

    private readonly HalfEdges _edges;
    private readonly Point3[] _normals;
    private readonly List<Rib>[] _ribs;
    private readonly (Rib Left, Rib Right)?[] _chords;
    private readonly int[][] _corners;
    private readonly int[][] _beside;
    private readonly bool[] _taken;

    private RoundGroups(HalfEdges edges, int[] facets)
    {
        _edges = edges;
        _normals = [.. CoplanarFaces.Normals(edges, facets).Select(normal => 1 / normal.Length * normal)];
        List<List<BorderRun>>[] borders = Borders.Of(edges, facets);
        _ribs = Ribs.Of(edges, borders, _normals);
        _chords = [.. _ribs.Select(Chord)];
        _corners = [.. borders.Select(loops => loops.SelectMany(loop => loop).SelectMany(run => run.Edges).Select(edges.From).ToArray())];
        _beside = [.. borders.Select(loops => loops.SelectMany(loop => loop).Select(run => run.Other).Distinct().ToArray())];
        _taken = new bool[_ribs.Length];
    }

    /// <summary>The groups, each facet in one at the most.</summary>
    public static List<RoundGroup> Of(HalfEdges edges, int[] facets)
    {
        var groups = new RoundGroups(edges, facets);
        return [.. groups.Rows().OrderByDescending(row => row.Count).Select(groups.Grown).OfType<RoundGroup>()];
    }

    private static (Rib, Rib)? Chord(List<Rib> ribs) =>
        ribs.Where(rib => !rib.OnRight).MaxBy(rib => rib.Length) is { } left
        && ribs.Where(rib => rib.OnRight).MaxBy(rib => rib.Length) is { } right
            ? (left, right)
            : null;

    private List<List<int>> Rows()
    {
        bool[] seen = new bool[_chords.Length];
        var rows = new List<List<int>>();
        for (int facet = 0; facet < _chords.Length; facet++)
        {
            if (_chords[facet] is not null && !seen[facet])
            {
                List<int> row = Row(facet, seen);
                if (row.Count >= FewestInRow)
                {
                    rows.Add(row);
                }
            }
        }

        return rows;
    }

    // To the right as far as it goes, then to the left from where it began, all turning the same way by the same angle.
    private List<int> Row(int first, bool[] seen)
    {
        var row = new LinkedList<int>([first]);
        seen[first] = true;
        double? turned = null;
        for (int at = first; _chords[at]!.Value.Right.Beyond is int next && !seen[next] && Follows(at, next, ref turned); at = next)
        {
            seen[next] = true;
            row.AddLast(next);
        }

        for (int at = first; _chords[at]!.Value.Left.Beyond is int next && !seen[next] && Follows(next, at, ref turned); at = next)
        {
            seen[next] = true;
            row.AddFirst(next);
        }

        return [.. row];
    }

    private bool Follows(int left, int right, ref double? turned)
    {
        if (_chords[left] is not { } a || _chords[right] is not { } b || a.Right.Beyond != right || b.Left.Beyond != left)
        {
            return false;
        }

        double z = (a.Right.Bottom.Z + a.Right.Top.Z) / 2;
        Point2 along = a.Right.At(z) - a.Left.At(z);
        Point2 next = b.Right.At(z) - b.Left.At(z);
        double turn = Math.CopySign(Degrees(along, next), Point2.Cross(along, next));
        double spread = 0.5 + (RoundSurface.CornerSteps / along.Length * 60);
        if (Math.Abs(along.Length - next.Length) > 2 * RoundSurface.CornerSteps || turn == 0 || Math.Abs(turn) > MostTurn(along.Length)
            || (turned is { } before && Math.Abs(turn - before) > spread))
        {
            return false;
        }

        turned ??= turn;
        return true;
    }

    private static double Degrees(Point2 along, Point2 next) => Angle.Between(Angle.Of(along), Angle.Of(next)).Degrees;

    // Chords of a length, in lattice steps, stray from their arc by half of it times the tangent of a quarter of the angle they turn by.
    // Walls set outward from a circle keep its number of chords: they stray by as much more as they are wider.
    private static double MostTurn(double chord)
    {
        const double most = 50;
        const double slack = 2.0;
        return Math.Min(most, 4 * slack * Angle.Of(new Point2(chord / 2, Tolerances.ChordError / Lattice.Step)).Degrees);
    }

    private RoundGroup? Grown(List<int> row)
    {
        row = [.. row.Where(facet => !_taken[facet])];
        if (row.Count < FewestInRow)
        {
            return null;
        }

        (Rib first, Rib second) = _chords[row[0]]!.Value;
        double z = (second.Bottom.Z + second.Top.Z) / 2;
        (Rib other, Rib third) = _chords[row[1]]!.Value;
        Point2 chord = second.At(z) - first.At(z);
        double turn = Degrees(chord, third.At(z) - other.At(z));
        bool facesOut = Point2.Cross(chord, third.At(z) - other.At(z)) > 0;
        bool upright = row.All(facet => Math.Abs(_normals[facet].Z) <= UprightLean);
        if (!upright && row.Count < SureRow)
        {
            return null;
        }

        Point3[] seed =
        [
            .. row.SelectMany(facet => new[] { _chords[facet]!.Value.Left, _chords[facet]!.Value.Right })
                .SelectMany(rib => new[] { rib.Bottom, rib.Top }),
        ];
        if (SurfaceFit.Of(seed, upright, facesOut) is not { } surface)
        {
            return null;
        }

        // A wall that runs on in the plane of a chord is one facet with it.
        HashSet<int> members = [.. row.Where(facet => Joins(facet, surface, turn))];
        for (int before = 0; before < members.Count;)
        {
            before = members.Count;
            int[] joining =
            [
                .. members.SelectMany(facet => _beside[facet]).Where(facet => !_taken[facet] && !members.Contains(facet)).Distinct()
                    .Where(facet => Joins(facet, surface, turn)),
            ];
            HashSet<int> more = [.. members, .. joining];
            if (joining.Length > 0 && SurfaceFit.Of([.. seed, .. Between(more, surface)], upright, facesOut) is { } better)
            {
                (members, surface) = (more, better);
            }
        }

        foreach (int facet in members)
        {
            _taken[facet] = true;
        }

        return new RoundGroup(surface, [.. members.Order()], turn, row.Count >= SureRow);
    }

    // Where two rings of one radius lie in each other, turned, their chords meet short of it.
    private IEnumerable<Point3> Between(HashSet<int> members, RoundSurface surface) =>
        members.SelectMany(facet => _ribs[facet].Where(rib => rib.OnRight && members.Contains(rib.Beyond)))
            .SelectMany(rib => new[] { rib.Bottom, rib.Top }).Where(surface.Holds);

    // Its corners lie on the surface or within its chord, and it looks the way the surface does there.
    private bool Joins(int facet, RoundSurface surface, double turn)
    {
        double share = 1 - Angle.FromDegrees(turn / 2).Cos;
        return _corners[facet].All(corner =>
        {
            Point3 at = _edges.At(corner);
            double off = surface.Off(at);
            double cosine = Point3.Dot(surface.Outward(at), _normals[facet]) * (surface.FacesOut ? 1 : -1);
            return off <= RoundSurface.CornerSteps && off >= -(share * surface.RadiusAt(at.Z)) - RoundSurface.CornerSteps
                && cosine > Angle.FromDegrees(turn).Cos;
        });
    }
}
