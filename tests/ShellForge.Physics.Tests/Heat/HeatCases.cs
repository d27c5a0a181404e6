using System.Collections.Immutable;
using ShellForge.Physics.Heat;

namespace ShellForge.Physics.Tests.Heat;

/// <summary>
/// Housings for the model of heat, the coefficients as they ship, and the samples' sections as measured off their drawings.
/// </summary>
internal static class HeatCases
{
    public static HeatCoefficients Typical { get; } = new()
    {
        UprightConvection = new(1.42, 1.2, 1.6, "upright plate"),
        UpConvection = new(1.32, 1.1, 1.5, "warm face up"),
        DownConvection = new(0.59, 0.5, 0.7, "warm face down"),
        AirConductivity = new(0.027, 0.026, 0.028, "air"),
        BoardConductivity = new(10, 3, 25, "laminate with copper"),
        PrintedPlastic = new(1, 0.75, 1.2, "lines and voids"),
        Emissivity = new(0.9, 0.85, 0.95, "plastics"),
        HeatShare = new(0.9, 0.85, 0.95, "the rest leaves as light"),
        LedToBoard = new(40, 25, 60, "small package"),
        ControllerToBoard = new(15, 8, 25, "module soldered flat"),
        VentDischarge = new(0.6, 0.5, 0.7, "sharp-edged slots"),
        AirHeat = 1130,
        LedHeat = 0.1,
        ControllerHeat = 3,
    };

    public static FieldCase Tide { get; } = new()
    {
        BoardOuter = 46,
        BoardInner = 23,
        Below = 6,
        Above = 5.4,
        WindowFrom = 33,
        WindowTo = 43,
        Rims = [(31.5, 0.86), (43, 0.86)],
        CellShare = 0.086,
        Sources = [(35.5, 40.5, 0.864), (25.5, 43.5, 0.5)],
    };

    public static FieldCase Dome { get; } = new()
    {
        BoardOuter = 75,
        BoardInner = 50,
        BoreGap = 1.35,
        Below = 12.6,
        Above = 4.2,
        WindowFrom = 58.5,
        WindowTo = 69.5,
        Rims = [(57, 0.86), (70, 0.86)],
        Sources = [(61.5, 66.5, 2.16), (53, 72, 0.5)],
    };

    public static FieldCase Mooring { get; } = new()
    {
        BoardOuter = 30,
        SideGap = 0.7,
        Below = 8.6,
        Above = 4.2,
        WindowFrom = 12,
        WindowTo = 22,
        Rims = [(11, 0.86), (22.5, 0.86)],
        Sources = [(14.5, 19.5, 0.432)],
    };

    /// <summary>The same housing as the model takes it: sources as LEDs whose whole power is heat.</summary>
    public static HeatInput InputOf(FieldCase housing)
    {
        const double mm = 1e-3;
        double wall = (housing.BoardOuter + housing.SideGap) * mm;
        double from = housing.BoardInner > 0 ? (housing.BoardInner - housing.BoreGap) * mm : 0;
        ImmutableArray<SectionRing> rings = SectionRings.Of(from, housing.BoardInner * mm, housing.BoardOuter * mm, wall);
        double height = housing.Floor + housing.Below + housing.BoardThickness + housing.Above + housing.FrontThickness;
        double mouth = (from - (housing.Wall * mm)) / 2 / (height * mm);
        return new HeatInput
        {
            Rings =
            [
                .. rings.Select(ring => ring with
                {
                    WindowShare = Share(ring, housing.WindowFrom * mm, housing.WindowTo * mm),
                    BaffleShare = housing.Rims.Sum(rim => Share(ring, rim.Radius * mm, (rim.Radius + rim.Thickness) * mm))
                        + (housing.Rims.Length > 1
                            ? housing.CellShare * Share(ring, housing.Rims[0].Radius * mm, housing.Rims[^1].Radius * mm) : 0),
                    Leds = 24 * housing.Sources.Sum(
                        source => source.Watts / housing.HeatWatts * Part(ring, source.From * mm, source.To * mm, rings)),
                }),
            ],
            Floor = new(housing.Floor * mm, housing.Plastic),
            Wall = new(housing.Wall * mm, housing.Plastic),
            Bezel = new(housing.FrontThickness * mm, housing.Plastic),
            Diffuser = new(housing.WindowThickness * mm, housing.Plastic),
            BelowBoard = housing.Below * mm,
            BoardThickness = housing.BoardThickness * mm,
            AboveToBezel = housing.Above * mm,
            AboveToDiffuser = (housing.Above + housing.FrontThickness - housing.WindowThickness) * mm,
            Baffle = housing.Rims.Length > 0 ? new(housing.Above * mm, housing.Plastic) : default,
            BaffleOpening = housing.Rims.Length > 1 ? (housing.Rims[1].Radius - housing.Rims[0].Radius) * 1.5 * mm : 0,
            FloorDirection = FaceDirection.Covered,
            FrontDirection = FaceDirection.Upright,
            Span = 2 * (wall + (housing.Wall * mm)),
            SideLength = 2 * (wall + (housing.Wall * mm)),
            BoreFree = Math.Min(1, mouth),
            BoardHeat = 2e6,
            PlasticHeat = 1.9e6,
            LedFullWatts = housing.HeatWatts / Typical.HeatShare.Value,
            LedLeastFullWatts = housing.HeatWatts / Typical.HeatShare.Value,
            LedMostFullWatts = housing.HeatWatts / Typical.HeatShare.Value,
            LedIdleWatts = 0,
            Brightness = 1,
            AmbientCelsius = housing.Ambient,
        };
    }

    private static double Share(SectionRing ring, double from, double to)
    {
        double low = Math.Max(ring.Inner, from);
        double high = Math.Min(ring.Outer, to);
        return high > low ? ((high * high) - (low * low)) / ((ring.Outer * ring.Outer) - (ring.Inner * ring.Inner)) : 0;
    }

    private static double Part(SectionRing ring, double from, double to, IEnumerable<SectionRing> rings)
    {
        double Under(SectionRing each) => each.Board ? Share(each, from, to) * each.Area : 0;
        return Under(ring) / rings.Sum(Under);
    }
}
