using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>What takes room along the outer wall near the parting line, as sectors about the axis.</summary>
internal sealed record RimSectors(double Radius, ImmutableArray<RimSector> Taken)
{
    // Directions are tried in steps of this size.
    private const double StepDegrees = 2;

    /// <summary>Openings in the wall, cable exit and closure screws of a draft.</summary>
    public static RimSectors Of(HousingDraft draft)
    {
        double radius = draft.Shell.Footprint.Loops.SelectMany(loop => loop).Max(point => point.Length);
        var taken = ImmutableArray.CreateBuilder<RimSector>();
        foreach (OpeningPlan opening in draft.Openings)
        {
            if (opening.InWall is { } wall)
            {
                taken.Add(new RimSector(Crossing(wall.Through, wall.Direction, radius), wall.Width, opening.Ref, wall.OpensRim));
            }
        }

        if (draft.CableExit?.AtRim is { } exit)
        {
            taken.Add(new RimSector(exit.At, exit.Width, "cable exit", exit.OpensRim));
        }

        foreach (ShellLobe lobe in draft.Shell.Lobes.Where(l => !l.IntoBore))
        {
            taken.Add(new RimSector(Angle.Of(lobe.At), 2 * lobe.Radius, "closure screw", false));
        }

        return new RimSectors(radius, taken.ToImmutable());
    }

    /// <summary>With one more sector taken.</summary>
    public RimSectors With(RimSector sector) => this with { Taken = Taken.Add(sector) };

    /// <summary>The direction in which a line through a point leaves the circle of a radius.</summary>
    public static Angle Crossing(Point2 from, Angle direction, double radius)
    {
        Point2 ray = Point2.Polar(1, direction);
        double along = Point2.Dot(from, ray);
        double rest = (radius * radius) - (Point2.Dot(from, from) - (along * along));
        return rest <= 0 ? direction : Angle.Of(from + ((Math.Sqrt(rest) - along) * ray));
    }

    /// <summary>Half the angle that a width takes at the wall.</summary>
    public Angle Half(double width) => Angle.FromRadians(width / 2 / Radius);

    /// <summary>Whether something of a width fits in a direction, with a margin to all that is there.</summary>
    public bool IsFree(Angle at, double width, double margin) => Taken.All(
        sector => Angle.Between(at, sector.At).Degrees > Half(width + sector.Width + (2 * margin)).Degrees);

    /// <summary>The free direction nearest to a preferred one; null when the whole rim is taken.</summary>
    public Angle? NearestFree(Angle preferred, double width, double margin)
    {
        for (double away = 0; away <= 180; away += StepDegrees)
        {
            foreach (double turn in new[] { away, -away })
            {
                Angle at = (preferred + Angle.FromDegrees(turn)).Normalized;
                if (IsFree(at, width, margin))
                {
                    return at;
                }
            }
        }

        return null;
    }
}

/// <summary>Something at the rim.</summary>
/// <param name="At">Its middle.</param>
/// <param name="Width">Along the wall, mm.</param>
/// <param name="What">What it is.</param>
/// <param name="OpensRim">Whether it cuts the tub's rim, so that no bead finds hold there.</param>
internal sealed record RimSector(Angle At, double Width, string What, bool OpensRim);
