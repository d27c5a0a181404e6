using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>The facets of a mesh: normals, corners, and which lie beside which.</summary>
internal sealed class FacetGraph
{
    private readonly List<FacetSide>[] _sides;
    private readonly HashSet<int>[] _corners;

    public FacetGraph(HalfEdges edges, int[] facets)
    {
        Edges = edges;
        Normals = [.. CoplanarFaces.Normals(edges, facets).Select(normal => 1 / normal.Length * normal)];
        _sides = [.. Normals.Select(_ => new List<FacetSide>())];
        _corners = [.. Normals.Select(_ => new HashSet<int>())];
        for (int e = 0; e < edges.Count; e++)
        {
            int facet = facets[HalfEdges.TriangleOf(e)], other = facets[HalfEdges.TriangleOf(edges.Twin(e))];
            _corners[facet].Add(edges.From(e));
            if (facet != other)
            {
                Beside(facet, other).Edges.Add(e);
            }
        }
    }

    public HalfEdges Edges { get; }

    public int Count => Normals.Length;

    /// <summary>Unit normals.</summary>
    public Point3[] Normals { get; }

    public IReadOnlyList<FacetSide> Sides(int facet) => _sides[facet];

    public IEnumerable<Point3> Corners(int facet) => _corners[facet].Select(Edges.At);

    /// <summary>How much the surface turns over a side, degrees: to the inside of the body above 0.</summary>
    public double Turn(int facet, FacetSide side)
    {
        Point3 across = Point3.Cross(Normals[facet], Normals[side.Other]);
        double turn = Angle.Of(new Point2(Point3.Dot(Normals[facet], Normals[side.Other]), across.Length)).Degrees;
        int e = side.Edges[0];
        return Point3.Dot(across, Edges.At(Edges.To(e)) - Edges.Start(e)) < 0 ? -turn : turn;
    }

    private FacetSide Beside(int facet, int other)
    {
        FacetSide? side = _sides[facet].Find(each => each.Other == other);
        if (side is null)
        {
            side = new FacetSide(other, []);
            _sides[facet].Add(side);
        }

        return side;
    }
}

/// <summary>Where a facet meets another.</summary>
/// <param name="Other">The other facet.</param>
/// <param name="Edges">The half-edges between, on this side.</param>
internal sealed record FacetSide(int Other, List<int> Edges);
