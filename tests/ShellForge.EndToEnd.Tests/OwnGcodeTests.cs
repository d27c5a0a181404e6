using System.Text.Json;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Cli;
using ShellForge.Pipeline;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// The maker's own G-code, written by a real slicer from a part of a sample: read, told beside the plan, and found where it contradicts it.
/// </summary>
public sealed class OwnGcodeTests : IDisposable
{
    private static readonly string Folder = Repository.At("out-samples", "mooring-beacon");

    private static readonly Lazy<HousingUnderCheck> Housing =
        new(() => HousingPipeline.Draw(WrittenBoard.At(Path.Combine(Folder, "board.yaml"))));

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [SkippableFact]
    public void Files_as_planned_are_told_beside_ours_and_contradict_nothing()
    {
        MadePart tub = Sliced("tub.gcode", "tub");
        Sliced("my_cover_0.2mm.gcode", "cover");

        (int exit, string told, JsonElement report) = Make("tub.gcode", "my_cover_0.2mm.gcode");

        Assert.True(exit == (int)ExitCode.Done, told);
        Assert.Empty(Contradictions(report));
        JsonElement sliced = report.GetProperty("sliced")[0];
        PrintEstimate ours = PrintEstimate.Of(Housing.Value, tub);
        Assert.Equal(["tub"], sliced.GetProperty("parts").EnumerateArray().Select(part => part.GetString()));
        Assert.InRange(sliced.GetProperty("minutes").GetDouble() / ours.LayingMinutes, 0.85, 1.15);
        Assert.InRange(sliced.GetProperty("plastic_g").GetDouble() / ours.Grams, 0.95, 1.05);
        Assert.Equal(Housing.Value.LayersOf(tub).Layers.Length, sliced.GetProperty("layers").GetInt32());
        Assert.Equal(0, sliced.GetProperty("support_m").GetDouble());
        Assert.Equal(["cover"], report.GetProperty("sliced")[1].GetProperty("parts").EnumerateArray().Select(part => part.GetString()));

        // The same words on the terminal, in the sheet and on the page.
        string minutes = PrintEstimate.Duration(sliced.GetProperty("minutes").GetDouble());
        Assert.Contains($"{minutes}; ours {PrintEstimate.Duration(ours.LayingMinutes)} without heating", Flat(told),
            StringComparison.Ordinal);
        Assert.Contains($"{minutes}; ours", Flat(File.ReadAllText(_folder.File("out/print.txt"))), StringComparison.Ordinal);
        Assert.Contains($"{minutes}; ours", File.ReadAllText(_folder.File("out/report.html")), StringComparison.Ordinal);
        using JsonDocument sheet = JsonDocument.Parse(File.ReadAllBytes(_folder.File("out/print.json")));
        Assert.Equal(sliced.ToString(), sheet.RootElement.GetProperty("sliced")[0].ToString());
    }

