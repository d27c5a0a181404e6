using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning;

/// <summary>
/// A height that is fixed from outside: where there is more of it than needed, the board stands higher over the floor; where there is less,
/// the diffuser comes nearer to the LEDs; where even that does not do, it is told by how much it is too low.
/// </summary>
internal static class HeightDecision
{
    // Once for what stands under the board, and once more where something in the wall has held the front back.
    private const int Tries = 3;

    /// <summary>The plan of a housing as high as asked; as high as it has to be where nothing is asked.</summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="plan">Plans it.</param>
    public static HousingPlan Fitted(Given given, Func<Given, HousingPlan> plan)
    {
        if (given.File.Housing.Size.Height is not double asked)
        {
            return plan(given);
        }

        double height = given.Basis.Down(asked);
        Given limited = given with { FrontAtMost = height };
        HousingPlan made = plan(limited);
        for (int i = 0; i < Tries && made.Stack.Front < height - Layers.Slack; i++)
        {
            limited = limited with { BelowBoard = made.Stack.BelowBoard + height - made.Stack.Front };
            made = plan(limited);
        }

        return made with { Refusals = made.Refusals.AddRange(Told(given, made, asked, height)) };
    }

    private static IEnumerable<PlanRefusal> Told(Given given, HousingPlan made, double asked, double height)
    {
        StackPlan stack = made.Stack;
        var at = new Point3(0, 0, stack.Front);
        string front = Reasons.Mm(Math.Round(stack.Front, 2));
        if (stack.Front > height + Layers.Slack)
        {
            string distance = given.File.Housing.Diffuser.Distance is null ? "with the diffuser as near as it goes" : "as 'distance' asks";
            yield return new PlanRefusal(
                "size-too-small", "height",
                $"A height of {Reasons.Mm(asked)} mm is {Reasons.Mm(Math.Round(stack.Front - asked, 2))} mm too low: {distance} it is "
                    + $"{front} mm, {Reasons.Mm(Math.Round(stack.BelowBoard, 2))} mm of them under the board for {stack.BelowBoardFor}.",
                asked, stack.Front, "mm", at, $"'size: {{height: {front}}}', a thinner 'floor', or less under the board");
        }
        else if (asked - stack.Front > Layers.Slack)
        {
            yield return new PlanRefusal(
                "size-between-layers", "height",
                $"It becomes {front} mm high: {Reasons.Mm(asked)} mm do not end on a layer of {Reasons.Mm(given.Basis.Layer)} mm.",
                stack.Front, asked, "mm", at, $"'size: {{height: {front}}}' says the same", IsReplaced: true, IsNoted: true);
        }
    }
}
