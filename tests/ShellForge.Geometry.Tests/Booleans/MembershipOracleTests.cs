using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing.Solids;

namespace ShellForge.Geometry.Tests.Booleans;

/// <summary>Results against membership in whole numbers, on random trees, also on lattices 16 and 64 times coarser.</summary>
public class MembershipOracleTests
{
    private const int Trees = 6;
    private const int Places = 24;

    [Theory]
    [InlineData(101, 1)]
    [InlineData(102, 1)]
    [InlineData(103, 1.0 / 16)]
    [InlineData(104, 1.0 / 64)]
    public void A_place_is_in_the_result_exactly_when_the_tree_says_so(int seed, double scale)
    {
        RandomTrees trees = new(seed);
        Random random = new(seed);
        int tried = 0, inside = 0;
        for (int n = 0; n < Trees; n++)
        {
            Solid tree = TreeStep.Tree(trees.Next().Select(step => step.Scaled(scale)));
            SolidOutcome outcome = SolidEvaluator.Evaluate(tree);
            Assert.True(outcome.Solid is not null, outcome.Defect?.ToString());
            Mesh mesh = outcome.Solid!.Mesh;
            Mesh[] leaves = [.. ExactMembership.Leaves(tree)];
            SurfaceTree[] surfaces = [.. leaves.Select(leaf => new SurfaceTree(leaf))];

            // Nearer to a face of the operands than rounding, merging and opening may move it, nothing is promised.
            double reach = Lattice.Step * (outcome.Openings.IsEmpty ? 4 + (4 * outcome.MergeSteps) : 130);
            for (int i = 0; i < Places; i++)
            {
                LatticePoint3 place = Near(leaves[random.Next(leaves.Length)], random, reach);
                Point3 at = new(place.X * Lattice.Step / 2, place.Y * Lattice.Step / 2, place.Z * Lattice.Step / 2);
                if (surfaces.Any(s => ClosestPoint.On(s, at, reach) is not null))
                {
                    continue;
                }

                bool expected = ExactMembership.IsIn(tree, place);
                Assert.Equal(expected ? 1 : 0, ExactMembership.Winding(mesh, place));
                tried++;
                inside += expected ? 1 : 0;
            }
        }

        // Not all skipped, and both answers seen.
        Assert.InRange(tried, Trees * Places / 3, Trees * Places);
        Assert.InRange(inside, 1, tried - 1);
    }

    // A little off a random spot of a face, on either side; twice the place, in odd numbers.
    private static LatticePoint3 Near(Mesh mesh, Random random, double reach)
    {
        int t = 3 * random.Next(mesh.TriangleCount);
        double u = random.NextDouble(), v = random.NextDouble() * (1 - u);
        Point3 a = mesh.Vertices[mesh.Triangles[t]].ToMillimetres();
        Point3 b = mesh.Vertices[mesh.Triangles[t + 1]].ToMillimetres(), c = mesh.Vertices[mesh.Triangles[t + 2]].ToMillimetres();
        double off = reach * 2 * Math.Pow(10, 2 * random.NextDouble());
        Point3 spot = a + (u * (b - a)) + (v * (c - a))
            + (off * new Point3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5));
        return new LatticePoint3(Odd(spot.X), Odd(spot.Y), Odd(spot.Z));
    }

    private static int Odd(double millimetres) => (2 * (int)Math.Floor(millimetres / Lattice.Step)) + 1;
}
