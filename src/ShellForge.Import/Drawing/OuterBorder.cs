using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Drawing;

/// <summary>
/// The outer border of strokes of which three or more meet at a point: a scored line that ends on the edge, two shapes that
/// touch at a corner. Walks along the outside, always taking the first stroke clockwise, and cuts the walk where it meets itself.
/// </summary>
internal static class OuterBorder
{
    public static (List<List<(int Edge, bool Forward)>> Borders, int LeftOut) Of(StrokeGraph graph, List<int> piece, bool[] gone)
    {
        Dictionary<int, List<(int Edge, bool Forward)>> fans = Fans(graph, piece, gone);
        var placeInFan = new Dictionary<(int, bool), int>();
        foreach (List<(int Edge, bool Forward)> fan in fans.Values)
        {
            for (int i = 0; i < fan.Count; i++)
            {
                placeInFan[fan[i]] = i;
            }
        }

        var used = new HashSet<(int, bool)>();
        List<(int Edge, bool Forward)>? outer = null;
        double outerArea = 0;
        foreach (int start in piece)
        {
            foreach (bool way in new[] { true, false })
            {
                if (used.Contains((start, way)))
                {
                    continue;
                }

                List<(int Edge, bool Forward)> face = Face(graph, fans, placeInFan, (start, way), used);
                double area = face.Sum(f => Directed(graph, f).AreaShare());

                // Inner faces come out counter-clockwise, the outside clockwise, and only once per connected piece.
                if (area < outerArea)
                {
                    outerArea = area;
                    outer = face;
                }
            }
        }

        if (outer is null)
        {
            return ([], piece.Count);
        }

        List<List<(int Edge, bool Forward)>> borders = Simple(graph, outer);
        int kept = borders.Sum(b => b.Count);
        return (borders, Math.Max(0, piece.Count - kept));
    }

    private static EdgeSegment Directed(StrokeGraph graph, (int Edge, bool Forward) half)
    {
        EdgeSegment s = graph.StrokeAt(half.Edge).Segment;
        return half.Forward ? s : s.Reversed;
    }

    private static int StartNode(StrokeGraph graph, (int Edge, bool Forward) half) => graph.NodeOf(half.Edge, half.Forward ? 0 : 1);

    private static int EndNode(StrokeGraph graph, (int Edge, bool Forward) half) => graph.NodeOf(half.Edge, half.Forward ? 1 : 0);

    // Half edges leaving each node, counter-clockwise by direction; equal directions are told apart by which way they bend.
    private static Dictionary<int, List<(int Edge, bool Forward)>> Fans(StrokeGraph graph, List<int> piece, bool[] gone)
    {
        var fans = new Dictionary<int, List<(int Edge, bool Forward)>>();
        foreach (int e in piece)
        {
            if (gone[e])
            {
                continue;
            }

            foreach (bool way in new[] { true, false })
            {
                int node = StartNode(graph, (e, way));
                if (!fans.TryGetValue(node, out List<(int Edge, bool Forward)>? fan))
                {
                    fans[node] = fan = [];
                }

                fan.Add((e, way));
            }
        }

        foreach (List<(int Edge, bool Forward)> fan in fans.Values)
        {
            if (fan.Count > 2)
            {
                var keyed = fan.Select(h => (Half: h, Key: Leaving(Directed(graph, h)))).ToList();
                keyed.Sort((a, b) => a.Key.CompareTo(b.Key));
                fan.Clear();
                fan.AddRange(keyed.Select(k => k.Half));
            }
        }

        return fans;
    }

    private static (double Direction, double Bend) Leaving(EdgeSegment s)
    {
        Point2 d = s.StartDirection();
        double degrees = Math.Round(Trigonometry.Atan2Degrees(d.Y, d.X), 4);
        double bend = s.IsArc ? Math.Sign(s.SweepDegrees) / Math.Max(s.Radius, EcadTolerances.SamePoint) : 0;
        return (degrees <= -180 ? degrees + 360 : degrees, bend);
    }

    private static List<(int Edge, bool Forward)> Face(
        StrokeGraph graph,
        Dictionary<int, List<(int Edge, bool Forward)>> fans,
        Dictionary<(int, bool), int> placeInFan,
        (int Edge, bool Forward) start,
        HashSet<(int, bool)> used)
    {
        var face = new List<(int Edge, bool Forward)>();
        (int Edge, bool Forward) half = start;
        while (used.Add(half))
        {
            face.Add(half);
            List<(int Edge, bool Forward)> fan = fans[EndNode(graph, half)];
            int back = placeInFan[(half.Edge, !half.Forward)];
            half = fan[(back + fan.Count - 1) % fan.Count];
        }

        return face;
    }

    // Cuts a closed walk at every node it visits twice. Edges walked both ways cancel out.
    private static List<List<(int Edge, bool Forward)>> Simple(StrokeGraph graph, List<(int Edge, bool Forward)> walk)
    {
        var loops = new List<List<(int Edge, bool Forward)>>();
        var path = new List<(int Edge, bool Forward)>();
        var at = new Dictionary<int, int>();
        foreach ((int Edge, bool Forward) half in walk)
        {
            at[StartNode(graph, half)] = path.Count;
            path.Add(half);
            if (!at.TryGetValue(EndNode(graph, half), out int from))
            {
                continue;
            }

            List<(int Edge, bool Forward)> loop = path.GetRange(from, path.Count - from);
            path.RemoveRange(from, path.Count - from);
            foreach ((int Edge, bool Forward) h in loop)
            {
                at.Remove(StartNode(graph, h));
            }

            if (loop.Select(h => h.Edge).Distinct().Count() == loop.Count)
            {
                loops.Add(loop);
            }
        }

        return loops;
    }
}
