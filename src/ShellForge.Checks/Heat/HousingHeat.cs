using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Planar;
using ShellForge.Physics.Heat;
using ShellForge.Planning;

namespace ShellForge.Checks.Heat;

/// <summary>Heat of a housing: what went into the model, and what came out.</summary>
public sealed record HousingHeat
{
    // LEDs and boards bear this in continuous use, degrees C. Source: data sheets of addressable LEDs, -25 to +80.
    private const double LedLimitCelsius = 80;

    // Laminate: J/m3K. Typical for FR-4 with copper.
    private const double BoardHeatPerVolume = 2.0e6;

    // Plastic: J/kgK. Typical.
    private const double PlasticHeatPerMass = 1500;

    private const double SquareMetre = 1_000_000;
    private const double Metre = 1000;
    private const double CubicMetre = 1_000_000_000;
    private const double MilliampsPerAmp = 1000;

    // Volts at the LEDs, whatever comes in.
    private const double LedVolts = 5;

    /// <summary>What the model took.</summary>
    public required HeatInput Input { get; init; }

    /// <summary>The coefficients that both were worked out with.</summary>
    public required HeatCoefficients Coefficients { get; init; }

    /// <summary>At the planned brightness.</summary>
    public required HeatResult Planned { get; init; }

    /// <summary>At full white.</summary>
    public required HeatResult FullWhite { get; init; }

    /// <summary>Service limit of the weakest filament in the warm, degrees Celsius.</summary>
    public required double PlasticLimitCelsius { get; init; }

    /// <summary>Glass transition of that filament.</summary>
    public required double PlasticSoftensCelsius { get; init; }

    /// <summary>Its name.</summary>
    public required string WeakestFilament { get; init; }

    /// <summary>What LEDs bear.</summary>
    public double LedLimit { get; init; } = LedLimitCelsius;

    /// <summary>Largest brightness at which plastic and LEDs stay within their limits, 0 to 1.</summary>
    public required double LargestBrightness { get; init; }

    /// <summary>Whether there are vents that the wall or the table behind the floor closes.</summary>
    public required bool VentsCovered { get; init; }

    /// <summary>The heat of a housing.</summary>
    public static HousingHeat Of(HousingUnderCheck housing)
    {
        BoardFile file = housing.Board;
        FilamentProfile weakest = Filaments(housing).MinBy(filament => filament.ServiceLimitCelsius.Value)!;
        HeatInput input = InputOf(housing);
        HeatCoefficients coefficients = HeatCoefficients.Typical;
        return new HousingHeat
        {
            Input = input,
            Coefficients = coefficients,
            Planned = HeatModel.Of(input, coefficients),
            FullWhite = HeatModel.Of(input with { Brightness = 1, Duty = 1 }, coefficients),
            PlasticLimitCelsius = weakest.ServiceLimitCelsius,
            PlasticSoftensCelsius = weakest.GlassTransitionCelsius,
            WeakestFilament = weakest.Name,
            LargestBrightness = HeatModel.LargestBrightness(input, coefficients, result =>
                result.WarmestPlastic.Celsius <= weakest.ServiceLimitCelsius && result["leds"].Celsius <= LedLimitCelsius),
            VentsCovered = !housing.Plan.Vents.IsEmpty && FloorDirection(file) == FaceDirection.Covered,
        };
    }

    private static IEnumerable<FilamentProfile> Filaments(HousingUnderCheck housing) =>
        housing.Plan.Parts.Where(part => part.Name != PartNames.Stand).Select(part => part.Filament);

    private static HeatInput InputOf(HousingUnderCheck housing)
    {
        BoardFile file = housing.Board;
        HousingPlan plan = housing.Plan;
        double board = file.Board.Outline.Region.Area / SquareMetre;
        double Watts(Func<PixelCircle, double> milliamps) =>
            file.Board.PixelCircles.Sum(circle => circle.Pixels.Length * milliamps(circle)) / MilliampsPerAmp * LedVolts;

        // The part that gives off most is the controller; the rest warms the board.
        double parts = file.Board.Parts.Sum(part => part.Watts);
        double controller = file.Board.Parts.Select(part => part.Watts).DefaultIfEmpty(0).Max();
        double inside = plan.Shell.Cavity.Area * (plan.Stack.DiffuserInner - plan.Stack.FloorTop) / CubicMetre;
        return new HeatInput
        {
            Walls = Walls(file, plan),
            BoardArea = board,
            BoardHeatCapacity = board * (file.Board.Thickness / Metre) * BoardHeatPerVolume,
            Leds = file.Board.PixelCircles.Sum(circle => circle.Pixels.Length),
            LedFullWatts = Watts(circle => circle.Led.FullWhiteMilliamps),
            LedIdleWatts = Watts(circle => circle.Led.IdleMilliamps),
            ControllerWatts = controller,
            OtherWatts = parts - controller,
            Brightness = file.Power.Brightness,
            Duty = file.Power.Duty,
            AmbientCelsius = file.Use.AmbientCelsius,
            AirVolume = Math.Max(0, inside - (board * file.Board.Thickness / Metre)),
            Vents = Vents(file, plan),
        };
    }

