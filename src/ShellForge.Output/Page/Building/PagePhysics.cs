using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Json;
using ShellForge.Checks.Gauges;
using ShellForge.Output.Light;
using ShellForge.Output.Looks;
using ShellForge.Physics.Heat;
using ShellForge.Planning.Hands;

namespace ShellForge.Output.Page.Building;

/// <summary>Light, heat and power in pictures and in words.</summary>
internal static class PagePhysics
{
    public static ImmutableArray<PagePicture> PicturesOf(HousingUnderCheck housing, HousingLooks looks) =>
        housing.Light is { } light && looks.LightSheet is { } sheet
            ?
            [
                new PagePicture(
                    "The light as computed, in false colours and as the eye sees it: all white, one LED, alternating colours",
                    LightPictures.InWords(light), sheet, Dark: true),
            ]
            : [];

    public static ImmutableArray<(string What, string Value, string Meaning)> FiguresOf(HousingUnderCheck housing)
    {
        var figures = ImmutableArray.CreateBuilder<(string, string, string)>();
        if (housing.Light is { } light)
        {
            figures.Add((
                "Evenness", light.MinimumOverMean is double even ? Share(even) : "dark",
                $"dimmest over mean along the pitch circle; asked for: {Share(housing.Board.Housing.Light.MinimumOverMean)}"));
        }

        AppendHeat(figures, housing);
        AppendPower(figures, housing.Power, housing.Board.Power.Brightness);
        return figures.ToImmutable();
    }

    /// <summary>How warm every body gets.</summary>
    public static PageTable TemperaturesOf(HousingUnderCheck housing)
    {
        HousingHeat heat = housing.Heat;
        string air = string.Create(CultureInfo.InvariantCulture, $"{heat.Input.AmbientCelsius:0} \u00b0C");
        var heads = ImmutableArray.Create("warmest place of", $"at {HandWords.Percent(housing.Board.Power.Brightness)}", "at full white");
        if (heat.CoolestCelsius is { } coolest)
        {
            heads = heads.Add(string.Create(CultureInfo.InvariantCulture, $"in air of {coolest:0} \u00b0C"));
        }

        return new PageTable($"Temperatures in air of {air}", heads, [.. heat.Planned.Nodes.Select(node => RowOf(heat, node))]);
    }

    private static ImmutableArray<string> RowOf(HousingHeat heat, NodeTemperature node)
    {
        var row = ImmutableArray.Create(
            node.Body.InWords(),
            string.Create(CultureInfo.InvariantCulture, $"{node.Celsius:0} \u00b0C ({node.Low:0} to {node.High:0})"),
            Celsius(heat.FullWhite[node.Body].Celsius));
        return heat.PlannedCoolest is { } cool ? row.Add(Celsius(cool[node.Body].Celsius)) : row;
    }

    private static string Celsius(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0} \u00b0C");

    private static void AppendHeat(ImmutableArray<(string, string, string)>.Builder figures, HousingUnderCheck housing)
    {
        HousingHeat heat = housing.Heat;
        figures.Add((
            "Warm after",
            string.Create(CultureInfo.InvariantCulture, $"{heat.Planned.MinutesToNinetyPercent:0} min"),
            "until the board has made 90 % of its rise"
                + (heat.PlannedCoolest is { } cool
                    ? string.Create(CultureInfo.InvariantCulture, $"; {cool.MinutesToNinetyPercent:0} min in the coolest air") : "")));

        figures.Add((
            "Brightness that the plastic bears", Most(heat.LargestBrightness),
            string.Create(CultureInfo.InvariantCulture,
                $"with the worst LEDs; {heat.WeakestFilament} is good to {heat.PlasticLimitCelsius:0} \u00b0C; planned: "
                    + $"{HandWords.Percent(housing.Board.Power.Brightness)}")));
    }

    private static void AppendPower(ImmutableArray<(string, string, string)>.Builder figures, BoardPower power, double brightness)
    {
        figures.Add((
            $"Current at {HandWords.Percent(brightness)}", TypicalAndWorst(power.Result.PlannedAmps, power.Result.PlannedStrongestAmps),
            $"at most {power.LimitInWords}"));
        figures.Add((
            "Current at full white", TypicalAndWorst(power.Result.FullWhiteAmps, power.Result.StrongestAmps),
            $"at most {power.LimitInWords}"));
        figures.Add((
            "Brightness that the supply bears", Most(power.Result.AllowedBrightness),
            $"with the worst LEDs; planned: {HandWords.Percent(brightness)}"));
    }

    private static string TypicalAndWorst(double typical, double worst) => $"{Amps(typical)} typical LEDs, {Amps(worst)} worst LEDs";

    private static string Amps(double value) => value.ToString("0.00", CultureInfo.InvariantCulture) + " A";

    private static string Share(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    // A limit is never told larger than it is; a whole percent stays one, whatever its last bit.
    private static string Most(double share) =>
        HandWords.Percent(double.IsFinite(share) ? RoundingConverter.NotAbove(Math.Min(1, share), 100) : 1);
}
