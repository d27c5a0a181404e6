using System.Buffers.Binary;
using ShellForge.Formats.Stl;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Tests.Tub;

/// <summary>
/// A caliper on a written STL: straight probes through its triangles, with plain floating-point arithmetic. It reads the bytes itself
/// and shares nothing with what made them.
/// </summary>
internal sealed class RayGauge
{
    private readonly (Point3 A, Point3 B, Point3 C)[] _triangles;

    private RayGauge((Point3, Point3, Point3)[] triangles) => _triangles = triangles;

    /// <summary>The same on a part of a plan, where it sits in the housing.</summary>
    public static RayGauge OnAssembled(HousingPlan plan, string part)
    {
        SolidOutcome made = SolidEvaluator.Evaluate(HousingBuilder.Build(plan).First(each => each.Name == part).Assembled);
        Assert.Null(made.Defect);
        return OnWritten(made.Require(), 1);
    }

    /// <summary>Writes a mesh as binary STL and takes the triangles out of the bytes, its scale in x and y undone.</summary>
    public static RayGauge OnWritten(SolidMesh solid, double scale)
    {
        using var stream = new MemoryStream();
        StlWriter.Write(stream, solid.Mesh, "gauge");
        byte[] bytes = stream.ToArray();
        int count = BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(80));
        Assert.Equal(84 + (50 * count), bytes.Length);
        Point3 Corner(int offset) => new(
            BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(offset)) / scale,
            BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(offset + 4)) / scale,
            BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(offset + 8)));
        return new RayGauge([.. Enumerable.Range(0, count)
            .Select(i => 84 + (50 * i) + 12)
            .Select(at => (Corner(at), Corner(at + 12), Corner(at + 24)))]);
    }

    /// <summary>Where a probe meets the surface, as distances from its start, rising; a hit on a shared edge counts once.</summary>
    public double[] Hits(Point3 from, Point3 along)
    {
        Point3 ray = (1 / along.Length) * along;
        var hits = new List<double>();
        foreach ((Point3 a, Point3 b, Point3 c) in _triangles)
        {
            Point3 ab = b - a;
            Point3 ac = c - a;
            Point3 p = Point3.Cross(ray, ac);
            double det = Point3.Dot(ab, p);
            if (Math.Abs(det) < 1e-12)
            {
                continue;
            }

            Point3 s = from - a;
            double u = Point3.Dot(s, p) / det;
            Point3 q = Point3.Cross(s, ab);
            double v = Point3.Dot(ray, q) / det;
            double t = Point3.Dot(ac, q) / det;
            if (u >= -1e-9 && v >= -1e-9 && u + v <= 1 + 1e-9 && t > 0)
            {
                hits.Add(t);
            }
        }

        hits.Sort();
        return [.. hits.Where((t, i) => i == 0 || t - hits[i - 1] > 1e-6)];
    }

    /// <summary>Distance from a point to the first surface along a direction.</summary>
    public double First(Point3 from, Point3 along)
    {
        double[] hits = Hits(from, along);
        Assert.NotEmpty(hits);
        return hits[0];
    }
}
