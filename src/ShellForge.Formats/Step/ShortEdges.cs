using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// Edges shorter than a file is accurate go, their ends become one corner in the middle, and where a face runs along a line and straight
/// back its two edges become one: readers drop such edges, and with them the faces they bound.
/// </summary>
internal static class ShortEdges
{
    /// <summary>Contracts them.</summary>
    public static void Contract(Boundary boundary, List<List<WrittenSide>>[] faces)
    {
        Dictionary<int, int> into = Clusters(boundary, faces);
        foreach (List<WrittenSide> loop in faces.SelectMany(loops => loops))
        {
            for (int i = 0; i < loop.Count; i++)
            {
                loop[i] = loop[i] with { From = End(into, loop[i].From), To = End(into, loop[i].To) };
            }

            loop.RemoveAll(side => side.Kind == CurveKind.Line && side.From == side.To);
        }

        while (faces.SelectMany(loops => loops).FirstOrDefault(loop => Folded(loop) >= 0) is { } folded)
        {
            int at = Folded(folded);
            WrittenSide kept = folded[at], gone = folded[(at + 1) % folded.Count];
            folded.Remove(kept);
            folded.Remove(gone);
            Join(faces, kept, gone);
        }

        foreach (List<List<WrittenSide>> loops in faces)
        {
            loops.RemoveAll(loop => loop.Count == 0);
        }
    }

    private static int Start(WrittenSide side) => side.Ahead ? side.From : side.To;

    private static int Finish(WrittenSide side) => side.Ahead ? side.To : side.From;

    // Where a loop runs along a line and straight back.
    private static int Folded(List<WrittenSide> loop) => loop.Count < 2 ? -1 : loop.FindIndex(side =>
        side.Kind == CurveKind.Line && loop[(loop.IndexOf(side) + 1) % loop.Count] is { Kind: CurveKind.Line } next
        && Start(side) == Finish(next));

    private static int End(Dictionary<int, int> into, int corner)
    {
        while (into.TryGetValue(corner, out int next))
        {
            corner = next;
        }

        return corner;
    }

    private static Dictionary<int, int> Clusters(Boundary boundary, List<List<WrittenSide>>[] faces)
    {
        var into = new Dictionary<int, int>();
        var members = new Dictionary<int, List<Point3>>();
        foreach (List<WrittenSide> loop in faces.SelectMany(loops => loops))
        {
            for (int i = 0; i < loop.Count; i++)
            {
                WrittenSide side = loop[i], next = loop[(i + 1) % loop.Count];
                if (side.Kind == CurveKind.Line)
                {
                    Join(side.From, side.To);
                    if (next.Kind == CurveKind.Line)
                    {
                        Join(Start(side), Finish(next));
                    }
                }
            }
        }

        foreach ((int corner, List<Point3> all) in members)
        {
            boundary.Put(corner, 1.0 / all.Count * all.Aggregate((a, b) => a + b));
        }

        return into;

        void Join(int one, int other)
        {
            (int a, int b) = (End(into, one), End(into, other));
            if (a == b || Point3.Distance(boundary.Corner(one), boundary.Corner(other)) > WrittenCheck.Off)
            {
                return;
            }

            (int least, int most) = (Math.Min(a, b), Math.Max(a, b));
            into.Add(most, least);
            members[least] = [.. Of(least), .. Of(most)];
            members.Remove(most);
        }

        List<Point3> Of(int corner) => members.TryGetValue(corner, out List<Point3>? before) ? before : [boundary.Corner(corner)];
    }

    // Whoever ran along the one runs along the other.
    private static void Join(List<List<WrittenSide>>[] faces, WrittenSide kept, WrittenSide gone)
    {
        foreach (List<WrittenSide> loop in faces.SelectMany(loops => loops))
        {
            for (int i = 0; i < loop.Count; i++)
            {
                if (loop[i].Key == gone.Key)
                {
                    loop[i] = loop[i] with
                    {
                        Key = kept.Key, From = kept.From, To = kept.To, Ahead = loop[i].Ahead ^ (kept.From != gone.From),
                    };
                }
            }
        }
    }
}
