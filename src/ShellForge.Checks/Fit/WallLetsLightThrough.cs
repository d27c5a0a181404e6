using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning;

namespace ShellForge.Checks.Fit;

/// <summary>A wall beside the LEDs that glows.</summary>
public sealed class WallLetsLightThrough() : Rule(
    "wall-lets-light-through",
    "Walls beside the LEDs that are no diffuser must be thick enough for their plastic to stay dark.",
    "Thin or pale walls glow: the edge of the lamp shines, and neighbouring cells mix.",
    "level rays from every LED's window height in 24 directions: plastic of tub, cover and baffle along each, as a share of what its colour needs; the brightest below 1 warns, below 0.5 stops",
    "opaque from 1.2 mm black, 1.6 mm dark, 2.4 mm white; no thickness of natural or clear: trade knowledge, print a coupon")
{
    private const int Directions = 24;
    private const double BlackNeeds = 1.2;
    private const double DarkNeeds = 1.6;
    private const double WhiteNeeds = 2.4;

    // Transmission lengths that part black from dark, dark from white, white from natural, mm.
    private const double Black = 0.03;
    private const double Dark = 0.12;
    private const double White = 0.5;

    // A ray goes on behind the face it has left by this, mm: less than a lattice step, so no wall fits between.
    private const double Hair = 1e-6;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        if (housing.Board.Housing.Light.Through == LightThrough.Wall)
        {
            yield break;
        }

        CheckedPart[] dark = [.. housing.SoundParts.Where(part => part.Name is PartNames.Tub or PartNames.Baffle
            || (part.Name == PartNames.Cover && plan.Diffuser.Fit != DiffuserFit.OneWithCover))];
        (double Share, double Plastic, Point3 At, string Ref, FilamentProfile? Filament) brightest = (double.PositiveInfinity, 0, default, "", null);
        foreach (PixelCircle circle in housing.Board.Board.PixelCircles.Where(circle => circle.Facing == PixelFacing.Up))
        {
            foreach (Pixel pixel in circle.Pixels)
            {
                for (int i = 0; i < Directions; i++)
                {
                    Point2 to = Point2.Polar(1, Angle.FromDegrees((i + 0.5) * 360 / Directions));
                    var from = new Point3(pixel.At.X, pixel.At.Y, plan.Stack.BoardTop + circle.Led.Height);
                    var ray = new Point3(to.X, to.Y, 0);
                    double share = 0;
                    double plastic = 0;
                    Point3 last = from;
                    FilamentProfile? filament = null;
                    foreach (CheckedPart part in dark)
                    {
                        (double thickness, Point3 at) = Plastic(housing.TreeOf(part), from, ray);
                        share += thickness / Needs(part.Plan.Filament);
                        if (thickness > 0)
                        {
                            (plastic, last, filament) = (plastic + thickness, at, part.Plan.Filament);
                        }
                    }

                    if (share < brightest.Share && filament is not null)
                    {
                        brightest = (share, plastic, last, pixel.Ref, filament);
                    }
                }
            }
        }

        if (brightest.Share < 1 && brightest.Filament is { } pale)
        {
            double wanted = Needs(pale);
            yield return Found(
                brightest.Share < 0.5 ? Severity.Stop : Severity.Warn, "wall",
                double.IsFinite(wanted)
                    ? $"beside {brightest.Ref} light passes {brightest.Plastic:0.00} mm of {pale.Name}, which stays dark from {brightest.Plastic / brightest.Share:0.0} mm on"
                    : $"beside {brightest.Ref} light passes {brightest.Plastic:0.00} mm of {pale.Name}, which is dark at no thickness",
                brightest.Plastic, double.IsFinite(wanted) ? brightest.Plastic / brightest.Share : 0, brightest.At,
                "take a black filament for the shell, more lines of wall, or line the wall with foil");
        }
    }

    private static double Needs(FilamentProfile filament) => (double)filament.TransmissionLength switch
    {
        <= Black => BlackNeeds,
        <= Dark => DarkNeeds,
        <= White => WhiteNeeds,
        _ => double.PositiveInfinity,
    };

    // Plastic along a ray that starts in air, and where it leaves the last of it.
    private static (double Thickness, Point3 At) Plastic(SurfaceTree part, Point3 from, Point3 ray)
    {
        double thickness = 0;
        Point3 at = from;
        while (RayCast.First(part, at, ray, RayFaces.Entering) is { } entry && RayCast.First(part, entry.At, ray, RayFaces.Leaving) is { } exit)
        {
            thickness += exit.Distance;
            at = exit.At + (Hair * ray);
        }

        return (thickness, at);
    }
}
