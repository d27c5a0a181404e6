using System.Numerics;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Numerics;
using Plane = ShellForge.Geometry.Booleans.Exact.Plane;

namespace ShellForge.Geometry.Tests.Booleans;

/// <summary>
/// What planes and fractions compute in pieces of 64 and 128 bits, against integers of any size, up to the corners of the domain.
/// </summary>
public class ExactArithmeticTests
{
    [Fact]
    public void Heights_offsets_and_crossings_of_planes_agree_with_integers_of_any_size()
    {
        Random random = new(11);
        for (int i = 0; i < 5000; i++)
        {
            Plane plane = new(Point(random), Point(random), Point(random)), other = new(Point(random), Point(random), Point(random));
            LatticePoint3 p = Point(random), anchor = plane.Anchor;
            BigInteger offset = ((BigInteger)plane.Nx * anchor.X) + ((BigInteger)plane.Ny * anchor.Y) + ((BigInteger)plane.Nz * anchor.Z);
            BigInteger height = ((BigInteger)plane.Nx * p.X) + ((BigInteger)plane.Ny * p.Y) + ((BigInteger)plane.Nz * p.Z) - offset;

            Assert.Equal(offset, (BigInteger)plane.Offset);
            Assert.Equal(height, (BigInteger)plane.Height(p));
            Assert.Equal(height.Sign, Plane.DotSign(plane.Nx, plane.Ny, plane.Nz, p.X - anchor.X, p.Y - anchor.Y, p.Z - anchor.Z));
            Assert.Equal(height * p.X, (BigInteger)Fractions.Times(plane.Height(p), p.X));
            BigInteger[] cross =
            [
                ((BigInteger)plane.Ny * other.Nz) - ((BigInteger)plane.Nz * other.Ny),
                ((BigInteger)plane.Nz * other.Nx) - ((BigInteger)plane.Nx * other.Nz),
                ((BigInteger)plane.Nx * other.Ny) - ((BigInteger)plane.Ny * other.Nx),
            ];
            (int axis, int sense) = Plane.CrossSense(plane, other);
            Assert.Equal(cross[axis].Sign, sense);
            Assert.True(sense != 0 || cross.All(c => c.IsZero));
        }
    }

    // Corners of the domain, its middle, and places near each other, so that planes nearly or wholly coincide.
    private static LatticePoint3 Point(Random random) => new(Coordinate(random), Coordinate(random), Coordinate(random));

    private static int Coordinate(Random random) => random.Next(5) switch
    {
        0 => Lattice.Limit,
        1 => -Lattice.Limit,
        2 => random.Next(-2, 3),
        3 => Lattice.Limit - random.Next(3),
        _ => random.Next(-Lattice.Limit, Lattice.Limit + 1),
    };
}
