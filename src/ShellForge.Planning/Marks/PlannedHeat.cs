using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Planar;
using ShellForge.Physics.Heat;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Marks;

/// <summary>A planned housing as the model of heat takes it: what the plan decides vents by and what the checks judge.</summary>
public static class PlannedHeat
{
    private const double SquareMetre = 1_000_000;
    private const double Metre = 1000;
    private const double CubicMetre = 1_000_000_000;
    private const double MilliampsPerAmp = 1000;

    // Volts at the LEDs, whatever comes in.
    private const double LedVolts = 5;

    /// <summary>The coefficients of a profile.</summary>
    public static HeatCoefficients CoefficientsOf(HeatProfile profile) => new()
    {
        UprightConvection = Of(profile.UprightConvection),
        UpConvection = Of(profile.UpConvection),
        DownConvection = Of(profile.DownConvection),
        InnerConvection = Of(profile.InnerConvection),
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
    public static bool FloorIsCovered(BoardFile file) => FloorDirection(file) == FaceDirection.Covered;

    /// <summary>What heats and cools a housing in the warmest surrounding air.</summary>
    public static HeatInput InputOf(
        BoardFile file, ShellPlan shell, StackPlan stack, CoverPlan cover, DiffuserPlan diffuser, ImmutableArray<VentPlan> vents)
    {
        double board = file.Board.Outline.Region.Area / SquareMetre;
        double Watts(Func<PixelCircle, double> milliamps) =>
            file.Board.PixelCircles.Sum(circle => circle.Pixels.Length * milliamps(circle)) / MilliampsPerAmp * LedVolts;

        // The part that gives off most is the controller; the rest warms the board.
        double parts = file.Board.Parts.Sum(part => part.Watts);
        double controller = file.Board.Parts.Select(part => part.Watts).DefaultIfEmpty(0).Max();
        double inside = shell.Cavity.Area * (stack.DiffuserInner - stack.FloorTop) / CubicMetre;
        return new HeatInput
        {
            Walls = Walls(file, shell, stack, cover, diffuser),
            BoardArea = board,
            BoardHeatCapacity = board * (file.Board.Thickness / Metre) * file.Use.Air.BoardHeat,
            Leds = file.Board.PixelCircles.Sum(circle => circle.Pixels.Length),
            LedFullWatts = Watts(circle => circle.Led.FullWhiteMilliamps),
            LedIdleWatts = Watts(circle => circle.Led.IdleMilliamps),
            ControllerWatts = controller,
            OtherWatts = parts - controller,
            Brightness = file.Power.Brightness,
            Duty = file.Power.Duty,
            AmbientCelsius = file.Use.WarmestCelsius,
            AirVolume = Math.Max(0, inside - (board * file.Board.Thickness / Metre)),
            Vents = Openings(file, vents),
        };
    }

    private static ImmutableArray<HousingWall> Walls(BoardFile file, ShellPlan shell, StackPlan stack, CoverPlan cover, DiffuserPlan diffuser)
    {
        Region footprint = shell.Footprint;
        FilamentProfile plastic = file.Print.Shell;
        double height = stack.Front / Metre;
        double room = (stack.DiffuserInner - stack.FloorTop) / Metre;
        double span = Math.Max(footprint.Bounds.Max.X - footprint.Bounds.Min.X, footprint.Bounds.Max.Y - footprint.Bounds.Min.Y) / Metre;
        double plate = footprint.Area / SquareMetre;
        double roomPlate = shell.Cavity.Area / SquareMetre;
        Region outer = footprint.Filled();
        double round = outer.Perimeter / Metre;
        double roundInside = shell.Cavity.Filled().Perimeter / Metre;
        FaceDirection sides = FaceDirection.Upright;
        var walls = ImmutableArray.CreateBuilder<HousingWall>();
        walls.Add(Wall("floor", plate, roomPlate, stack.FloorTop / Metre, FloorDirection(file), span));
        walls.Add(Wall("side", round * height, roundInside * room, shell.Wall / Metre, sides, file.Use.Orientation == UseOrientation.Table ? height : span));
        walls.Add(Front(file, cover, diffuser, plate, roomPlate, span));
        double bore = (footprint.Perimeter / Metre) - round;
        if (bore > 0)
        {
            // A wall of a narrow bore sees itself: what it gives off to the other side does not count. The bore's mouth does.
            double mouth = (outer.Area - footprint.Area) / SquareMetre;
            double free = Math.Min(bore * height, (file.Use.Orientation == UseOrientation.Hanging ? 2 : 1) * mouth);
            double boreInside = (shell.Cavity.Perimeter / Metre) - roundInside;
            walls.Add(Wall("bore", free, Math.Max(boreInside, bore) * room, shell.Wall / Metre, sides, span));
        }

        return walls.ToImmutable();

        HousingWall Wall(string name, double outerArea, double innerArea, double thickness, FaceDirection direction, double length) => new(
            name, outerArea, innerArea, thickness, plastic.Conductivity, direction, length,
            outerArea * thickness * plastic.Density * Metre * file.Use.Air.PlasticHeat);
    }

    // Bezel and diffuser side by side: conductances add by area.
    private static HousingWall Front(BoardFile file, CoverPlan cover, DiffuserPlan diffuser, double plate, double roomPlate, double span)
    {
        double window = cover.Window.Area / SquareMetre;
        double bezel = cover.BezelThickness / Metre;
        double sheet = diffuser.Thickness / Metre;
        double through = (Math.Max(0, plate - window) * file.Print.Shell.Conductivity / bezel)
            + (window * diffuser.Filament.Conductivity / sheet);
        double conductivity = file.Print.Shell.Conductivity;
        double thickness = conductivity * plate / through;
        return new HousingWall(
            "front", plate, roomPlate, thickness * roomPlate / plate, conductivity,
            file.Use.Orientation == UseOrientation.Table && file.Housing.Mount != MountKind.Stand ? FaceDirection.Up : FaceDirection.Upright,
            span, plate * bezel * file.Print.Shell.Density * Metre * file.Use.Air.PlasticHeat);
    }

    private static FaceDirection FloorDirection(BoardFile file) =>
        file.Housing.Mount == MountKind.Stand || file.Use.Orientation == UseOrientation.Hanging ? FaceDirection.Upright : FaceDirection.Covered;

    // Slots of an upright floor: cool air comes in through the lower half of them and leaves through the upper half.
    private static VentOpenings Openings(BoardFile file, ImmutableArray<VentPlan> vents)
    {
        if (vents.IsEmpty || FloorIsCovered(file))
        {
            return default;
        }

        (double Height, double Area)[] slots =
        [
            .. vents.Select(vent => (
                (0.5 / Metre * (vent.Outline.Bounds.Min + vent.Outline.Bounds.Max).Turned(-1 * file.Up)).X, vent.Outline.Area / SquareMetre)).OrderBy(slot => slot.Item1),
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
