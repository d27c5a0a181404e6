using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// Edges shorter than a file is accurate go, their ends become one corner in the middle, and where a face runs along a line and straight
/// back its two edges become one: readers drop such edges, and with them the faces they bound.
/// </summary>
internal static class ShortSides
{
    /// <summary>Contracts them.</summary>
    public static void Contract(FacedMesh boundary, List<List<WrittenSide>>[] faces)
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

        int fresh = 0;
        while (faces.SelectMany(loops => loops).FirstOrDefault(loop => Folded(boundary, loop) >= 0) is { } folded)
        {
            int at = Folded(boundary, folded);
            WrittenSide side = folded[at], next = folded[(at + 1) % folded.Count];
            if (side.Start == next.Finish)
            {
                folded.Remove(side);
                folded.Remove(next);
                Join(faces, side, next);
            }
            else if (IsWithin(boundary, side, next.Finish))
            {
                Part(faces, side, next.Finish, --fresh);
            }
            else
            {
                Part(faces, next, side.Start, --fresh);
            }
        }

        foreach (List<List<WrittenSide>> loops in faces)
        {
            loops.RemoveAll(loop => loop.Count == 0);
        }
    }

    // Where a loop runs along a line and straight back, all the way or a part of it.
    private static int Folded(FacedMesh boundary, List<WrittenSide> loop)
    {
        for (int i = 0; i < loop.Count && loop.Count > 1; i++)
        {
            WrittenSide side = loop[i], next = loop[(i + 1) % loop.Count];
            if (side.Kind == CurveKind.Line && next.Kind == CurveKind.Line
                && (side.Start == next.Finish || IsWithin(boundary, side, next.Finish) || IsWithin(boundary, next, side.Start)))
            {
                return i;
            }
        }

        return -1;
    }

    // Whether a corner lies on a line, between its ends.
    private static bool IsWithin(FacedMesh boundary, WrittenSide side, int corner)
    {
        Point3 from = boundary.Corner(side.From), along = boundary.Corner(side.To) - from, to = boundary.Corner(corner) - from;
        double at = Point3.Dot(to, along) / along.Length;
        return at > WrittenCheck.Off && at < along.Length - WrittenCheck.Off
            && Point3.Cross(to, along).Length <= WrittenCheck.Off * along.Length;
    }

    // One line becomes two that meet at a corner, for both faces.
    private static void Part(List<List<WrittenSide>>[] faces, WrittenSide whole, int corner, int key)
    {
        foreach (List<WrittenSide> loop in faces.SelectMany(loops => loops))
        {
            for (int i = loop.FindIndex(side => side.Key == whole.Key); i >= 0; i = loop.FindIndex(i + 2, side => side.Key == whole.Key))
            {
                WrittenSide first = loop[i] with { To = corner }, second = loop[i] with { From = corner, Key = key };
                (loop[i], second) = loop[i].Ahead ? (first, second) : (second, first);
                loop.Insert(i + 1, second);
                if (i + 2 >= loop.Count)
                {
                    break;
                }
            }
        }
    }

    private static int End(Dictionary<int, int> into, int corner)
    {
        while (into.TryGetValue(corner, out int next))
        {
            corner = next;
        }

        return corner;
    }

    private static Dictionary<int, int> Clusters(FacedMesh boundary, List<List<WrittenSide>>[] faces)
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
                        Join(side.Start, next.Finish);
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
                        Key = kept.Key,
                        From = kept.From,
                        To = kept.To,
                        Ahead = loop[i].Ahead ^ (kept.From != gone.From),
                    };
                }
            }
        }
    }
}
