using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>Shells of connected faces, and the solids they bound.</summary>
internal static class StepShells
{
    /// <summary>Adds a solid for each outer shell, with the voids inside it.</summary>
    /// <param name="text">Where to.</param>
    /// <param name="edges">The mesh.</param>
    /// <param name="patches">The face of each triangle.</param>
    /// <param name="faces">The entity of each face; 0 where it has none.</param>
    public static IEnumerable<int> Of(StepText text, HalfEdges edges, int[] patches, int[] faces)
    {
        Shell[] shells = [.. Connected(edges, patches)];
        Shell[] outer = [.. shells.Where(shell => shell.Volume > 0)];
        ILookup<Shell, Shell> voids = shells.Where(shell => shell.Volume <= 0)
            .ToLookup(hollow => outer.Where(body => Holds(body.Box, hollow.Box)).MinBy(body => body.Volume)!);
        return [.. outer.Select(body =>
        {
            int closed = Closed(text, body, faces);
            int[] hollows =
            [
                .. voids[body].Select(hollow => text.Add($"ORIENTED_CLOSED_SHELL('',*,#{Closed(text, hollow, faces)},.T.)")),
            ];
            return hollows.Length == 0
                ? text.Add($"MANIFOLD_SOLID_BREP('',#{closed})")
                : text.Add($"BREP_WITH_VOIDS('',#{closed},{StepText.List(hollows)})");
        })];
    }

    private static int Closed(StepText text, Shell shell, int[] faces) =>
        text.Add($"CLOSED_SHELL('',{StepText.List(shell.Patches.Select(patch => faces[patch]).Where(face => face > 0))})");

    private static bool Holds(Box3 outer, Box3 inner) =>
        outer.Min.X <= inner.Min.X && outer.Min.Y <= inner.Min.Y && outer.Min.Z <= inner.Min.Z
        && outer.Max.X >= inner.Max.X && outer.Max.Y >= inner.Max.Y && outer.Max.Z >= inner.Max.Z;

    private static IEnumerable<Shell> Connected(HalfEdges edges, int[] patches)
    {
        bool[] seen = new bool[patches.Length];
        var waiting = new Stack<int>();
        for (int seed = 0; seed < seen.Length; seed++)
        {
            if (seen[seed])
            {
                continue;
            }

            var found = new SortedSet<int>();
            double volume = 0;
            Box3 box = Box3.Empty;
            seen[seed] = true;
            waiting.Push(seed);
            while (waiting.TryPop(out int t))
            {
                found.Add(patches[t]);
                Point3 a = edges.Start(3 * t), b = edges.Start((3 * t) + 1), c = edges.Start((3 * t) + 2);
                volume += Point3.Dot(a, Point3.Cross(b, c));
                box = box.Including(a).Including(b).Including(c);
                for (int e = 3 * t; e < (3 * t) + 3; e++)
                {
                    int other = HalfEdges.TriangleOf(edges.Twin(e));
                    if (!seen[other])
                    {
                        seen[other] = true;
                        waiting.Push(other);
                    }
                }
            }

            yield return new Shell([.. found], volume, box);
        }
    }

    private sealed record Shell(int[] Patches, double Volume, Box3 Box);
}
