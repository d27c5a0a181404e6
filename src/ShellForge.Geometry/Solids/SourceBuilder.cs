using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Solids;

/// <summary>Collects corners, triangles and planar faces of a primitive. Equal corners are one corner.</summary>
internal sealed class SourceBuilder
{
    private readonly Dictionary<Point3, int> _number = [];
    private readonly ImmutableArray<Point3>.Builder _vertices = ImmutableArray.CreateBuilder<Point3>();
    private readonly ImmutableArray<int>.Builder _triangles = ImmutableArray.CreateBuilder<int>();
    private readonly ImmutableArray<int>.Builder _sheets = ImmutableArray.CreateBuilder<int>();
    private int _sheetCount;

    /// <summary>The number of a corner.</summary>
    public int Corner(Point3 p)
    {
        if (!_number.TryGetValue(p, out int n))
        {
            n = _vertices.Count;
            _number.Add(p, n);
            _vertices.Add(p);
        }

        return n;
    }

    /// <summary>A new planar face; triangles are added to it.</summary>
    public int NewSheet() => _sheetCount++;

    /// <summary>A triangle counter-clockwise seen from outside; left out when two of its corners are one.</summary>
    public void Triangle(int a, int b, int c, int sheet)
    {
        if (a != b && b != c && c != a)
        {
            _triangles.AddRange(a, b, c);
            _sheets.Add(sheet);
        }
    }

    /// <summary>
    /// A four-sided face, counter-clockwise seen from outside, cut along its shorter diagonal; one sheet when it was made flat
    /// (its corners then lie in one plane to within their rounding), two when it is warped. Corners may coincide.
    /// </summary>
    public void Quad(int a, int b, int c, int d)
    {
        int sheet = NewSheet();
        int other = IsFlat(a, b, c, d) ? sheet : NewSheet();
        if ((_vertices[a] - _vertices[c]).Length <= (_vertices[b] - _vertices[d]).Length)
        {
            Triangle(a, b, c, sheet);
            Triangle(a, c, d, other);
        }
        else
        {
            Triangle(a, b, d, sheet);
            Triangle(b, c, d, other);
        }
    }

    /// <summary>The solid.</summary>
    public SourceSolid ToSolid() => new(_vertices.ToImmutable(), _triangles.ToImmutable(), _sheets.ToImmutable());

    private bool IsFlat(int a, int b, int c, int d)
    {
        Point3 normal = Point3.Cross(_vertices[c] - _vertices[a], _vertices[d] - _vertices[b]);
        double volume = Point3.Dot(_vertices[b] - _vertices[a], normal);
        return Math.Abs(volume) <= Tolerances.FlatnessSteps * Lattice.Step * normal.Length;
    }
}
