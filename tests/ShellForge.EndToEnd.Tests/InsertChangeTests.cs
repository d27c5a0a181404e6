using System.Globalization;
using System.Text.Json;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>Changing the insert alone re-does everything that hangs on it.</summary>
public sealed class InsertChangeTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private static string Sample => Repository.At("out-samples", "tide-lamp");

    private JsonElement Made(string name, params string[] more)
    {
        (int exit, string told) = CommandRun.Run(Sample, ["make", "board.yaml", "-o", _folder.File(name), .. more]);
        Assert.True(exit is 0 or 1, told);
        return ReportIn(_folder.File(name));
    }

    private static JsonElement ReportIn(string folder) =>
        JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, "report.json"))).RootElement;

    private static double Resolved(JsonElement report, string path) =>
        double.Parse(report.GetProperty("resolved").GetProperty(path).GetProperty("value").GetString()!, CultureInfo.InvariantCulture);

    private static string Shopping(JsonElement report) => string.Join(
        "\n", report.GetProperty("shopping").EnumerateArray().Select(item => item.GetProperty("item").GetString()));

    [Fact]
    public void A_larger_insert_changes_bosses_holes_screws_and_shopping_together()
    {
        // Only the insert: the screw follows its thread, and the board's holes stay as they were drilled.
        JsonElement small = ReportIn(Sample);
        JsonElement large = Made("large", "--set", "housing.insert=m3x4-od5.0");

        Assert.True(Resolved(large, "bosses.boss-1.diameter") > Resolved(small, "bosses.boss-1.diameter"));
        Assert.True(Resolved(large, "insert.m3x4-od5.0.hole-diameter") > Resolved(small, "insert.m2.5x4-od4.6.hole-diameter"));
        Assert.Contains("insert M2.5", Shopping(small), StringComparison.Ordinal);
        Assert.DoesNotContain("M3", Shopping(small), StringComparison.Ordinal);
        Assert.Contains("insert M3", Shopping(large), StringComparison.Ordinal);
        Assert.Contains("screw M3", Shopping(large), StringComparison.Ordinal);
        Assert.DoesNotContain("M2.5", Shopping(large), StringComparison.Ordinal);

        // Wider bosses are more plastic, and M3 screws through 2.7 mm holes of the board are found.
        Assert.NotEqual(Volume(small, "tub"), Volume(large, "tub"));
        Assert.Contains(
            large.GetProperty("findings").EnumerateArray(),
            finding => finding.GetProperty("severity").GetString() == "stop"
                && finding.GetProperty("rule").GetString()!.Contains("screw", StringComparison.Ordinal));
    }

    private static double Volume(JsonElement report, string part) => report.GetProperty("parts").EnumerateArray()
        .Single(p => p.GetProperty("name").GetString() == part).GetProperty("volume_mm3").GetDouble();
}
