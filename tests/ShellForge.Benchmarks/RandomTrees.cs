using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Benchmarks;

/// <summary>
/// Random trees biased to coincident faces: grid-placed boxes, cylinders, cones and tubes turned by 0, 11.25, 30, 45 and 90 degrees.
/// The generator (mulberry32) and the order of its draws are those of the peer's fuzz program, so tree N of a seed is the same solid.
/// </summary>
internal sealed class RandomTrees
{
    private uint _state;

    public RandomTrees(int seed) => _state = (uint)seed;

    /// <summary>The next tree: a body and 3 to 10 steps, each a union or a cut with one more primitive.</summary>
    public List<(bool IsUnion, Solid Operand)> Next()
    {
        List<(bool, Solid)> steps = [(true, Primitive())];
        int count = 3 + (int)Math.Floor(Draw() * 8);
        for (int i = 0; i < count; i++)
        {
            Solid operand = Primitive();
            steps.Add((Draw() < 0.6, operand));
        }

        return steps;
    }

    /// <summary>The steps as one solid.</summary>
    public static Solid Tree(IEnumerable<(bool IsUnion, Solid Operand)> steps)
    {
        Solid? tree = null;
        foreach ((bool isUnion, Solid operand) in steps)
        {
            tree = tree is null ? operand : isUnion ? tree.And(operand) : tree.Less(operand);
        }

        return tree ?? Solid.Empty;
    }

    private double Draw()
    {
        unchecked
        {
            _state += 0x6D2B79F5u;
            uint t = (_state ^ (_state >> 15)) * (1u | _state);
            t = (t + ((t ^ (t >> 7)) * (61u | t))) ^ t;
            return (t ^ (t >> 14)) / 4294967296.0;
        }
    }

    private T Pick<T>(params ReadOnlySpan<T> choices) => choices[(int)Math.Floor(Draw() * choices.Length)];

    // Halves go up, as in the peer's language.
    private double Grid() => Math.Floor((Draw() * 20) - 10 + 0.5) / 2;

    private Solid Primitive()
    {
        string kind = Pick("box", "cyl", "cone", "tube");
        int n = Pick(8, 16, 32, 64);
        Solid solid;
        if (kind == "box")
        {
            double x = Pick(1, 2, 4, 8), y = Pick(1, 2, 4), z = Pick(1, 2, 4);
            solid = Loft([new(0, 0), new(x, 0), new(x, y), new(0, y)], 0, [new(0, 0), new(x, 0), new(x, y), new(0, y)], z);
        }
        else if (kind == "cyl")
        {
            double height = Pick(1, 2, 4, 8), radius = Pick(1, 2, 3, 4);
            solid = Loft(Circle(radius, n), 0, Circle(radius, n), height);
        }
        else if (kind == "cone")
        {
            double height = Pick(1, 2), low = Pick(2, 3), high = Pick(1, 2);
            solid = Loft(Circle(low, n), 0, Circle(high, n), height);
        }
        else
        {
            solid = Loft(Circle(4, n), 0, Circle(4, n), 4).Less(Loft(Circle(3, n), 0, Circle(3, n), 4));
        }

        double turnX = Pick(0.0, 0, 0, 90, 45, 30), turnZ = Pick(0, 0, 45, 90, 30, 11.25);
        double dx = Grid(), dy = Grid(), dz = Grid();
        return solid.Moved(Transform3.TurnX(Angle.FromDegrees(turnX)).Then(Transform3.TurnZ(Angle.FromDegrees(turnZ)))
            .Then(Transform3.Shift(dx, dy, dz)));
    }

    private static Point2[] Circle(double radius, int n)
    {
        Point2[] points = new Point2[n];
        for (int i = 0; i < n; i++)
        {
            Angle angle = Angle.FromDegrees(360.0 * i / n);
            points[i] = new Point2(radius * angle.Cos, radius * angle.Sin);
        }

        return points;
    }

    private static SourceSolid Loft(Point2[] low, double lowZ, Point2[] high, double highZ)
    {
        int n = low.Length;
        List<Point3> vertices = [.. low.Select(p => new Point3(p.X, p.Y, lowZ)), .. high.Select(p => new Point3(p.X, p.Y, highZ))];
        List<int> triangles = [];
        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            triangles.AddRange([i, j, n + j, i, n + j, n + i]);
            if (i > 0 && j > 0)
            {
                triangles.AddRange([0, j, i, n, n + i, n + j]);
            }
        }

        return new SourceSolid([.. vertices], [.. triangles], []);
    }
}
