using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Print;

/// <summary>A shape of known answers in the place of a part, as the rules see it.</summary>
internal static class KnownShapes
{
    private static readonly BoardFile Board = new WrittenBoard().Read();
    private static readonly HousingPlan Plan = HousingPlanner.Plan(Board);

    public static PrinterProfile Printer => Board.Print.Printer;

    /// <summary>Everything that a rule finds on a shape that lies on the bed as given.</summary>
    public static Finding[] Found(IRule rule, Solid shape) => [.. rule.Check(Housing(shape))];

    public static HousingUnderCheck Housing(Solid shape) => new()
    {
        Board = Board,
        Plan = Plan,
        Parts =
        [
            new MadePart
            {
                Plan = Plan.Parts.First(part => part.Name == PartNames.Tub) with { Name = "shape", ToPrint = Transform3.Identity,
                    ShrinkScale = 1 },
                InPrint = SolidEvaluator.Evaluate(shape),
            },
        ],
    };

    public static PartLayers Layers(Solid shape) => PartLayers.Of(SolidEvaluator.Evaluate(shape).Require().Mesh, Printer);
}
