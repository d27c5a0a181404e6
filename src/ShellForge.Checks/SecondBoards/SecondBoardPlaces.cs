using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.SecondBoards;

/// <summary>Where findings about a second board point.</summary>
internal static class SecondBoardPlaces
{
    /// <summary>Its middle, on the floor or on its spacers; the board's underside where it has no place.</summary>
    public static Point3 Middle(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        Point2 at = plan.Spacers.IsEmpty ? Point2.Origin
            : new Point2(plan.Spacers.Average(spacer => spacer.At.X), plan.Spacers.Average(spacer => spacer.At.Y));
        return plan.SecondBoard?.Middle
            ?? new Point3(at.X, at.Y, plan.Stack.BoardBottom - plan.Spacers.Select(spacer => spacer.Length).DefaultIfEmpty(0).Max());
    }
}
