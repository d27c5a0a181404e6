using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A module whose connector is shut in.</summary>
public sealed class PartsOffToReflash() : Rule(
    "parts-off-to-reflash",
    "How many parts come off before a closed-in module can be reached by its own connector.",
    "The second firmware is always needed; nobody wants to unscrew six screws for it.",
    "printed parts above the board, the board itself where the module is on its back, and their screws",
    "counted from the plan")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        foreach (BoardPart module in housing.Board.Board.Parts.Where(plan.ShutsIn))
        {
            string[] off = [.. plan.Parts.Where(part => part.PrintedWith is null && part.IsOfHousing && part.Name != PartNames.Tub
                    && (module.Side == BoardSide.Bottom || part.Name != plan.Hold.Holder?.Part))
                .Select(part => $"the {part.Name}").Reverse()];
            bool onBack = module.Side == BoardSide.Bottom;
            int screws = plan.Screws.Count(screw => screw.Use == ScrewUse.Closure || onBack);
            string[] all = [.. off, .. onBack ? ["the board"] : Array.Empty<string>()];
            double z = onBack ? plan.Stack.BoardBottom : plan.Stack.BoardTop;
            yield return new Finding
            {
                Rule = Name,
                Severity = Severity.Note,
                Subject = module.Ref,
                Message = $"to reach its connector later, {string.Join(", ", all)} come off ({screws} screws)",
                Measured = all.Length,
                At = new Point3(module.At.X, module.At.Y, z),
                Remedy = "load firmware that updates over the air, or open its port with 'port: open'",
            };
        }
    }
}
