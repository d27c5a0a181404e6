using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Page.Building;

/// <summary>Numbers of a board file that are worth trying by slider: those that a maker hesitates over.</summary>
public static class PageTries
{
    /// <summary>The numbers, each where the plan has it now.</summary>
    public static ImmutableArray<PageTry> Of(HousingPlan plan)
    {
        BoardFile file = plan.Source;
        double layer = file.Print.Printer.LayerHeight;
        var tries = ImmutableArray.CreateBuilder<PageTry>();
        tries.Add(new PageTry("housing.walls", "Wall, lines of plastic", plan.Shell.WallLines, 2, 8, 1));
        tries.Add(new PageTry("housing.floor", "Floor, mm", Rounded(plan.Stack.FloorTop, layer), 0.8, 5, layer));
        tries.Add(new PageTry(
            "housing.clearance.below-parts", "Air below parts, mm", plan.Stack.BelowParts, 0.2, 6, 0.2));
        tries.Add(new PageTry(
            "housing.clearance.board-edge", "Gap round the board, mm", Math.Round(plan.Shell.BoardEdgeGap, 2), 0.2, 3, 0.1));
        tries.Add(new PageTry("housing.diffuser.distance", "LED to diffuser, mm", Rounded(plan.Diffuser.Distance, layer), 1, 20, layer));
        if (plan.Diffuser.Fit != DiffuserFit.CutSheet)
        {
            tries.Add(new PageTry("housing.diffuser.thickness", "Diffuser, mm", plan.Diffuser.Thickness, 0.4, 3, layer));
        }

        tries.Add(new PageTry("power.brightness", "Brightness, share of full white", file.Power.Brightness, 0.05, 1, 0.05));
        return tries.ToImmutable();
    }

    private static double Rounded(double value, double step) => Math.Round(Math.Round(value / step) * step, 3);
}
