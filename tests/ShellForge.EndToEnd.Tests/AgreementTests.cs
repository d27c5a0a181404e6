using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using ShellForge.Checks.PrintTime;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>A number that stands in several outputs is the same number in all of them, as printed.</summary>
public partial class AgreementTests
{
    public static TheoryData<string> Boards =>
    [
        .. Repository.Samples.Select(folder => Path.Combine("out-samples", Path.GetFileName(folder)!, "board.yaml")),
        .. Directory.GetFiles(Repository.At("tests", "boards", "forms"), "*.yaml").Order(StringComparer.Ordinal)
            .Select(path => Path.Combine("tests", "boards", "forms", Path.GetFileName(path))),
    ];

    [Theory]
    [MemberData(nameof(Boards))]
    public void Every_output_of_a_board_says_the_same(string board)
    {
        using var folder = new TemporaryFolder();
        Outputs made = Outputs.Of(folder, Repository.At(board));

        PlasticAndTimeAgree(made);
        SizesAgree(made);
        ThingsToBuyAgree(made);
        LightHeatAndPowerAgree(made);
    }

    [Theory]
    [InlineData("0.29", "29 %")]
    [InlineData("0.58", "58 %")]
    [InlineData("0.125", "12.5 %")]
    public void The_planned_brightness_is_told_as_it_was_written(string brightness, string percent)
    {
        using var folder = new TemporaryFolder();
        Outputs made = Outputs.Of(
            folder, Repository.At("out-samples", "mooring-beacon", "board.yaml"), "--set", $"power.brightness={brightness}");

        Assert.Contains($"|Current at {percent}|", made.Page, StringComparison.Ordinal);
        Assert.Contains($"|at {percent}|", made.Page, StringComparison.Ordinal);
        Assert.Contains($"planned for {percent} of full white", made.Page, StringComparison.Ordinal);
        Assert.Contains($" {percent}", Flat(made.Terminal), StringComparison.Ordinal);
        LightHeatAndPowerAgree(made);
    }

    private static void PlasticAndTimeAgree(Outputs made)
    {
        JsonElement all = made.Report.GetProperty("print");
        Assert.Equal(all.GetProperty("plastic_g").GetDouble(), made.Sheet.GetProperty("plastic_g").GetDouble());
        Assert.Equal(all.GetProperty("minutes").GetDouble(), made.Sheet.GetProperty("minutes").GetDouble());
        string time = PrintEstimate.Duration(all.GetProperty("minutes").GetDouble());
        double grams = all.GetProperty("plastic_g").GetDouble();
        Match told = Summary().Match(made.Terminal);
        Assert.True(told.Success, made.Terminal);
        Assert.Equal(time, told.Groups["time"].Value);
        Assert.InRange(double.Parse(told.Groups["grams"].Value, CultureInfo.InvariantCulture), grams - 0.55, grams + 0.55);
        Assert.Contains($"{told.Groups["grams"].Value} g of plastic, {time} on the printer", made.Page, StringComparison.Ordinal);
        JsonElement[] sheets = [.. made.Sheet.GetProperty("parts").EnumerateArray()];
        JsonElement[] parts = [.. made.Report.GetProperty("parts").EnumerateArray()];
        Assert.Equal(parts.Length, sheets.Length);
        foreach ((JsonElement part, JsonElement sheet) in parts.Zip(sheets))
        {
            JsonElement print = part.GetProperty("print");
            string name = part.GetProperty("name").GetString()!;
            Assert.Equal(name, sheet.GetProperty("name").GetString());
            Assert.Equal(print.GetProperty("plastic_g").GetRawText(), sheet.GetProperty("plastic_g").GetRawText());
            Assert.Equal(print.GetProperty("filament_m").GetRawText(), sheet.GetProperty("filament_m").GetRawText());
            Assert.Equal(print.GetProperty("minutes").GetRawText(), sheet.GetProperty("minutes").GetRawText());
            Assert.Equal(part.GetProperty("size_mm").ToString(), sheet.GetProperty("size_mm").ToString());
            string mass = print.GetProperty("plastic_g").GetDouble().ToString("0.0", CultureInfo.InvariantCulture);
            string minutes = PrintEstimate.Duration(print.GetProperty("minutes").GetDouble());
            string[] size = [.. part.GetProperty("size_mm").EnumerateArray()
                .Select(each => each.GetDouble().ToString("0.0", CultureInfo.InvariantCulture))];
            string own = made.PrintText[made.PrintText.IndexOf($"\n{name} ", StringComparison.Ordinal)..];
            own = own[..own.IndexOf("\n\n", StringComparison.Ordinal)];
            Assert.Contains($", {mass} g", own, StringComparison.Ordinal);
            Assert.Contains($"time      {minutes}", own, StringComparison.Ordinal);
            Assert.Contains($"size      {string.Join(" x ", size)} mm", own, StringComparison.Ordinal);
            Assert.Matches($@"\n{name} .*{string.Join(" x ", size)} +{Regex.Escape(mass)} +{minutes}\n", made.Terminal);
            Assert.Contains($"|{string.Join(" \u00d7 ", size)} mm|{mass} g|{minutes}", made.Page, StringComparison.Ordinal);
        }
    }

