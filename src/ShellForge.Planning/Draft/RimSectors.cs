using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>What takes room along the outer wall near the parting line, as sectors about the axis.</summary>
/// <param name="Radius">Radius of the wall's outer face, where it is not round of the farthest place, mm.</param>
/// <param name="Taken">What is there.</param>
internal sealed record RimSectors(double Radius, ImmutableArray<RimSector> Taken)
{
    // What is cut straight out from the axis leaves knife edges of a wall that it meets at a slant, so the straightest places come first.
    private static readonly ImmutableArray<double> SlantDegrees = [15, 30, 45, 60, 75];

    // Places of the wall that are looked at on either side of the middle.
    private const int PlacesAside = 4;

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

        foreach (CableExitPlan exit in draft.CableExits)
        {
            if (exit.AtRim is { } rim)
            {
                taken.Add(new RimSector(rim.At, rim.Width, exit.Subject, rim.OpensRim));
            }
        }

        foreach (ShellLobe lobe in draft.Shell.Lobes.Where(l => !l.IntoBore))
        {
            taken.Add(new RimSector(Angle.Of(lobe.At), 2 * lobe.Radius, lobe.For, lobe.OpensRim));
        }

        return new RimSectors(radius, taken.ToImmutable()) { Outline = draft.Shell.Round is null ? draft.Shell.Cavity.Filled() : null };
    }

    /// <summary>The outer wall's inner face where it is not round; otherwise null.</summary>
    public Region? Outline { get; init; }

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

    /// <summary>How far the wall is from the axis in a direction, mm.</summary>
    public double RadiusAt(Angle direction) => Outline?.FarthestAlong(direction) is double far and > 0 ? far : Radius;

    /// <summary>Half the angle that a width takes at the wall in a direction.</summary>
    public Angle Half(double width, Angle at) => Angle.FromRadians(width / 2 / RadiusAt(at));

    /// <summary>Whether something of a width fits in a direction, with a margin to all that is there.</summary>
    public bool IsFree(Angle at, double width, double margin) => Taken.All(
        sector => Angle.Between(at, sector.At).Degrees
            > (Half(width + margin, at) + Half(sector.Width + margin, sector.At)).Degrees);

    /// <summary>
    /// The free direction nearest to a preferred one, where the wall lies as nearly across it as it does anywhere; null when the whole rim
    /// is taken.
    /// </summary>
    public Angle? NearestFree(Angle preferred, double width, double margin)
    {
        foreach (double slant in SlantDegrees)
        {
            for (double away = 0; away <= 180; away += StepDegrees)
            {
                foreach (double turn in new[] { away, -away })
                {
                    Angle at = (preferred + Angle.FromDegrees(turn)).Normalized;
                    if (IsFree(at, width, margin) && LiesAcross(at, width + (2 * margin), slant))
                    {
                        return at;
                    }
                }
            }
        }

        return null;
    }

    // Whether a wall, as wide as something that is cut out there, lies across a direction all along.
    private bool LiesAcross(Angle at, double width, double degrees)
    {
        if (Outline is null)
        {
            return true;
        }

        double steepest = Angle.FromDegrees(degrees).Sin / Angle.FromDegrees(degrees).Cos;
        Angle step = (1.0 / PlacesAside) * Half(width, at);
        Point2[] wall = [.. Enumerable.Range(-PlacesAside, (2 * PlacesAside) + 1).Select(i => at + (i * step))
            .Select(direction => Point2.Polar(RadiusAt(direction), direction).Turned(Angle.Zero - at))];
        return wall.Zip(wall.Skip(1)).All(side =>
            Math.Abs(side.Second.X - side.First.X) <= steepest * (side.Second.Y - side.First.Y));
    }
}

/// <summary>Something at the rim.</summary>
/// <param name="At">Its middle.</param>
/// <param name="Width">Along the wall, mm.</param>
/// <param name="What">What it is.</param>
/// <param name="OpensRim">Whether it cuts the tub's rim, so that no bead finds hold there.</param>
internal sealed record RimSector(Angle At, double Width, string What, bool OpensRim);
