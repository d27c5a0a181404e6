using System.Collections.Immutable;
using System.Text.Json;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing.Solids;

namespace ShellForge.Benchmarks;

/// <summary>
/// Random trees to us and to the peer, over the very same operands: bodies on the lattice, which float32 holds exactly. Both results go
/// through the exact audit of float32 triangles; volumes are compared, and membership at random places with the places' exact winding
/// numbers in the operands. Results stay in DIR as ours-N.stl and peer-N.stl.
/// </summary>
internal static class DifferentialCommand
{
    private const int Places = 24;

    // Closer to the surface than this both may be right: contacts are opened by up to 0.002 mm, the rest is rounding.
    private const double Reach = 0.003;

    public static int Run(int seed, int count, string folder)
    {
        if (PeerScript.Find("differential.mjs") is not { } script)
        {
            return 2;
        }

        Directory.CreateDirectory(folder);
        RandomTrees generator = new(seed);
        List<(List<(bool Unites, SolidMesh Body)> Steps, SolidOutcome Ours)> trees = [];
        using (BinaryWriter file = new(File.Create(Path.Combine(folder, "trees.bin"))))
        {
            for (int n = 0; n < count; n++)
            {
                List<(bool Unites, SolidMesh Body)> steps =
                    [.. generator.Next().Select(step => (step.IsUnion, SolidEvaluator.Evaluate(step.Body()).Require()))];
                Write(file, steps);
                trees.Add((steps, SolidEvaluator.Evaluate(Tree(steps))));
            }
        }

        string[] lines = PeerScript.Run(script, Path.Combine(folder, "trees.bin"), folder).Split('\n',
            StringSplitOptions.RemoveEmptyEntries);
        if (lines.Length != count)
        {
            Console.Error.WriteLine($"The peer told of {lines.Length} trees of {count}.");
            return 2;
        }

        Tally tally = new();
        for (int n = 0; n < count; n++)
        {
            string name = $"seed {seed} tree {n}";
            if (trees[n].Ours.Solid is not { } solid)
            {
                tally.Defects++;
                Console.WriteLine($"{name}: {trees[n].Ours.Defect}");
                continue;
            }

            BinaryStl.Write(Path.Combine(folder, $"ours-{n}.stl"), solid.Mesh);
            Compare(name, trees[n].Steps, trees[n].Ours, BinaryStl.Read(Path.Combine(folder, $"peer-{n}.stl")), lines[n],
                unchecked((1000003 * seed) + n), tally);
        }

        Console.WriteLine(
            $"seed {seed}: {count} trees; rejected by the audit: ours {tally.OursRejected}, peer {tally.PeerRejected}; defects "
                + $"{tally.Defects}; "
            + $"volumes that differ by more than area x 2^-17 mm: {tally.Volumes}; "
            + $"{tally.Places} places, wrong in ours {tally.OursWrong}, in the peer's {tally.PeerWrong}");
        return tally.Defects + tally.OursRejected + tally.OursWrong + tally.Volumes == 0 ? 0 : 1;
    }

    private static void Compare(
        string name, List<(bool Unites, SolidMesh Body)> steps, SolidOutcome outcome, LooseTriangles peer, string line, int placeSeed,
        Tally tally)
    {
        Mesh ours = outcome.Solid!.Mesh;
        tally.OursRejected += MeshAudit.Run(LooseTriangles.Of(ours)).IsClean ? 0 : 1;
        tally.PeerRejected += peer.TriangleCount == 0 || MeshAudit.Run(peer).IsClean ? 0 : 1;
        using JsonDocument told = JsonDocument.Parse(line);
        double theirs = told.RootElement.GetProperty("volume").GetDouble(), own = BinaryStl.Volume(ours), area = Measure.Area(ours);
        if (Math.Abs(own - theirs) > Allowed(outcome, area))
        {
            tally.Volumes++;
            Console.WriteLine(
                $"{name}: volume {own:0.0000000} against {theirs:0.0000000} mm3, area {area:0.0} mm2, {outcome.Openings.Length} openings");
        }

        Random random = new(placeSeed);
        SurfaceTree surface = new(ours);
        Box3 box = Measure.Bounds(ours);
        for (int i = 0; i < Places; i++)
        {
            LatticePoint3 twice = new(
                Odd(random, box.Min.X, box.Max.X), Odd(random, box.Min.Y, box.Max.Y), Odd(random, box.Min.Z, box.Max.Z));
            Point3 place = 0.5 * twice.ToMillimetres();
            if (ClosestPoint.On(surface, place, Reach) is not null)
            {
                continue;
            }

            tally.Places++;
            bool inside = IsIn(steps, twice);
            bool weSay = ExactMembership.Winding(ours, twice) > 0;
            bool theySay = SolidAngle(peer, place) > 0.5;
            tally.OursWrong += weSay == inside ? 0 : 1;
            tally.PeerWrong += theySay == inside ? 0 : 1;
            if (weSay != inside || theySay != inside)
            {
                Console.WriteLine(
                    $"{name}: {place} is {(inside ? "inside" : "outside")}; ours {(weSay ? "inside" : "outside")}, peer "
                        + $"{(theySay ? "inside" : "outside")}");
            }
        }
    }

