using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Power;
using ShellForge.Physics.Heat;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Marks;

namespace ShellForge.Checks.Heat;

/// <summary>What findings on heat say alike.</summary>
internal static class HeatWords
{
    /// <summary>At which brightness: "At 20 %", or full white.</summary>
    public static string When(HousingUnderCheck housing, bool planned) => planned
        ? $"At {HandWords.Percent(housing.Board.Power.Brightness)}"
        : "At full white, which the firmware does not cap,";

    /// <summary>The same, of a cap that holds.</summary>
    public static string Yours(HousingUnderCheck housing) => $"At your {HandWords.Percent(housing.Board.Power.Brightness)}";

    /// <summary>Which plastic.</summary>
    public static string Where(HeatBody body) => body switch
    {
        HeatBody.Board => "the plastic beside the board",
        HeatBody.FloorInside => "the floor",
        HeatBody.FrontInside => "the front",
        HeatBody.BoreInside => "the bore's wall",
        _ => "the wall",
    };

    /// <summary>A temperature with its range: "51 °C (48 to 58, by your LEDs' dies)".</summary>
    public static string Range(NodeTemperature node) => string.Create(
        CultureInfo.InvariantCulture, $"{node.Celsius:0} \u00b0C ({node.Low:0} to {node.High:0}, by your LEDs' dies)");

    /// <summary>How to let air through the housing; null where it goes through already.</summary>
    public static string? Vented(HousingUnderCheck housing) => !housing.Plan.Vents.IsEmpty ? null
        : PlannedHeat.FloorIsCovered(housing.Board, housing.Plan.Mount)
            ? "let air get behind it ('mount: stand' or 'use: {orientation: hanging}', with 'vents: floor')"
            : "let air through it ('vents: floor')";

    /// <summary>
    /// The plastic that just bears a temperature, in the colours that are used, as keys of the board file; null where no profile has one.
    /// </summary>
    public static string? Filament(HousingUnderCheck housing, double celsius)
    {
        PrintSpec print = housing.Board.Print;
        (string Key, FilamentProfile Filament)[] weak =
        [
            .. new (string Key, FilamentProfile? Filament)[]
                {
                    ("shell", print.Shell), ("diffuser", print.Diffuser), ("baffle", print.Baffle),
                }
                .Where(each => each.Filament is { } filament && filament.ServiceLimitCelsius < celsius)
                .Select(each => (each.Key, each.Filament!)),
        ];
        IGrouping<string, FilamentProfile>? family = print.Known.Where(filament => filament.ServiceLimitCelsius >= celsius)
            .GroupBy(filament => filament.Family, StringComparer.Ordinal)
            .Where(each => weak.All(part => each.Any(filament => filament.Colour == part.Filament.Colour)))
            .MinBy(each => each.Min(filament => filament.ServiceLimitCelsius.Value));
        return family is null || weak.Length == 0 ? null
            : $"print it of {family.Key} ('print: {{" + string.Join(", ", weak.Select(part =>
                $"{part.Key}: {family.First(filament => filament.Colour == part.Filament.Colour).Name}")) + "}')";
    }

    /// <summary>What makes a lamp cooler, as keys and numbers of the board file.</summary>
    /// <param name="housing">The housing.</param>
    /// <param name="plasticCelsius">What another filament would have to bear, degrees Celsius; null where it is not the filament that
    /// fails.</param>
    public static string Cooler(HousingUnderCheck housing, double? plasticCelsius)
    {
        string? dimmed = BrightnessCap.Remedy(housing, housing.Heat.LargestBrightness);
        var ways = new List<string>();
        if (dimmed is not null)
        {
            ways.Add(dimmed);
        }

        if (plasticCelsius is double celsius && Filament(housing, celsius) is { } filament)
        {
            ways.Add(filament);
        }

        if (Vented(housing) is { } vented)
        {
            ways.Add(vented);
        }

        if (dimmed is null)
        {
            ways.Add("take fewer LEDs or a larger board");
        }

        string listed = ways.Count < 2 ? string.Join("", ways) : string.Join(", ", ways[..^1]) + ", or " + ways[^1];
        return dimmed is not null ? listed : "dimming alone does not help: " + listed;
    }
}
