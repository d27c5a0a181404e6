using ShellForge.Geometry.Numerics;

namespace ShellForge.Testing.Solids;

/// <summary>
/// Random trees biased to coincident faces: grid-placed boxes, cylinders, cones and tubes turned by 0, 11.25, 30, 45 and 90 degrees.
/// The generator (mulberry32) and the order of its draws are those of the peer's fuzz program, so tree N of a seed is the same solid.
/// </summary>
public sealed class RandomTrees
{
    private uint _state;

    public RandomTrees(int seed) => _state = (uint)seed;

    /// <summary>The next tree: a body and 3 to 10 steps, each a union or a cut with one more body.</summary>
    public List<TreeStep> Next()
    {
        List<TreeStep> steps = [Step()];
        int count = 3 + (int)Math.Floor(Draw() * 8);
        for (int i = 0; i < count; i++)
        {
            TreeStep step = Step();
            steps.Add(step with { IsUnion = Draw() < 0.6 });
        }

        return steps;
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

    private TreeStep Step()
    {
        BodyKind kind = Pick(BodyKind.Box, BodyKind.Cylinder, BodyKind.Cone, BodyKind.Tube);
        int sides = Pick(8, 16, 32, 64);
        double first = 4, second = 3, height = 4;
        if (kind == BodyKind.Box)
        {
            first = Pick(1, 2, 4, 8);
            second = Pick(1, 2, 4);
            height = Pick(1, 2, 4);
        }
        else if (kind == BodyKind.Cylinder)
        {
            height = Pick(1, 2, 4, 8);
            first = second = Pick(1, 2, 3, 4);
        }
        else if (kind == BodyKind.Cone)
        {
            height = Pick(1, 2);
            first = Pick(2, 3);
            second = Pick(1, 2);
        }

        double turnX = Pick(0.0, 0, 0, 90, 45, 30), turnZ = Pick(0, 0, 45, 90, 30, 11.25);
        double x = Grid(), y = Grid(), z = Grid();
        return new TreeStep(true, kind, sides, first, second, height, turnX, turnZ, new Point3(x, y, z));
    }
}
