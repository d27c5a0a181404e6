using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Heat;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Marks;

/// <summary>A planned housing as the model of heat takes it: what the plan decides vents by and what the checks judge.</summary>
public static class PlannedHeat
{
    private const double SquareMetre = 1_000_000;
    private const double Metre = 1000;
    private const double MilliampsPerAmp = 1000;

    // Volts at the LEDs, whatever comes in.
    private const double LedVolts = 5;

    /// <summary>The coefficients of a profile.</summary>
    public static HeatCoefficients CoefficientsOf(HeatProfile profile) => new()
    {
        UprightConvection = Of(profile.UprightConvection),
        UpConvection = Of(profile.UpConvection),
        DownConvection = Of(profile.DownConvection),
        AirConductivity = Of(profile.AirConductivity),
        BoardConductivity = Of(profile.BoardConductivity),
        PrintedPlastic = Of(profile.PrintedPlastic),
        Emissivity = Of(profile.Emissivity),
        HeatShare = Of(profile.HeatShare),
        LedToBoard = Of(profile.LedToBoard),
        ControllerToBoard = Of(profile.ControllerToBoard),
        VentDischarge = Of(profile.VentDischarge),
        AirHeat = profile.AirHeat,
        LedHeat = profile.LedHeat,
        ControllerHeat = profile.ControllerHeat,
    };

    /// <summary>What the most delicate of the LEDs bear, degrees Celsius; no limit without LEDs.</summary>
    public static double LedLimitCelsius(CircuitBoard board) =>
        board.PixelCircles.Select(circle => circle.Led.TemperatureLimitCelsius.Value).DefaultIfEmpty(double.PositiveInfinity).Min();

    /// <summary>Whether wall or table close the floor, so that neither it nor its vents give off heat.</summary>
    /// <param name="file">What was asked for: where the housing lives.</param>
    /// <param name="mount">The mount that was planned; null for none, one that was asked for and found no place among them.</param>
    public static bool FloorIsCovered(BoardFile file, MountPlan? mount) => FloorDirection(file, mount) == FaceDirection.Covered;

    /// <summary>What heats and cools a housing in the warmest surrounding air; without vents it is sealed.</summary>
    public static HeatInput InputOf(
        BoardFile file, ShellPlan shell, StackPlan stack, FrontSide front, MountPlan? mount, ImmutableArray<VentPlan> vents)
    {
        double Watts(Func<PixelCircle, double> milliamps) =>
            file.Board.PixelCircles.Sum(circle => circle.Pixels.Length * milliamps(circle)) / MilliampsPerAmp * LedVolts;

        CoverPlan cover = front.Cover;
        FilamentProfile plastic = file.Print.Shell;
        ImmutableArray<SectionRing> rings = HeatSection.Of(file, shell, front, vents);
        Box2 bounds = shell.Footprint.Bounds;
        double span = Math.Max(bounds.Max.X - bounds.Min.X, bounds.Max.Y - bounds.Min.Y) / Metre;
        double height = stack.Front / Metre;
        double round = 2 * Math.PI * (rings[^1].Outer + (shell.Wall / Metre));
        double bore = rings[0].Inner - (shell.Wall / Metre);
        bool hanging = file.Use.Orientation == UseOrientation.Hanging;
        return new HeatInput
        {
            Rings = rings,
            Floor = new HeatWall(stack.FloorTop / Metre, plastic.Conductivity),
            Wall = new HeatWall(shell.Wall / Metre, plastic.Conductivity),
            Bezel = new HeatWall(cover.BezelThickness / Metre, plastic.Conductivity),
            Diffuser = new HeatWall(front.Diffuser.Thickness / Metre, front.Diffuser.Filament.Conductivity),
            BelowBoard = stack.BelowBoard / Metre,
            BoardThickness = file.Board.Thickness / Metre,
            AboveToBezel = (stack.Front - cover.BezelThickness - stack.BoardTop) / Metre,
            AboveToDiffuser = (stack.DiffuserInner - stack.BoardTop) / Metre,
            Baffle = front.Baffle is { } baffle ? new HeatWall((baffle.Top - baffle.Bottom) / Metre, baffle.Filament.Conductivity)
                : default,
            BaffleOpening = HeatSection.BaffleOpening(file, front),
            FloorDirection = FloorDirection(file, mount),
            FrontDirection = file.Use.Orientation == UseOrientation.Table && !HoldsBackFree(mount) ? FaceDirection.Up
                : FaceDirection.Upright,
            Span = span,
            SideLength = file.Use.Orientation == UseOrientation.Table ? height : span,
            SideFactor = Math.Max(1, shell.Footprint.Filled().Perimeter / Metre / round),

            // A wall of a narrow bore sees itself: what it gives off to the other side does not count. The bore's mouths do.
            BoreFree = bore > 0 ? Math.Min(1, (hanging ? 2 : 1) * bore / (2 * height)) : 1,
            BoardHeat = file.Use.Air.BoardHeat,
            PlasticHeat = plastic.Density * Metre * file.Use.Air.PlasticHeat,
            LedFullWatts = Watts(circle => circle.Led.FullWhiteMilliamps),
            LedLeastFullWatts = Watts(circle => Math.Min(circle.Led.LeastWhiteMilliamps, circle.Led.FullWhiteMilliamps)),
            LedMostFullWatts = Watts(circle => Math.Max(circle.Led.WiringMilliamps, circle.Led.FullWhiteMilliamps)),
            LedIdleWatts = Watts(circle => circle.Led.IdleMilliamps),
            ControllerWatts = file.Board.Parts.Select(part => part.Watts).DefaultIfEmpty(0).Max(),
            Brightness = file.Power.Brightness,
            Duty = file.Power.Duty,
            AmbientCelsius = file.Use.WarmestCelsius,
            Vents = Openings(file, mount, vents),
        };
    }

    private static FaceDirection FloorDirection(BoardFile file, MountPlan? mount) =>
        HoldsBackFree(mount) || file.Use.Orientation == UseOrientation.Hanging ? FaceDirection.Upright : FaceDirection.Covered;

    // A stand or a tripod: nothing lies behind the floor.
    private static bool HoldsBackFree(MountPlan? mount) => mount is not null && double.IsPositiveInfinity(mount.OffSurface);

    // Slots of an upright floor: cool air comes in through the lower half of them and leaves through the upper half.
    private static VentOpenings Openings(BoardFile file, MountPlan? mount, ImmutableArray<VentPlan> vents)
    {
        if (vents.IsEmpty || FloorIsCovered(file, mount))
        {
            return default;
        }

        (double Height, double Area)[] slots =
        [
            .. vents.Select(vent => (
                (0.5 / Metre * (vent.Outline.Bounds.Min + vent.Outline.Bounds.Max).Turned(-1 * file.Up)).X,
                vent.Outline.Area / SquareMetre)).OrderBy(slot => slot.Item1),
        ];
        int half = slots.Length / 2;
        if (half == 0)
        {
            return default;
        }

        double low = slots[..half].Average(slot => slot.Height);
        double high = slots[^half..].Average(slot => slot.Height);
        return new VentOpenings(slots[..half].Sum(slot => slot.Area), slots[^half..].Sum(slot => slot.Area), high - low);
    }

    private static Coefficient Of(SourcedRange range) => new(range.Value, range.Low, range.High, range.Source);
}
