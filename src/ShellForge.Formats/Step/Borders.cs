namespace ShellForge.Formats.Step;

/// <summary>A run of half-edges along which one patch meets one other.</summary>
/// <param name="Edges">The half-edges in order, each in a triangle of the patch.</param>
/// <param name="Other">The other patch.</param>
internal sealed record BorderRun(List<int> Edges, int Other);

/// <summary>The loops round the patches of a mesh, each as runs between the corners where three patches meet.</summary>
internal static class Borders
{
    /// <summary>The loops of each patch, counter-clockwise seen from outside.</summary>
    /// <param name="edges">The mesh.</param>
    /// <param name="patches">The patch of each triangle, from 0.</param>
    public static List<List<BorderRun>>[] Of(HalfEdges edges, int[] patches)
    {
        var loops = new List<List<BorderRun>>[patches.Length == 0 ? 0 : patches.Max() + 1];
        for (int i = 0; i < loops.Length; i++)
        {
            loops[i] = [];
        }

        bool[] seen = new bool[edges.Count];
        for (int e = 0; e < edges.Count; e++)
        {
            if (!seen[e] && IsBorder(edges, patches, e))
            {
                loops[patches[HalfEdges.TriangleOf(e)]].Add(Runs(edges, patches, Loop(edges, patches, e, seen)));
            }
        }

        return loops;
    }

    private static bool IsBorder(HalfEdges edges, int[] patches, int e) =>
        patches[HalfEdges.TriangleOf(e)] != patches[HalfEdges.TriangleOf(edges.Twin(e))];

    // Round each corner within the patch, from one border to the next.
    private static List<int> Loop(HalfEdges edges, int[] patches, int first, bool[] seen)
    {
        var loop = new List<int>();
        int e = first;
        do
        {
            seen[e] = true;
            loop.Add(e);
            e = HalfEdges.Next(e);
            while (!IsBorder(edges, patches, e))
            {
                e = HalfEdges.Next(edges.Twin(e));
            }
        }
        while (e != first);

        return loop;
    }

    private static List<BorderRun> Runs(HalfEdges edges, int[] patches, List<int> loop)
    {
        int Other(int e) => patches[HalfEdges.TriangleOf(edges.Twin(e))];
        int start = loop.FindIndex(e => Other(e) != Other(loop[(loop.IndexOf(e) + loop.Count - 1) % loop.Count]));
        var runs = new List<BorderRun>();
        for (int i = 0; i < loop.Count; i++)
        {
            int e = loop[(Math.Max(start, 0) + i) % loop.Count];

            // A loop with one neighbour alone has no corner: each of its edges is a run.
            if (start < 0 || i == 0 || runs[^1].Other != Other(e))
            {
                runs.Add(new BorderRun([e], Other(e)));
            }
            else
            {
                runs[^1].Edges.Add(e);
            }
        }

        // A run that comes back to where it began would be an edge without ends.
        return [.. runs.SelectMany(run => edges.From(run.Edges[0]) == edges.To(run.Edges[^1])
            ? run.Edges.Select(e => new BorderRun([e], run.Other))
            : [run])];
    }
}
