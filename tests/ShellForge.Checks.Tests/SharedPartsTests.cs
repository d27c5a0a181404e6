using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Remembering;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests;

public class SharedPartsTests
{
    [Fact]
    public void What_is_measured_on_a_shared_part_follows_the_housings_own_printer_and_filament()
    {
        HousingUnderCheck housing = BuiltHousings.Of(WrittenBoard.Sample("mooring-beacon"));
        PrintSpec print = housing.Board.Print;
        HousingUnderCheck coarse = housing with
        {
            Board = housing.Board with { Print = print with { Printer = WrittenBoard.Shipped.Printers.Find("fdm-0.6")! } },
        };
        MadePart tub = housing.Part(PartNames.Tub)!;
        MadePart other = tub with { Plan = tub.Plan with { Filament = WrittenBoard.Shipped.Filaments.Find("pc-black")! } };

        Assert.Same(housing.Memory, coarse.Memory);
        Assert.Same(housing.LayersOf(tub), (housing with { }).LayersOf(tub));
        Assert.NotEqual(housing.LayersOf(tub).Layers.Length, coarse.LayersOf(tub).Layers.Length);
        double share = other.Plan.Filament.Density / tub.Plan.Filament.Density;
        Assert.Equal(share * PrintEstimate.Of(housing, tub).Grams, PrintEstimate.Of(housing, other).Grams, 6);
        Assert.Equal(PrintEstimate.Of(coarse with { Memory = new WorkMemory() }, tub), PrintEstimate.Of(coarse, tub));
        Assert.NotEqual(PrintEstimate.Of(housing, tub), PrintEstimate.Of(coarse, tub));
    }
}
