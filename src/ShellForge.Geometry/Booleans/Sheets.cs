namespace ShellForge.Geometry.Booleans;

/// <summary>
/// Active triangles gathered by plane: the faces that they belong to (across edges that are not real) and coplanar faces of any
/// operand that touch. One sheet has one oriented plane, that of its first triangle.
/// </summary>
internal sealed class Sheets
{
    private readonly int[] _sheetOf;

    private Sheets(int[] sheetOf, Grouping triangles, Plane[] planes, Drawing[] drawings)
    {
        _sheetOf = sheetOf;
        Triangles = triangles;
        Planes = planes;
        Drawings = drawings;
    }

    public int Count => Planes.Length;

    public Grouping Triangles { get; }

    public Plane[] Planes { get; }

    public Drawing[] Drawings { get; }

    /// <summary>The sheet of a triangle, or -1 when nothing meets the triangle.</summary>
    public int Of(int triangle) => _sheetOf[triangle];

    public static Sheets From(Intersections found)
    {
        Scene scene = found.Scene;
        List<int> active = ActiveFaces(found);
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

        return new Sheets(sheetOf, Grouping.Of(planes.Count, members), [.. planes], drawings);
    }

    private static List<int> ActiveFaces(Intersections found)
    {
        Scene scene = found.Scene;
        List<int> active = [];
        for (int triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            if (found.IsActive[triangle])
            {
                active.Add(triangle);
            }
        }

        for (int i = 0; i < active.Count; i++)
        {
            for (int k = 0; k < 3; k++)
            {
                int halfEdge = (3 * active[i]) + k;
                if (!scene.IsReal(halfEdge))
                {
                    int neighbour = scene.Partner(halfEdge) / 3;
                    if (!found.IsActive[neighbour])
                    {
                        found.IsActive[neighbour] = true;
                        active.Add(neighbour);
                    }
                }
            }
        }

        return active;
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
