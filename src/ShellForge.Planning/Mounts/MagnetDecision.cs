using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Mounts;

/// <summary>Pockets for disc magnets of 8 x 3, glued in from inside, a thin skin of floor in front of them.</summary>
internal static class MagnetDecision
{
    private const double Diameter = 8.0;
    private const double Height = 3.0;

    // Glued fit: on the diameter and in depth, mm. Source: trade knowledge for sintered magnets of +-0.1.
    private const double OverDiameter = 0.15;
    private const double OverHeight = 0.2;
    private const double SkinWanted = 0.6;
    private const double Mark = 1.2;
    private const int CollarLines = 4;
    private const int Most = 4;
    private const int Least = 2;

    /// <summary>z of a pocket's rim.</summary>
    public static double Rim(PrintBasis basis) => basis.Up(basis.Up(SkinWanted) + Height + OverHeight);

    /// <summary>The pockets of a tub.</summary>
    public static MagnetMountPlan? Decide(HousingDraft draft, Reasons reasons)
    {
        PrintBasis basis = draft.Basis;
        double collar = Diameter + OverDiameter + (2 * basis.Wall(CollarLines));
        Region Shape(Point2 at) => Region.Disc(at, Ring.Hole(collar / 2));
        Region room = FloorRoom.Inside(draft, Rim(basis));
        ImmutableArray<Point2> at = Spread(draft, room, Shape);
        if (at.Length < Least)
        {
            reasons.Refuse(
                "mount-without-place", "magnets", "Parts and posts leave no place for two magnet pockets.",
                at.Length, Least, "pockets", new Point3(0, 0, 0), "mount: keyhole, or a taller space below the board");
            return null;
        }

        reasons.Choice("mount.magnets", at.Length.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
            "discs of 8 x 3, glued in from inside with one pole marked; the pull counts the skins of both sides as air");
        return new MagnetMountPlan
        {
            At = at,
            MagnetDiameter = Diameter,
            MagnetHeight = Height,
            PocketDiameter = Diameter + OverDiameter,
            Skin = basis.Up(SkinWanted),
            Rim = Rim(basis),
            CollarDiameter = collar,
            MarkDiameter = Mark,
        };
    }

    // One in each quarter, as far out as it fits.
    private static ImmutableArray<Point2> Spread(HousingDraft draft, Region room, Func<Point2, Region> shape)
    {
        var found = ImmutableArray.CreateBuilder<Point2>();
        for (int i = 0; i < Most; i++)
        {
            Angle towards = draft.File.Up + Angle.FromDegrees(45 + (i * 360.0 / Most));
            foreach (Point2 place in MountDecision.Places(room, towards, Diameter / 2, shape))
            {
                if (Angle.Between(Angle.Of(place), towards).Degrees > 180.0 / Most)
                {
                    break;
                }

                if (found.All(other => Point2.Distance(other, place) > 2 * Diameter))
                {
                    found.Add(place);
                    break;
                }
            }
        }

        return found.ToImmutable();
    }
}
