using System.Text.Json;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// A real slicer takes the plates of the samples as they are meant: each part where it lies, of its filament, without support.
/// </summary>
public class SlicedPlateTests
{
    // Longer stretches of a line in air are bridges that the printer's profile notes, mm.
    private const double BridgeNote = 10;
    private const double Bed = 210;
    private const double Margin = 5;

    [SkippableTheory]
    [InlineData("mooring-beacon", 0)]
    [InlineData("tide-lamp", 6)]
    [InlineData("dome-dial", 6)]
    public void A_slicer_takes_each_plate_as_it_lies_with_the_filaments_and_changes_that_the_report_says(string sample, int changes)
    {
        Skip.If(Slicer.Executable is null, "no slicer is installed: prusa-slicer");
        using var made = new TemporaryFolder();
        (int exit, string told) = CommandRun.Run(Repository.At("out-samples", sample), "make", "board.yaml", "-o", made.Path,
            "--formats", "3mf");
        Assert.True(exit == 0, told);
        using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(made.File("report.json")));
        JsonElement[] parts = [.. report.RootElement.GetProperty("parts").EnumerateArray()];
        Assert.Equal(changes, parts.Sum(ChangesOf));
        int sliced = 0;
        foreach (IGrouping<string, JsonElement> plate in parts.GroupBy(part => part.GetProperty("plate").GetString()!))
        {
            SlicedPlate laid = SlicedPlate.Of(made.File(plate.Key));
            sliced += laid.Changes;
            Assert.Equal(plate.Sum(ChangesOf), laid.Changes);
            Assert.Equal(plate.Select(JobOf).Distinct().Order(), laid.Objects.Order());
            Assert.All(laid.Laid.Values, box => Assert.True(
                box.FromX >= Margin && box.FromY >= Margin && box.ToX <= Bed - Margin && box.ToY <= Bed - Margin,
                $"off the bed's margin: {box}"));
            Assert.True(laid.LongestInAir.Length < BridgeNote, $"{laid.LongestInAir}");
            foreach (string job in plate.Where(part => part.TryGetProperty("printed_with", out _)).Select(JobOf))
            {
                // The diffuser's filament stays within the cover, where the plan has it.
                (double FromX, double FromY, double ToX, double ToY) cover = laid.Laid[(job, 0)];
                (double FromX, double FromY, double ToX, double ToY) diffuser = laid.Laid[(job, 1)];
                Assert.True(diffuser.FromX > cover.FromX && diffuser.FromY > cover.FromY && diffuser.ToX < cover.ToX
                    && diffuser.ToY < cover.ToY, $"{diffuser} in {cover}");
            }
        }

        Assert.Equal(changes, sliced);
    }

    private static int ChangesOf(JsonElement part) => part.GetProperty("print").GetProperty("filament_changes").GetInt32();

    private static string JobOf(JsonElement part) =>
        part.TryGetProperty("printed_with", out JsonElement other) ? other.GetString()! : part.GetProperty("name").GetString()!;
}
