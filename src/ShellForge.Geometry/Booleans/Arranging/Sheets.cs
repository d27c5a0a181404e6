using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Booleans.Tables;

namespace ShellForge.Geometry.Booleans.Arranging;

/// <summary>
/// Active triangles gathered by plane: the faces that they belong to (across edges that are not real) and coplanar faces of any
/// operand that touch. One sheet has one oriented plane, that of its first triangle.
/// </summary>
internal sealed class Sheets
{
    private readonly int[] _sheetOf;

    private Sheets(int[] sheetOf, Grouping triangles, Plane[] planes, Drawing[] drawings, int[] groupOf, List<Plane> groupPlanes)
    {
        _sheetOf = sheetOf;
        GroupOf = groupOf;
        GroupPlanes = groupPlanes;
        Triangles = triangles;
        Planes = planes;
        Drawings = drawings;
    }

    public int Count => Planes.Length;

    public Grouping Triangles { get; }

    public Plane[] Planes { get; }

    public Drawing[] Drawings { get; }

    /// <summary>
    /// For each sheet the plane it was meant to lie in: turned planes are not flat on the lattice, so one may hold many sheets.
    /// </summary>
    public int[] GroupOf { get; }

    public List<Plane> GroupPlanes { get; }

    /// <summary>The sheet of a triangle, or -1 when nothing meets the triangle.</summary>
    public int Of(int triangle) => _sheetOf[triangle];

    public static Sheets From(Intersections found)
    {
        OperandSet scene = found.OperandSet;
        (List<int> active, int[] faceOf, List<Plane> facePlanes) = ActiveFaces(found);
        int[] parent = new int[scene.TriangleCount];
        foreach (int triangle in active)
        {
            parent[triangle] = triangle;
        }

        foreach (int triangle in active)
        {
            for (int k = 0; k < 3; k++)
            {
                int halfEdge = (3 * triangle) + k;
                if (!scene.IsReal(halfEdge))
                {
                    Join(parent, triangle, scene.Partner(halfEdge) / 3);
                }
            }
        }

        foreach ((int first, int second) in found.Coplanar)
        {
            Join(parent, first, second);
        }

        // The smallest triangle number of a sheet is its root, so sheets are numbered in the order of their first triangles.
        active.Sort();
        int[] sheetOf = new int[scene.TriangleCount];
        Array.Fill(sheetOf, -1);
        List<Plane> planes = [];
        List<(int, int)> members = new(active.Count);
        foreach (int triangle in active)
        {
            int root = Root(parent, triangle);
            if (root == triangle)
            {
                sheetOf[triangle] = planes.Count;
                planes.Add(scene.PlaneOf(triangle));
            }

            sheetOf[triangle] = sheetOf[root];
            members.Add((sheetOf[root], triangle));
        }

        Drawing[] drawings = new Drawing[planes.Count];
        for (int s = 0; s < drawings.Length; s++)
        {
            drawings[s] = new Drawing(planes[s]);
        }

        (int[] groupOf, List<Plane> groupPlanes) = Groups(found, active, sheetOf, planes, faceOf, facePlanes);
        return new Sheets(sheetOf, Grouping.Of(planes.Count, members), [.. planes], drawings, groupOf, groupPlanes);
    }

    // Sheets belong together when a near-planar face joins them, or two such faces of nearly one plane meet.
    private static (int[] GroupOf, List<Plane> Planes) Groups(
        Intersections found, List<int> active, int[] sheetOf, List<Plane> planes, int[] faceOf, List<Plane> facePlanes)
    {
        int[] parent = [.. Enumerable.Range(0, planes.Count)];
        int[] sheetOfFace = new int[facePlanes.Count];
        Array.Fill(sheetOfFace, -1);
        foreach (int triangle in active)
        {
            ref int sheet = ref sheetOfFace[faceOf[triangle]];
            sheet = sheet < 0 ? sheetOf[triangle] : sheet;
            Join(parent, sheet, sheetOf[triangle]);
        }

        HashSet<(int, int)> tried = [];
        foreach (Interval interval in found.Intervals)
        {
            int f = faceOf[interval.First], g = faceOf[interval.Second];
            if (tried.Add((f, g)) && NearPlanarFaces.AreNearlyOne(facePlanes[f], facePlanes[g]))
            {
                Join(parent, sheetOfFace[f], sheetOfFace[g]);
            }
        }

        // The plane through the widest triple of corners speaks for the group.
        Dictionary<int, int> number = [];
        int[] groupOf = new int[planes.Count];
        List<Plane> groupPlanes = [];
        for (int sheet = 0; sheet < groupOf.Length; sheet++)
        {
            int root = Root(parent, sheet);
            if (!number.TryGetValue(root, out groupOf[sheet]))
            {
                groupOf[sheet] = groupPlanes.Count;
                number.Add(root, groupPlanes.Count);
                groupPlanes.Add(planes[root]);
            }
        }

        for (int face = 0; face < sheetOfFace.Length; face++)
        {
            if (sheetOfFace[face] >= 0)
            {
                int group = groupOf[sheetOfFace[face]];
                if (NearPlanarFaces.Length(facePlanes[face]) > NearPlanarFaces.Length(groupPlanes[group]))
                {
                    groupPlanes[group] = facePlanes[face];
                }
            }
        }

        return (groupOf, groupPlanes);
    }

    private static (List<int> Active, int[] FaceOf, List<Plane> Planes) ActiveFaces(Intersections found)
    {
        OperandSet scene = found.OperandSet;
        List<int> active = [];
        List<int> seeds = [];
        List<Plane> planes = [];
        int[] faceOf = new int[scene.TriangleCount];
        for (int operand = 0; operand < scene.Operands.Length; operand++)
        {
            int start = scene.TriangleStart[operand];
            int count = scene.Operands[operand].TriangleCount;
            seeds.Clear();
            for (int t = 0; t < count; t++)
            {
                if (found.IsActive[start + t])
                {
                    seeds.Add(t);
                }
            }

            if (seeds.Count == 0)
            {
                continue;
            }

            NearPlanarFaces faces = NearPlanarFaces.Of(scene.Operands[operand], seeds);
            for (int t = 0; t < count; t++)
            {
                if (faces.FaceOf[t] >= 0)
                {
                    found.IsActive[start + t] = true;
                    faceOf[start + t] = planes.Count + faces.FaceOf[t];
                    active.Add(start + t);
                }
            }

            planes.AddRange(faces.Planes);
        }

        return (active, faceOf, planes);
    }

    private static int Root(int[] parent, int item)
    {
        while (parent[item] != item)
        {
            parent[item] = parent[parent[item]];
            item = parent[item];
        }

        return item;
    }

    private static void Join(int[] parent, int a, int b)
    {
        a = Root(parent, a);
        b = Root(parent, b);
        parent[Math.Max(a, b)] = Math.Min(a, b);
    }
}
