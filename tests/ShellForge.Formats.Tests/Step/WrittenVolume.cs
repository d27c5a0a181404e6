using ShellForge.Formats.Step;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Tests.Step;

/// <summary>The volume within the faces that a file has: of the planes, cylinders and cones themselves, not of chords.</summary>
internal static class WrittenVolume
{
    // Faces as good as upright add nothing to the sum of heights over what faces cover seen from above.
    private const double Upright = 1e-7;

    // Of Gauss with five points, on [0, 1].
    private static readonly (double Share, double Weight)[] Points =
    [
        (0.5, 128.0 / 450), (0.5 - (Far(-1) / 2), Weight(1)), (0.5 + (Far(-1) / 2), Weight(1)),
        (0.5 - (Far(1) / 2), Weight(-1)), (0.5 + (Far(1) / 2), Weight(-1)),
    ];

    /// <summary>The volume in mm³, as the mesh lies.</summary>
    public static double Of(FacedMesh boundary)
    {
        double sum = 0;
        for (int face = 0; face < boundary.Written.Length; face++)
        {
            foreach (WrittenSide side in boundary.Written[face].SelectMany(loop => loop))
            {
                sum += (side.Ahead ? 1 : -1) * Along(boundary, face, side);
            }
        }

        return sum * Lattice.Step * Lattice.Step * Lattice.Step;
    }

    // Green: the sum of heights over an area is one along its border.
    private static double Along(FacedMesh boundary, int face, WrittenSide side)
    {
        RoundSurface? round = boundary.Round[face];
        Point3 n = boundary.Normal(face);
        if (round is { IsCylinder: true } || (round is null && Math.Abs(n.Z) < Upright))
        {
            return 0;
        }

        Point3 from = boundary.Corner(side.From), to = boundary.Corner(side.To);
        Point3 on = boundary.Corner(boundary.Written[face][0][0].From);
        double turn = side.Round is null ? 0 : WrittenSide.Turn(side.Round, from, to).Radians;
        int parts = 1 + (int)(turn * 12);
        double sum = 0;
        for (int i = 0; i < parts; i++)
        {
            foreach ((double share, double weight) in Points)
            {
                Point2 p = side.At(boundary, (i + share) / parts).XY;
                Point2 way = side.Round is null ? (to - from).XY : turn * new Point2(side.Round.Axis.Y - p.Y, p.X - side.Round.Axis.X);
                if (round is null)
                {
                    Point2 away = p - on.XY;
                    double height = ((on.Z - (n.Y / n.Z * away.Y)) * away.X) - (n.X / n.Z * away.X * away.X / 2);
                    sum += weight / parts * height * way.Y;
                }
                else
                {
                    Point2 away = p - round.Axis;
                    double r = away.Length;
                    double height = ((round.Level - (round.Radius / round.Slope)) / 2) + (r / (3 * round.Slope));
                    sum += weight / parts * height * Point2.Cross(away, way);
                }
            }
        }

        return sum;
    }

    private static double Far(int sign) => Math.Sqrt(5 + (sign * 2 * Math.Sqrt(10.0 / 7))) / 3;

    private static double Weight(int sign) => (322 + (sign * 13 * Math.Sqrt(70))) / 1800;
}