    private static ImmutableArray<HousingWall> Walls(BoardFile file, HousingPlan plan)
    {
        Region footprint = plan.Shell.Footprint;
        FilamentProfile shell = file.Print.Shell;
        double height = plan.Stack.Front / Metre;
        double room = (plan.Stack.DiffuserInner - plan.Stack.FloorTop) / Metre;
        double span = Math.Max(footprint.Bounds.Max.X - footprint.Bounds.Min.X, footprint.Bounds.Max.Y - footprint.Bounds.Min.Y) / Metre;
        double plate = footprint.Area / SquareMetre;
        double roomPlate = plan.Shell.Cavity.Area / SquareMetre;
        Region outer = footprint.Filled();
        double round = outer.Perimeter / Metre;
        double roundInside = plan.Shell.Cavity.Filled().Perimeter / Metre;
        FaceDirection sides = FaceDirection.Upright;
        var walls = ImmutableArray.CreateBuilder<HousingWall>();
        walls.Add(Wall("floor", plate, roomPlate, plan.Stack.FloorTop / Metre, FloorDirection(file), span));
        walls.Add(Wall("side", round * height, roundInside * room, plan.Shell.Wall / Metre, sides, file.Use.Orientation == UseOrientation.Table ? height : span));
        walls.Add(Front(file, plan, plate, roomPlate, span));
        double bore = (footprint.Perimeter / Metre) - round;
        if (bore > 0)
        {
            // A wall of a narrow bore sees itself: what it gives off to the other side does not count. The bore's mouth does.
            double mouth = (outer.Area - footprint.Area) / SquareMetre;
            double free = Math.Min(bore * height, (file.Use.Orientation == UseOrientation.Hanging ? 2 : 1) * mouth);
            double boreInside = (plan.Shell.Cavity.Perimeter / Metre) - roundInside;
            walls.Add(Wall("bore", free, Math.Max(boreInside, bore) * room, plan.Shell.Wall / Metre, sides, span));
        }

        return walls.ToImmutable();

        HousingWall Wall(string name, double outerArea, double innerArea, double thickness, FaceDirection direction, double length) => new(
            name, outerArea, innerArea, thickness, shell.Conductivity, direction, length,
            outerArea * thickness * shell.Density * Metre * PlasticHeatPerMass);
    }

    // Bezel and diffuser side by side: conductances add by area.
    private static HousingWall Front(BoardFile file, HousingPlan plan, double plate, double roomPlate, double span)
    {
        double window = plan.Cover.Window.Area / SquareMetre;
        double bezel = plan.Cover.BezelThickness / Metre;
        double sheet = plan.Diffuser.Thickness / Metre;
        double through = (Math.Max(0, plate - window) * file.Print.Shell.Conductivity / bezel)
            + (window * plan.Diffuser.Filament.Conductivity / sheet);
        double conductivity = file.Print.Shell.Conductivity;
        double thickness = conductivity * plate / through;
        return new HousingWall(
            "front", plate, roomPlate, thickness * roomPlate / plate, conductivity,
            file.Use.Orientation == UseOrientation.Table && plan.Mount is not StandMountPlan ? FaceDirection.Up : FaceDirection.Upright,
            span, plate * bezel * file.Print.Shell.Density * Metre * PlasticHeatPerMass);
    }

    private static FaceDirection FloorDirection(BoardFile file) =>
        file.Housing.Mount == MountKind.Stand || file.Use.Orientation == UseOrientation.Hanging ? FaceDirection.Upright : FaceDirection.Covered;

    // Slots of an upright floor: cool air comes in through the lower half of them and leaves through the upper half.
    private static VentOpenings Vents(BoardFile file, HousingPlan plan)
    {
        if (plan.Vents.IsEmpty || FloorDirection(file) == FaceDirection.Covered)
        {
            return default;
        }

        (double Height, double Area)[] slots =
        [
            .. plan.Vents.Select(vent => (
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
}
