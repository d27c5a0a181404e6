using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning;

/// <summary>Outlines moved sideways corner by corner, for chamfers: both outlines then have the same corners.</summary>
public static class Outlines
{
    /// <summary>How far a chamfer's cutter goes on past the bed and past the wall's face, mm, so that it crosses both cleanly.</summary>
    public const double ChamferReach = 0.3;

    // A corner sharper than this would shoot out far past the distance it is moved by: its mitre is longer than 4 times that.
    private const double LongestMitre = 4;

    /// <summary>
    /// A counter-clockwise outline with every side moved outward by a distance (negative: inward), each corner along its mitre.
    /// Null when sides vanish or cross on the way: the caller must do without.
    /// </summary>
    public static ImmutableArray<Point2>? Mitred(ImmutableArray<Point2> loop, double distance)
    {
        var moved = ImmutableArray.CreateBuilder<Point2>(loop.Length);
        for (int i = 0; i < loop.Length; i++)
        {
            Point2 before = loop[i] - loop[(i + loop.Length - 1) % loop.Length];
            Point2 after = loop[(i + 1) % loop.Length] - loop[i];
            Point2 n1 = (1 / before.Length) * new Point2(before.Y, 0 - before.X);
            Point2 n2 = (1 / after.Length) * new Point2(after.Y, 0 - after.X);
            double bend = 1 + Point2.Dot(n1, n2);
            if (bend < 2 / (LongestMitre * LongestMitre))
            {
                return null;
            }

            moved.Add(Lattice.Snap(loop[i] + ((distance / bend) * (n1 + n2))));
        }

        for (int i = 0; i < loop.Length; i++)
        {
            Point2 was = loop[(i + 1) % loop.Length] - loop[i];
            Point2 now = moved[(i + 1) % loop.Length] - moved[i];
            if (Point2.Dot(was, now) <= 0)
            {
                return null;
            }
        }

        ImmutableArray<Point2> result = moved.ToImmutable();
        return IsSimple(result) ? result : null;
    }

    /// <summary>Whether a chamfer can be cut along an outline.</summary>
    public static bool Chamferable(ImmutableArray<Point2> loop, double chamfer) =>
        Mitred(loop, -chamfer - (2 * ChamferReach)) is not null && Mitred(loop, 2 * ChamferReach) is not null;

    private static bool IsSimple(ImmutableArray<Point2> loop)
    {
        try
        {
            return !Region.Polygon(loop).IsEmpty;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
