using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// What makes a file a closed body, asked of the faces as they are written and of nothing that led to them: each edge has two faces that
/// run along it in opposite ways and say the same of it, loops are closed, edges lie on the surfaces of both their faces, and a face is as
/// large as the triangles that it stands for.
/// </summary>
internal static class WrittenCheck
{
    /// <summary>What a file says of its own accuracy, steps.</summary>
    public const double Accuracy = 2 * Tolerances.FlatnessSteps;

    /// <summary>How far a point may lie off its surface, steps: the last digit of a length rounds by a step at each end.</summary>
    public const double Off = Accuracy + 2;

    /// <summary>The faces that break one of it.</summary>
    public static SortedSet<int> Faults(FacedMesh boundary, List<List<WrittenSide>>[] faces)
    {
        var faults = new SortedSet<int>();
        var uses = new Dictionary<int, List<(int Face, WrittenSide Side)>>();
        for (int face = 0; face < faces.Length; face++)
        {
            foreach (List<WrittenSide> loop in faces[face])
            {
                foreach (WrittenSide side in loop)
                {
                    if (!uses.TryGetValue(side.Key, out List<(int, WrittenSide)>? before))
                    {
                        uses.Add(side.Key, before = []);
                    }

                    before.Add((face, side));
                }
            }

            // What was thinner than that is one edge.
            if (faces[face].Count == 0)
            {
                continue;
            }

            if (!IsClosed(faces[face]) || !IsOnSurface(boundary, face, faces[face]) || !IsAsLarge(boundary, face, faces[face]))
            {
                faults.Add(face);
            }
        }

        foreach (List<(int Face, WrittenSide Side)> of in uses.Values.Where(of => of.Count != 2 || !Match(of[0].Side, of[1].Side)))
        {
            faults.UnionWith(of.Select(use => use.Face));
        }

        return faults;
    }

    private static bool Match(WrittenSide side, WrittenSide other) =>
        side.Ahead != other.Ahead && (side.From, side.To, side.Kind, side.Plane) == (other.From, other.To, other.Kind, other.Plane)
        && side.From != side.To;

    private static bool IsClosed(List<List<WrittenSide>> loops) => loops.All(loop => loop.Count > 0
        && Enumerable.Range(0, loop.Count).All(i => loop[i].Finish == loop[(i + 1) % loop.Count].Start));

    private static bool IsOnSurface(FacedMesh boundary, int face, List<List<WrittenSide>> loops)
    {
        IEnumerable<Point3> points = loops.SelectMany(loop => loop).SelectMany(side => side.Points(boundary));
        if (boundary.Round[face] is { } round)
        {
            return points.All(p => Math.Abs(round.Off(p)) <= Off);
        }

        Point3 normal = boundary.Normal(face);
        double level = Point3.Dot(normal, boundary.Corner(loops[0][0].From));
        return points.All(p => Math.Abs(Point3.Dot(normal, p) - level) <= Off);
    }

    // An arc that goes the long way round, or a loop the wrong way, makes another area; what corners and chords move by does not. What is
    // thinner than the file is accurate has no side that it looks to.
    private static bool IsAsLarge(FacedMesh boundary, int face, List<List<WrittenSide>> loops)
    {
        Func<Point3, Point2> flat = Unrolling.Of(boundary, face);
        double written = loops.Sum(loop => Area([.. loop.SelectMany(side => side.Points(boundary).SkipLast(1)).Select(flat)]));
        List<Point2>[] chords =
        [
            .. boundary.Loops[face].Select(loop => loop.SelectMany(run => run.Edges).Select(boundary.Edges.Start).Select(flat).ToList()),
        ];
        double made = chords.Sum(Area);
        double around = chords.Sum(loop => loop.Select((p, i) => Point2.Distance(p, loop[(i + 1) % loop.Count])).Sum());
        bool sameSide = Math.Sign(written) == Math.Sign(made) || Math.Abs(made) <= around * Off;
        return sameSide && Math.Abs(written - made) <= around * FacedMesh.FurthestMove;
    }

    private static double Area(List<Point2> loop) => loop.Select((p, i) => Point2.Cross(p, loop[(i + 1) % loop.Count])).Sum() / 2;
}
