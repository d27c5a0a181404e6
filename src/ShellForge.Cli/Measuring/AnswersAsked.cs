using System.Collections.Immutable;
using ShellForge.Coupons.Calibrating;

namespace ShellForge.Cli.Measuring;

/// <summary>What was answered at the terminal.</summary>
/// <param name="Answers">The answers, in the order of the questions.</param>
/// <param name="LeftOut">Numbers of the coupons that were left out: not printed, or not to be tried for want of a tool.</param>
internal sealed record TypedAnswers(ImmutableArray<(OpenQuestion Question, string Answer)> Answers, ImmutableArray<int> LeftOut);

/// <summary>Asks at the terminal what a file of answers leaves open, one question after the other.</summary>
internal static class AnswersAsked
{
    private const string Skip = "skip";

    /// <summary>The answers; null where nobody answers.</summary>
    public static TypedAnswers? All(Workbench bench, ImmutableArray<OpenQuestion> open, bool quiet)
    {
        var leftOut = ImmutableArray.CreateBuilder<int>();
        var answers = ImmutableArray.CreateBuilder<(OpenQuestion, string)>();
        int coupon = -1;
        foreach (OpenQuestion each in open)
        {
            if (leftOut.Contains(each.Coupon))
            {
                continue;
            }

            if (quiet || bench.In is null)
            {
                return null;
            }

            if (each.Coupon != coupon)
            {
                coupon = each.Coupon;
                bench.Out.Write($"{each.Kind.Name}: {each.Kind.Tells} ('{Skip}' leaves it out)\n");
            }

            if (Asked(bench, each) is not { } answer)
            {
                return null;
            }

            if (answer == Skip)
            {
                leftOut.Add(each.Coupon);
            }
            else
            {
                answers.Add((each, answer));
            }
        }

        return new TypedAnswers(answers.ToImmutable(), leftOut.ToImmutable());
    }

    private static string? Asked(Workbench bench, OpenQuestion each)
    {
        bench.Out.Write($"  {each.Question.Text}\n");
        while (true)
        {
            bench.Out.Write($"  {each.Question.Expected} > ");
            string? answer = bench.In!.ReadLine()?.Trim();
            if (answer is null)
            {
                bench.Out.Write("\n");
                return null;
            }

            if (answer == Skip || (answer.Length > 0 && each.Question.Refuse(answer) is null))
            {
                return answer;
            }
            else if (answer.Length > 0)
            {
                bench.Out.Write($"  {each.Question.Refuse(answer)}\n");
            }
        }
    }
}
