using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans;
using ShellForge.Housing;
using ShellForge.Planning;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Tests;

/// <summary>Whole housings as rules see them: planned, built and evaluated.</summary>
internal static class BuiltHousings
{
    public static HousingUnderCheck Of(BoardFile file)
    {
        HousingPlan plan = HousingPlanner.Plan(file);
        return new HousingUnderCheck
        {
            Board = file,
            Plan = plan,
            Parts = [.. HousingBuilder.Build(plan).Select(part => new CheckedPart { Plan = part.Plan, InPrint = SolidEvaluator.Evaluate(part.InPrint) })],
        };
    }
}
