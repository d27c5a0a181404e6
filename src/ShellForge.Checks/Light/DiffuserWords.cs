using System.Globalization;
using ShellForge.Checks.Gauges;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Light;

/// <summary>
/// What can be done about a diffuser that shows dots or is too dim, as keys and numbers of the board file: the one asks for what the other
/// forbids, so both are said here.
/// </summary>
internal static class DiffuserWords
{
    /// <summary>Less than this of the light makes a front that looks weak by daylight.</summary>
    public const double Weak = 0.12;

    // What makers settle on.
    private const double Bright = 0.20;

    // Light gets more even with distance in about this step; more is asked for again.
    private const double Farther = 1.25;

    // The least that a board file can ask for.
    private const double LeastEvenness = 0.05;

    /// <summary>How the light along the LEDs becomes more even.</summary>
    public static string MoreEven(HousingUnderCheck housing, double found)
    {
        DiffuserPlan diffuser = housing.Plan.Diffuser;
        var ways = new List<string>();
        if (diffuser.Band is not null)
        {
            ways.Add("LEDs nearer to each other or farther from the wall");
        }
        else
        {
            if (housing.Board.Housing.Size?.Height is null)
            {
                double farther = Math.Ceiling(2 * Farther * diffuser.Distance) / 2;
                ways.Add(Text($"'diffuser: {{distance: {farther:0.#}}}' instead of {diffuser.Distance:0.##}"));
            }

            double thicker = diffuser.Thickness + (2 * PrintBasis.Of(housing.Board.Print).Layer);
            if (diffuser.Fit != DiffuserFit.CutSheet && FilamentOptics.Of(diffuser.Filament).Transmission(thicker) >= Weak)
            {
                ways.Add(Text($"'diffuser: {{thickness: {thicker:0.##}}}'"));
            }
        }

        double asItIs = Math.Max(LeastEvenness, Math.Floor(100 * found) / 100);
        ways.Add(Text($"'light: {{evenness: {asItIs:0.##}}}' takes it as it is"));
        return string.Join(", ", ways[..^1]) + (ways.Count > 1 ? ", or " : "") + ways[^1];
    }

    /// <summary>How more light comes through a printed diffuser.</summary>
    public static string Brighter(HousingUnderCheck housing)
    {
        DiffuserPlan diffuser = housing.Plan.Diffuser;
        if (housing.Light is { MinimumOverMean: double even } && even < housing.Board.Housing.Light.MinimumOverMean)
        {
            return "brighter LEDs ('power: {brightness: ...}'): a thinner diffuser would show its dots still more";
        }

        double layer = PrintBasis.Of(housing.Board.Print).Layer;
        double thinner = diffuser.Thickness;
        while (thinner > 2 * layer && FilamentOptics.Of(diffuser.Filament).Transmission(thinner) < Bright)
        {
            thinner = Math.Round(thinner - layer, 3);
        }

        double share = FilamentOptics.Of(diffuser.Filament).Transmission(thinner);
        return share > Weak
            ? Text($"'diffuser: {{thickness: {thinner:0.##}}}' lets {100 * share:0} % through")
            : "a filament that lets more light through at 'print: {diffuser: ...}'";
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