    [SkippableTheory]
    [InlineData("tub.gcode", "tub", "--support-material --support-material-threshold 60", "warn sliced-with-support")]
    [InlineData("tub.gcode", "tub", "--raft-layers 2", "warn sliced-with-support")]
    [InlineData("tub.gcode", "tub", "--layer-height 0.3", "warn sliced-other-layers")]
    [InlineData("tub.gcode", "tub", "--first-layer-height 0.35", "warn sliced-other-layers")]
    [InlineData("tub.gcode", "tub", "--perimeters 2", "warn sliced-thinner")]
    [InlineData("tub.gcode", "tub", "--top-solid-layers 2", "warn sliced-thinner")]
    [InlineData("tub.gcode", "tub", "--extrusion-multiplier 0.8", "warn sliced-thinner")]
    [InlineData("tub.gcode", "tub", "--scale 1.0045", "warn sliced-other-part")]
    [InlineData("tub.gcode", "tub", "--scale 1.1", "stop sliced-other-part")]
    [InlineData("tub.gcode", "tub", "--rotate-x 180", "stop sliced-other-part")]
    [InlineData("tub.gcode", "cover", "", "stop sliced-other-part")]
    [InlineData("diffuser.gcode", "diffuser", "--fill-density 15%", "warn sliced-thinner")]
    [InlineData("tub.gcode", "tub", "--rotate 33", "")]
    [InlineData("tub.gcode", "tub", "--skirts 3 --skirt-height 4 --brim-width 5", "")]
    [InlineData("plate.gcode", "tub", "", "")]
    public void What_contradicts_the_plan_is_found_and_nothing_else(string file, string part, string settings, string found)
    {
        Sliced(file, part, settings.Split(' ', StringSplitOptions.RemoveEmptyEntries));

        (_, string told) = CommandRun.Run(_folder.Path, "check", Path.Combine(Folder, "board.yaml"), "--json", "--gcode", file);
        using JsonDocument report = JsonDocument.Parse(told);

        Assert.True(found == string.Join('\n', Contradictions(report.RootElement)), told);
        Assert.All(report.RootElement.GetProperty("findings").EnumerateArray(), finding => Assert.Empty(MessageStyle.Faults(
            finding.GetProperty("message").GetString()!, finding.GetProperty("remedy").GetString()!)));
    }

    [SkippableFact]
    public void A_cover_and_the_diffuser_in_it_want_two_filaments()
    {
        Skip.If(Slicer.Executable is null, "no slicer is installed: prusa-slicer");
        string lamp = Repository.At("out-samples", "tide-lamp");
        HousingUnderCheck housing = HousingPipeline.Draw(WrittenBoard.At(Path.Combine(lamp, "board.yaml")));
        MadePart cover = housing.Part("cover")!;
        File.WriteAllBytes(
            _folder.File("cover.gcode"), Slicer.Code(cover.PrintMesh.Mesh, housing.Board.Print.Printer, cover.Plan.Filament.Density));

        (_, string told) = CommandRun.Run(_folder.Path, "check", Path.Combine(lamp, "board.yaml"), "--gcode", "cover.gcode");

        Assert.Contains("it lays all with one filament", Flat(told), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_G_code_is_told_with_file_and_line_and_nothing_is_written()
    {
        _folder.Write("tub.gcode", "G28\nG1 X10 Y10\nthis: is none\n");

        (int exit, string told) = CommandRun.Run(
            _folder.Path, "make", Path.Combine(Folder, "board.yaml"), "-o", _folder.File("out"), "--gcode", "tub.gcode");

        Assert.Equal((int)ExitCode.BadInput, exit);
        Assert.Contains("tub.gcode:3:1: 'this: is none' is no G-code", told, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_folder.File("out")));
    }

    private MadePart Sliced(string file, string name, params string[] settings)
    {
        Skip.If(Slicer.Executable is null, "no slicer is installed: prusa-slicer");
        MadePart part = Housing.Value.Part(name)!;
        PrinterProfile printer = PrintEstimate.PrinterOf(Housing.Value, part);
        File.WriteAllBytes(_folder.File(file), Slicer.Code(part.PrintMesh.Mesh, printer, part.Plan.Filament.Density, settings));
        return part;
    }

    private (int Exit, string Told, JsonElement Report) Make(params string[] files)
    {
        (int exit, string told) = CommandRun.Run(
            _folder.Path, ["make", Path.Combine(Folder, "board.yaml"), "-o", _folder.File("out"), "--gcode", .. files]);
        using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(_folder.File("out/report.json")));
        return (exit, told, report.RootElement.Clone());
    }

    private static IEnumerable<string> Contradictions(JsonElement report) => report.GetProperty("findings").EnumerateArray()
        .Where(finding => finding.GetProperty("rule").GetString()!.StartsWith("sliced-", StringComparison.Ordinal))
        .Select(finding => $"{finding.GetProperty("severity").GetString()} {finding.GetProperty("rule").GetString()}");

    private static string Flat(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
