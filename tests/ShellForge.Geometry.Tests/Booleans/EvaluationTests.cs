using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing.Solids;

namespace ShellForge.Geometry.Tests.Booleans;

/// <summary>How an evaluation behaves: same answers for any number of threads, stops when told, tells how far it is.</summary>
public class EvaluationTests
{
    private static readonly Solid Ball = Shapes.Sphere(10, 96);

    [Fact]
    public void One_thread_and_eight_find_the_same_pairs_in_the_same_order()
    {
        Solid tree = Ball.Less(Ball.Moved(Transform3.Shift(3, 2, 1)), Ball.Moved(Transform3.Shift(-4, 1, 0)));
        (Operand[] operands, _) = SolidFlattener.Flatten(tree, default);
        OperandSet scene = new(operands);

        (int, int)[] one = PairFinder.Find(scene, 1, default), eight = PairFinder.Find(scene, 8, default);

        Assert.InRange(one.Length, 500, int.MaxValue);
        Assert.Equal(one, eight);
    }

    [Fact]
    public void One_thread_and_eight_give_the_same_mesh()
    {
        List<Solid> bars = [];
        for (int i = -8; i <= 8; i++)
        {
            bars.Add(Shapes.Box(new(i - 0.3, -12, -0.4), new(i + 0.3, 12, 0.4)));
            bars.Add(Shapes.Box(new(-12, i - 0.25, -0.4), new(12, i + 0.25, 0.4)));
        }

        Solid grid = Ball.Less(Ball.Moved(Transform3.Shift(3, 2, 1))).And([.. bars]);

        Mesh one = SolidEvaluator.Evaluate(grid, 1, default).Require()
            .Mesh, eight = SolidEvaluator.Evaluate(grid, 8, default).Require().Mesh;

        Assert.InRange(one.TriangleCount, 5000, int.MaxValue);
        Assert.Equal(one.Vertices.AsSpan(), eight.Vertices.AsSpan());
        Assert.Equal(one.Triangles.AsSpan(), eight.Triangles.AsSpan());
        Assert.Equal(one.Tags.AsSpan(), eight.Tags.AsSpan());
    }

    [Fact]
    public void What_the_filter_drops_meets_nowhere()
    {
        foreach (List<TreeStep> steps in Trees(7, 6))
        {
            (Operand[] operands, _) = SolidFlattener.Flatten(TreeStep.Tree(steps), default);
            OperandSet scene = new(operands);
            HashSet<(int, int)> kept =
                [.. PairFinder.Find(scene, 2, default)
                    .Select(pair => (Math.Min(pair.First, pair.Second), Math.Max(pair.First, pair.Second)))];
            Meetings found = new(scene);
            PairIntersector all = new(scene, found);
            for (int a = 0; a < scene.TriangleCount; a++)
            {
                for (int b = a + 1; b < scene.TriangleCount; b++)
                {
                    if (!kept.Contains((a, b)))
                    {
                        all.Intersect(a, b);
                        Assert.True(found.TrianglePoints.Count == 0, $"Triangles {a} and {b} meet.");
                    }
                }
            }
        }
    }

    [Fact]
    public void A_cancelled_evaluation_stops()
    {
        using CancellationTokenSource source = new();

        Assert.ThrowsAny<OperationCanceledException>(() => SolidEvaluator.Evaluate(
            Ball.Less(Ball.Moved(Transform3.Shift(3, 2, 1))), source.Token, new Told(fraction => source.Cancel())));
    }

    [Fact]
    public void Progress_grows_to_one()
    {
        List<double> told = [];

        SolidEvaluator.Evaluate(Ball.Less(Ball.Moved(Transform3.Shift(3, 2, 1))), default, new Told(told.Add));

        Assert.InRange(told.Count, 4, 100);
        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
    }

    [Fact]
    public void A_quarter_turn_of_the_tree_is_one_of_the_result()
    {
        Transform3 quarter = Transform3.TurnZ(Angle.FromDegrees(90));
        foreach (List<TreeStep> steps in Trees(11, 6))
        {
            Solid tree = TreeStep.Tree(steps);
            SolidMesh here = SolidEvaluator.Evaluate(tree).Require(), there = SolidEvaluator.Evaluate(tree.Moved(quarter)).Require();

            // Halves go up here and there, so corners may differ by a step.
            double slack = (Measure.Area(here.Mesh) * 4 * Lattice.Step) + 1e-2;
            Assert.InRange(Measure.Volume(there.Mesh) - Measure.Volume(here.Mesh), -slack, slack);
        }
    }

    private static IEnumerable<List<TreeStep>> Trees(int seed, int count)
    {
        RandomTrees trees = new(seed);
        return Enumerable.Range(0, count).Select(_ => trees.Next());
    }

    private sealed class Told(Action<double> told) : IProgress<double>
    {
        public void Report(double value) => told(value);
    }
}
