using ShellForge.Geometry.Numerics;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Numerics;

public sealed class OrientationTests
{
    [Fact]
    public void Lattice_signs_are_exact_out_to_the_corners_of_the_domain()
    {
        var random = new Random(5);
        int zeros = 0;
        for (int i = 0; i < 20_000; i++)
        {
            // Corners of the domain, neighbours of them, and points a few steps off a plane through them.
            Point3[] p = [.. Enumerable.Range(0, 4).Select(_ => new Point3(Coordinate(random), Coordinate(random), Coordinate(random)))];
            if (random.Next(2) == 0)
            {
                Point3 middle = 0.5 * (p[0] + p[1]);
                p[3] = new Point3(Math.Floor(middle.X) + random.Next(-1, 2), Math.Floor(middle.Y), Math.Floor(middle.Z));
            }

            int expected = ExactSign(p);
            zeros += expected == 0 ? 1 : 0;
            Assert.Equal(expected, LatticeOrientation.Sign3(p[0], p[1], p[2], p[3]));
            Assert.Equal(expected, FloatingOrientation.Sign3(p[0], p[1], p[2], p[3]));
        }

        Assert.InRange(zeros, 100, 19_000);
    }

    [Fact]
    public void Floating_signs_are_exact_where_plain_arithmetic_is_lost()
    {
        var random = new Random(6);
        int hard = 0;
        for (int i = 0; i < 5_000; i++)
        {
            Point3 a = new(random.NextDouble(), random.NextDouble(), random.NextDouble());
            Point3 u = new(random.NextDouble(), random.NextDouble(), random.NextDouble());
            Point3 v = new(random.NextDouble() * 1e-9, random.NextDouble(), random.NextDouble() * 1e8);
            Point3[] p = [a, a + u, a + v, a + (0.25 * u) + (random.NextDouble() * v)];
            int expected = ExactSign(p);
            Assert.Equal(expected, FloatingOrientation.Sign3(p[0], p[1], p[2], p[3]));
            double plain = Point3.Dot(Point3.Cross(p[1] - p[0], p[2] - p[0]), p[3] - p[0]);
            hard += Math.Sign(plain) != expected ? 1 : 0;

            Rational exact2 = ((R(p[1].X) - R(p[0].X)) * (R(p[3].Y) - R(p[0].Y))) - ((R(p[1].Y) - R(p[0].Y)) * (R(p[3].X) - R(p[0].X)));
            Assert.Equal(exact2.Sign, FloatingOrientation.Sign2(p[0].X, p[0].Y, p[1].X, p[1].Y, p[3].X, p[3].Y));
        }

        Assert.True(hard > 100, $"only {hard} of 5000 were hard");
    }

    private static Rational R(double value) => Rational.FromDouble(value);

    private static double Coordinate(Random random) => random.Next(4) switch
    {
        0 => Lattice.Limit - random.Next(2),
        1 => -Lattice.Limit + random.Next(2),
        2 => random.Next(-2, 3),
        _ => random.Next(-Lattice.Limit, Lattice.Limit + 1),
    };

    private static int ExactSign(Point3[] p)
    {
        RationalPoint[] q = [.. p.Select(RationalPoint.From)];
        return RationalPoint.Dot(RationalPoint.Cross(q[1] - q[0], q[2] - q[0]), q[3] - q[0]).Sign;
    }
}
