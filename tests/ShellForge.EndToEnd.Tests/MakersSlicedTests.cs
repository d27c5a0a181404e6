using System.Text.Json;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>A real slicer takes what some makers' boards give, part by part, without support.</summary>
public class MakersSlicedTests
{
    private const double BridgeNote = 10;

    [SkippableTheory]
    [InlineData("badge")]
    [InlineData("dice")]
    [InlineData("tail")]
    public void A_slicer_takes_each_part_of_a_makers_board_without_support_and_our_times_add_up(string name)
    {
        Skip.If(Slicer.Executable is null, "no slicer is installed: prusa-slicer");
        using var made = new TemporaryFolder();
        (int exit, string told) = CommandRun.Run(
            Repository.At("tests", "boards", "makers"), "make", name + ".yaml", "-o", made.Path, "--formats", "3mf");
        Assert.True(exit == 0, told);
        using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(made.File("report.json")));
        JsonElement[] parts = [.. report.RootElement.GetProperty("parts").EnumerateArray()];
        foreach (IGrouping<string, JsonElement> plate in parts.GroupBy(part => part.GetProperty("plate").GetString()!))
        {
            SlicedPlate laid = SlicedPlate.Of(made.File(plate.Key));
            Assert.Equal(plate.Select(part => part.GetProperty("name").GetString()).Order(), laid.Objects.Order());
            Assert.True(laid.LongestInAir.Length < BridgeNote, $"{laid.LongestInAir}");
        }

        using JsonDocument print = JsonDocument.Parse(File.ReadAllBytes(made.File("print.json")));
        int total = print.RootElement.GetProperty("minutes").GetInt32();
        Assert.Equal(total, report.RootElement.GetProperty("print").GetProperty("minutes").GetInt32());
        Assert.Equal(total, parts.Sum(part => part.GetProperty("print").GetProperty("minutes").GetInt32()));
        Assert.Equal(total, print.RootElement.GetProperty("parts").EnumerateArray().Sum(part => part.GetProperty("minutes").GetInt32()));
    }
}