    private static void SizesAgree(Outputs made)
    {
        Match told = Summary().Match(made.Terminal);
        Assert.Contains(
            $"{told.Groups["x"].Value} \u00d7 {told.Groups["y"].Value} mm, {told.Groups["z"].Value} mm high", made.Page,
            StringComparison.Ordinal);
        string plan = made.Drawing("plan");
        string section = made.Drawing("section");
        string tub = made.Drawing("tub");
        string wall = made.Resolved("shell.wall")!;
        Assert.All(Walls().Matches(plan + tub), told => Assert.Equal(wall, told.Groups[1].Value));
        Assert.Contains($"|{made.Resolved("stack.front")}|", section, StringComparison.Ordinal);
        Assert.Contains($"|{made.Resolved("stack.parting-line")}|", tub, StringComparison.Ordinal);
        Assert.Contains($"|floor {made.Resolved("stack.floor")}|", tub, StringComparison.Ordinal);
        if (made.Resolved("shell.outer-diameter") is { } outer)
        {
            Assert.Equal(2, Walls().Count(plan + tub));
            Assert.All([plan, section, tub, made.Drawing("cover")],
                text => Assert.Contains($"|\u00d8{outer}|", text, StringComparison.Ordinal));
        }

        if (made.Resolved("shell.bore-diameter") is { } bore && Number(bore) > 0)
        {
            Assert.Contains($"|bore \u00d8{bore}|", plan, StringComparison.Ordinal);
            Assert.Contains($"|\u00d8{bore}|", tub, StringComparison.Ordinal);
        }

        // The levels of the section are those between which the light's distance was decided.
        if (made.Resolved("diffuser.distance") is { } distance && Level(section, "LED window") is { } led
            && Level(section, "diffuser inside") is { } inside)
        {
            Assert.Equal(Number(distance), inside - led, 2);
        }
    }

    private static void ThingsToBuyAgree(Outputs made)
    {
        foreach (JsonElement item in made.Report.GetProperty("shopping").EnumerateArray())
        {
            (string what, int count) = (item.GetProperty("item").GetString()!, item.GetProperty("count").GetInt32());
            Assert.Contains($"{count} x {what}", Flat(made.Terminal), StringComparison.Ordinal);
            Assert.Contains($"|{what}|{count}|", made.Page, StringComparison.Ordinal);
        }
    }

