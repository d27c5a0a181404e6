using System.Collections.Immutable;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Coupons;

/// <summary>Several pieces as one mesh, side by side: what is printed at once shares the least time of each layer.</summary>
internal static class OneBed
{
    private const double Gap = 6;

    /// <summary>The pieces in a row along x, each with its lowest face on z = 0.</summary>
    public static Mesh Of(IEnumerable<Mesh> pieces)
    {
        var vertices = ImmutableArray.CreateBuilder<LatticePoint3>();
        var triangles = ImmutableArray.CreateBuilder<int>();
        var tags = ImmutableArray.CreateBuilder<FaceTag>();
        double right = 0;
        foreach (Mesh piece in pieces)
        {
            Box3 bounds = Measure.Bounds(piece);
            double shift = right == 0 ? 0 : right + Gap - bounds.Min.X;
            int first = vertices.Count;
            vertices.AddRange(piece.Mapped(Transform3.Shift(shift, 0, 0)).Vertices);
            triangles.AddRange(piece.Triangles.Select(vertex => vertex + first));
            tags.AddRange(piece.Tags);
            right = bounds.Max.X + shift;
        }

        return new Mesh(vertices.ToImmutable(), triangles.ToImmutable(), tags.ToImmutable());
    }
}
