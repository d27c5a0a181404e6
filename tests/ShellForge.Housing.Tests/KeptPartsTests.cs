using System.Collections.Concurrent;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Housing.Tests;

public class KeptPartsTests
{
    private const int TrianglesOfABox = 12;

    private static Solid Box(double size) => Shapes.Box(new Point3(0, 0, 0), new Point3(size, size, size));

    [Fact]
    public void A_part_drawn_alike_again_is_the_same_object_and_another_one_is_not()
    {
        var kept = new KeptParts();
        SolidOutcome first = kept.Evaluate(Box(2));

        Assert.Same(first, kept.Evaluate(Box(2)));
        Assert.Equal(1, kept.Found);
        Assert.Equal(3, kept.Evaluate(Box(3)).Require().Bounds().Size.X);
        Assert.Equal(SolidEvaluator.Evaluate(Box(2)).Require().Mesh.Vertices.ToArray(), first.Require().Mesh.Vertices.ToArray());
    }

    [Fact]
    public void Threads_that_ask_at_once_get_one_evaluation_and_the_bound_holds()
    {
        var kept = new KeptParts(5 * TrianglesOfABox);
        var seen = new ConcurrentDictionary<int, ConcurrentBag<SolidOutcome>>();
        Parallel.For(0, 400, new ParallelOptions { MaxDegreeOfParallelism = 8 }, i =>
        {
            int size = 1 + (i / 40);
            seen.GetOrAdd(size, _ => []).Add(kept.Evaluate(Box(size)));
            Assert.InRange(kept.Triangles, 0, 5 * TrianglesOfABox);
        });

        Assert.Equal(10, seen.Count);
        Assert.All(seen, size => Assert.All(size.Value, outcome => Assert.Equal(size.Key, outcome.Require().Bounds().Size.X)));
        Assert.InRange(kept.Found, 300, 390);
    }

    [Fact]
    public void What_was_not_asked_for_the_longest_goes_first()
    {
        var kept = new KeptParts(2 * TrianglesOfABox);
        SolidOutcome one = kept.Evaluate(Box(1));
        SolidOutcome two = kept.Evaluate(Box(2));
        Assert.Same(one, kept.Evaluate(Box(1)));
        kept.Evaluate(Box(3));

        Assert.Equal(2 * TrianglesOfABox, kept.Triangles);
        Assert.Same(one, kept.Evaluate(Box(1)));
        Assert.NotSame(two, kept.Evaluate(Box(2)));
    }

    [Fact]
    public void An_evaluation_that_was_stopped_is_not_kept()
    {
        var kept = new KeptParts();
        using var stop = new CancellationTokenSource();
        stop.Cancel();

        Assert.ThrowsAny<OperationCanceledException>(() => kept.Evaluate(Box(2), stop.Token));
        Assert.Equal(0, kept.Triangles);
        Assert.NotNull(kept.Evaluate(Box(2)).Solid);
    }
}