    // Every opening draws vertices by up to 64 steps a coordinate: a few mm2 each on bodies of this size.
    private static double Allowed(SolidOutcome outcome, double area) =>
        (area / (1 << 17)) + (outcome.Openings.Length * 64 * Lattice.Step * area);

    private static bool IsIn(List<(bool Unites, SolidMesh Body)> steps, LatticePoint3 twice)
    {
        bool inside = false;
        for (int i = 0; i < steps.Count; i++)
        {
            bool inBody = ExactMembership.Winding(steps[i].Body.Mesh, twice) > 0;
            inside = i == 0 ? inBody : steps[i].Unites ? inside || inBody : inside && !inBody;
        }

        return inside;
    }

    private static Solid Tree(List<(bool Unites, SolidMesh Body)> steps)
    {
        Solid tree = steps[0].Body.AsOperand();
        foreach ((bool unites, SolidMesh body) in steps.Skip(1))
        {
            tree = unites ? tree.And(body.AsOperand()) : tree.Less(body.AsOperand());
        }

        return tree;
    }

    // Twice a place between the two, or a little outside of them.
    private static int Odd(Random random, double from, double to) =>
        (2 * (int)((from - 0.2 + (random.NextDouble() * (to - from + 0.4))) * Lattice.StepsPerMillimetre)) + 1;

    // How often the triangles go round the place, by the solid angles they fill: needs no clean mesh.
    private static double SolidAngle(LooseTriangles triangles, Point3 place)
    {
        ImmutableArray<float> x = triangles.Coordinates;
        double sum = 0;
        for (int t = 0; t < triangles.TriangleCount; t++)
        {
            Point3 a = Corner(9 * t), b = Corner((9 * t) + 3), c = Corner((9 * t) + 6);
            double det = Point3.Dot(a, Point3.Cross(b, c));
            double divisor = (a.Length * b.Length * c.Length) + (Point3.Dot(a, b) * c.Length) + (Point3.Dot(b, c) * a.Length)
                + (Point3.Dot(c, a) * b.Length);
            sum += Trigonometry.Atan2Degrees(det, divisor);
        }

        return sum / 360;

        Point3 Corner(int at) => new Point3(x[at], x[at + 1], x[at + 2]) - place;
    }

    private static void Write(BinaryWriter file, List<(bool Unites, SolidMesh Body)> steps)
    {
        file.Write(steps.Count);
        foreach ((bool unites, SolidMesh body) in steps)
        {
            file.Write(unites ? 1 : 0);
            file.Write(body.Mesh.Vertices.Length);
            file.Write(body.TriangleCount);
            foreach (LatticePoint3 vertex in body.Mesh.Vertices)
            {
                Point3 place = vertex.ToMillimetres();
                file.Write(place.X);
                file.Write(place.Y);
                file.Write(place.Z);
            }

            foreach (int corner in body.Mesh.Triangles)
            {
                file.Write(corner);
            }
        }
    }

    private sealed class Tally
    {
        public int Defects { get; set; }

        public int OursRejected { get; set; }

        public int PeerRejected { get; set; }

        public int Volumes { get; set; }

        public int Places { get; set; }

        public int OursWrong { get; set; }

        public int PeerWrong { get; set; }
    }
}
