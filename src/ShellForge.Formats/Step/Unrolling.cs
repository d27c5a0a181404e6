using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>Faces laid flat, in lattice steps.</summary>
internal static class Unrolling
{
    /// <summary>Where points of a face lie then: flat ones seen along an axis, round ones unrolled at their radius.</summary>
    public static Func<Point3, Point2> Of(FacedMesh boundary, int face) =>
        boundary.Round[face] is { } round ? Unrolled(boundary, face, round) : Flat(boundary.Normal(face));

    private static Func<Point3, Point2> Flat(Point3 normal)
    {
        double x = Math.Abs(normal.X), y = Math.Abs(normal.Y), z = Math.Abs(normal.Z);
        return z >= x && z >= y ? p => p.XY : x >= y ? p => new Point2(p.Y, p.Z) : p => new Point2(p.Z, p.X);
    }

    // The turn from the middle of the widest gap: no face goes all the way round.
    private static Func<Point3, Point2> Unrolled(FacedMesh boundary, int face, RoundSurface round)
    {
        double Towards(Point3 p) => Angle.Of(p.XY - round.Axis).Normalized.Degrees;
        double[] around =
        [
            .. boundary.Loops[face].SelectMany(loop => loop).SelectMany(run => run.Edges)
                .Select(e => Towards(boundary.Edges.Start(e))).Order(),
        ];
        int after = Enumerable.Range(0, around.Length).MaxBy(i => around[i] - (i == 0 ? around[^1] - 360 : around[i - 1]));
        double begin = (around[after] + (after == 0 ? around[^1] - 360 : around[after - 1])) / 2;
        return p => new Point2(Angle.FromDegrees(Towards(p) - begin).Normalized.Radians * round.Radius, p.Z);
    }
}