    private static void LightHeatAndPowerAgree(Outputs made)
    {
        JsonElement physics = made.Report.GetProperty("physics");
        JsonElement power = physics.GetProperty("power");
        foreach ((string typical, string worst) in new[]
        {
            ("planned_typical_leds_amps", "planned_worst_leds_amps"), ("full_white_typical_leds_amps", "full_white_worst_leds_amps"),
        })
        {
            (double low, double high) = (power.GetProperty(typical).GetDouble(), power.GetProperty(worst).GetDouble());
            Assert.Contains(Currents().Matches(made.Page), told => IsRounded(told.Groups[1].Value, low, 0.01, 0.001)
                && IsRounded(told.Groups[2].Value, high, 0.01, 0.001));
        }

        Assert.Contains($"|Brightness that the supply bears|{Most(power.GetProperty("allowed_brightness"))}|", made.Page,
            StringComparison.Ordinal);
        JsonElement heat = physics.GetProperty("heat");
        Assert.Contains($"|Brightness that the plastic bears|{Most(heat.GetProperty("largest_brightness"))}|", made.Page,
            StringComparison.Ordinal);
        string planned = (100 * heat.GetProperty("brightness").GetDouble()).ToString("0.#", CultureInfo.InvariantCulture);
        Assert.Contains($"|Current at {planned} %|", made.Page, StringComparison.Ordinal);
        foreach (JsonElement node in heat.GetProperty("nodes").EnumerateArray())
        {
            double celsius = node.GetProperty("celsius").GetDouble();
            Assert.Contains(Temperatures().Matches(made.Page), told => IsRounded(told.Groups[1].Value, celsius, 1, 0.1));
        }

        if (physics.TryGetProperty("light", out JsonElement light) && light.ValueKind == JsonValueKind.Object
            && light.GetProperty("minimum_over_mean") is { ValueKind: JsonValueKind.Number } even)
        {
            Assert.True(IsRounded(Evenness().Match(made.Page).Groups[1].Value, even.GetDouble(), 0.01, 0.001));
        }
    }

    private static string Most(JsonElement share) =>
        share.ValueKind != JsonValueKind.Number ? "100 %"
            : Math.Floor(Math.Round(100 * Math.Min(1, share.GetDouble()), 6)).ToString("0", CultureInfo.InvariantCulture) + " %";

    // The same number, once to a step and once to a finer one.
    private static bool IsRounded(string told, double finer, double step, double finerStep) =>
        Math.Abs(Number(told) - finer) <= ((step + finerStep) / 2) + 1e-9;

    private static double? Level(string section, string name) =>
        Regex.Match(section, $@"\|([0-9.]+)  {Regex.Escape(name)}\|") is { Success: true } found ? Number(found.Groups[1].Value) : null;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Flat(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    [GeneratedRegex(@"(?<x>[0-9.]+) x (?<y>[0-9.]+) mm, (?<z>[0-9.]+) mm high; \d+ parts?,\s+(?<grams>\d+) g,\s+(?<time>.+?)\s+to\s+print")]
    private static partial Regex Summary();

    [GeneratedRegex(@"\|([0-9.]+) A typical LEDs, ([0-9.]+) A worst LEDs\|")]
    private static partial Regex Currents();

    [GeneratedRegex(@"\|(-?[0-9]+) \u00b0C \(")]
    private static partial Regex Temperatures();

    [GeneratedRegex(@"\|wall ([0-9.]+)\|")]
    private static partial Regex Walls();

    [GeneratedRegex(@"\|Evenness\|([0-9.]+)\|")]
    private static partial Regex Evenness();

    [GeneratedRegex("<script.*?</script>|<style.*?</style>|<svg.*?</svg>", RegexOptions.Singleline)]
    private static partial Regex Unread();

    [GeneratedRegex("(<[^>]*>\\s*)+")]
    private static partial Regex Tags();

    private sealed record Outputs(string Terminal, JsonElement Report, JsonElement Sheet, string PrintText, string Page, string Folder)
    {
        public static Outputs Of(TemporaryFolder folder, string board, params string[] more)
        {
            (int exit, string told) = CommandRun.Run(folder.Path, ["make", board, "-o", folder.Path, "--formats", "leds", .. more]);
            Assert.True(exit is 0 or 1, told);
            return new Outputs(told, Json(folder.File("report.json")), Json(folder.File("print.json")),
                File.ReadAllText(folder.File("print.txt")), Text(File.ReadAllText(folder.File("report.html"))), folder.Path);
        }

        public string Drawing(string name) => Text(File.ReadAllText(Path.Combine(Folder, name + ".svg")), keep: true);

        public string? Resolved(string path) => Report.GetProperty("resolved").TryGetProperty(path, out JsonElement found)
            ? found.GetProperty("value").GetString() : null;

        private static JsonElement Json(string path)
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(path));
            return document.RootElement.Clone();
        }

        // What a reader sees, a bar between what stands apart.
        private static string Text(string markup, bool keep = false) => WebUtility.HtmlDecode(
            Tags().Replace(keep ? markup : Unread().Replace(markup, "|"), "|")).Replace('\u00a0', ' ');
    }
}
