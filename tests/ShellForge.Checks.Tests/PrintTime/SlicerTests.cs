using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Solids;
using ShellForge.Housing;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.PrintTime;

/// <summary>
/// A general-purpose slicer with the speeds of a printer profile is the judge. The whole table of boards is made by <c>print-time</c> of
/// the benchmarks; here the smallest board keeps it short.
/// </summary>
public sealed class SlicerTests
{
    [SkippableTheory]
    [InlineData("fdm-0.4-quality")]
    [InlineData("fdm-0.4-fast")]
    public void A_board_takes_the_time_and_the_plastic_that_a_slicer_says(string name)
    {
        Skip.If(Slicer.Executable is null, "no slicer is installed: prusa-slicer");
        PrinterProfile printer = WrittenBoard.Shipped.Printers.Find(name)!;
        HousingPlan plan = HousingPlanner.Plan(WrittenBoard.At(Repository.At("tests", "boards", "print", "disc-35.yaml")));
        (double Grams, double Minutes, double SlicedGrams, double SlicedMinutes) sum = default;
        foreach (HousingPart part in HousingBuilder.Build(plan))
        {
            Mesh mesh = SolidEvaluator.Evaluate(part.InPrint).Require().Mesh;
            PrintEstimate ours = PrintEstimate.Of(PartLayers.Of(mesh, printer), printer, part.Plan.Filament);
            SlicerFigures theirs = Slicer.Slice(mesh, printer, part.Plan.Filament.Density, TimeSpan.FromMinutes(3));
            Assert.InRange(ours.LayingMinutes / theirs.Minutes, 0.85, 1.15);
            sum = (sum.Grams + ours.Grams, sum.Minutes + ours.LayingMinutes, sum.SlicedGrams + theirs.Grams,
                sum.SlicedMinutes + theirs.Minutes);
        }

        Assert.InRange(sum.Minutes / sum.SlicedMinutes, 1 - (PrintEstimate.TimeTolerance / 100), 1 + (PrintEstimate.TimeTolerance / 100));
        Assert.InRange(sum.Grams / sum.SlicedGrams, 1 - (PrintEstimate.MassTolerance / 100), 1 + (PrintEstimate.MassTolerance / 100));
    }
}
