using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Measuring;

/// <summary>Takes meshes apart.</summary>
public static class ShellSplit
{
    /// <summary>
    /// The closed surfaces of a mesh, each a mesh of its own: triangles that share a vertex stay together. In the order of their first
    /// triangles.
    /// </summary>
    public static ImmutableArray<Mesh> Shells(Mesh mesh)
    {
        var numbers = new ShellNumbers(mesh.Vertices.Length, mesh.Triangles.AsSpan());
        return [.. TrianglesOf(mesh, numbers).Select(triangles => Part(mesh, triangles))];
    }

    /// <summary>
    /// The bodies of a solid that hang together, each a solid of its own: an outer shell with the voids in it. In the order of their
    /// outer shells' first triangles.
    /// </summary>
    public static ImmutableArray<SolidMesh> Bodies(SolidMesh solid)
    {
        Mesh mesh = solid.Mesh;
        var numbers = new ShellNumbers(mesh.Vertices.Length, mesh.Triangles.AsSpan());
        if (numbers.Count <= 1)
        {
            return solid.IsEmpty ? [] : [solid];
        }

        List<int>[] triangles = TrianglesOf(mesh, numbers);
        Mesh[] shells = [.. triangles.Select(list => Part(mesh, list))];
        double[] volumes = [.. shells.Select(Measure.Volume)];
        SurfaceTree?[] trees = new SurfaceTree?[shells.Length];
        var bodies = ImmutableArray.CreateBuilder<SolidMesh>();
        var voids = Enumerable.Range(0, shells.Length).Where(s => volumes[s] < 0)
            .ToLookup(s => HolderOf(s, shells, volumes, trees));
        foreach (int outer in Enumerable.Range(0, shells.Length).Where(s => volumes[s] > 0))
        {
            bodies.Add(new SolidMesh(Part(mesh, [.. triangles[outer], .. voids[outer].SelectMany(v => triangles[v])])));
        }

        return bodies.ToImmutable();
    }

    /// <summary>
    /// A solid without its bodies and voids that are smaller than a volume: what is left of two cuts that nearly meet. All else stays as
    /// it is, to the bit.
    /// </summary>
    /// <param name="solid">The solid; itself where nothing goes.</param>
    /// <param name="leastBody">The smallest volume of a body that stays, mm3, above 0.</param>
    /// <param name="leastVoid">The same of a void.</param>
    public static SolidMesh WithoutCrumbs(SolidMesh solid, double leastBody, double leastVoid)
    {
        Mesh mesh = solid.Mesh;
        var numbers = new ShellNumbers(mesh.Vertices.Length, mesh.Triangles.AsSpan());
        if (numbers.Count <= 1)
        {
            return solid;
        }

        List<int>[] triangles = TrianglesOf(mesh, numbers);
        bool[] stays = [.. triangles.Select(list => Measure.Volume(Part(mesh, list)))
            .Select(volume => volume < 0 ? -volume >= leastVoid : volume >= leastBody)];
        return !stays.Contains(true) || !stays.Contains(false) ? solid
            : new SolidMesh(Part(mesh, [.. Enumerable.Range(0, stays.Length).Where(s => stays[s]).SelectMany(s => triangles[s]).Order()]));
    }

    // Of all outer shells that hold a void, its own is the smallest.
    private static int HolderOf(int shell, Mesh[] shells, double[] volumes, SurfaceTree?[] trees)
    {
        Point3 corner = shells[shell].Vertices[0].ToMillimetres();
        return Enumerable.Range(0, shells.Length)
            .Where(s => volumes[s] > 0 && PointMembership.Of(trees[s] ??= new SurfaceTree(shells[s]), corner) == Membership.Inside)
            .MinBy(s => volumes[s]);
    }

    private static List<int>[] TrianglesOf(Mesh mesh, ShellNumbers numbers)
    {
        var lists = new List<int>[numbers.Count];
        for (int i = 0; i < lists.Length; i++)
        {
            lists[i] = [];
        }

        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            lists[numbers.OfVertex[mesh.Triangles[3 * t]]].Add(t);
        }

        return lists;
    }

    private static Mesh Part(Mesh mesh, List<int> triangles)
    {
        int[] used =
            [.. triangles.SelectMany(t => new[] { mesh.Triangles[3 * t], mesh.Triangles[(3 * t) + 1], mesh.Triangles[(3 * t) + 2] })
                .Distinct().Order()];
        int[] numberOf = new int[mesh.Vertices.Length];
        for (int i = 0; i < used.Length; i++)
        {
            numberOf[used[i]] = i;
        }

        return new Mesh(
            [.. used.Select(v => mesh.Vertices[v])],
            [.. triangles.SelectMany(t => Enumerable.Range(3 * t, 3).Select(corner => numberOf[mesh.Triangles[corner]]))],
            [.. triangles.Select(t => mesh.Tags[t])]);
    }
}
