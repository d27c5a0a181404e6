using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans;
using ShellForge.Housing;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Benchmarks;

/// <summary>A shipped sample, planned and made into solids.</summary>
internal static class SampleHousing
{
    public static HousingUnderCheck Of(string sample)
    {
        BoardFile file = WrittenBoard.Sample(sample);
        HousingPlan plan = HousingPlanner.Plan(file);
        return new HousingUnderCheck
        {
            Board = file,
            Plan = plan,
            Parts = [.. HousingBuilder.Build(plan).Select(part => new CheckedPart { Plan = part.Plan, InPrint = SolidEvaluator.Evaluate(part.InPrint) })],
        };
    }
}
