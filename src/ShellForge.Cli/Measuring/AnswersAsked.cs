using System.Collections.Immutable;
using ShellForge.Coupons.Calibrating;

namespace ShellForge.Cli.Measuring;

/// <summary>Asks at the terminal what a file of answers leaves open, one question after the other.</summary>
internal static class AnswersAsked
{
    /// <summary>The answers; null where nobody answers.</summary>
    public static ImmutableArray<(OpenQuestion Question, string Answer)>? All(Workbench bench, ImmutableArray<OpenQuestion> open,
        bool quiet)
    {
        var answers = ImmutableArray.CreateBuilder<(OpenQuestion, string)>();
        int coupon = -1;
        foreach (OpenQuestion each in open)
        {
            if (quiet || bench.In is null)
            {
                return null;
            }

            if (each.Coupon != coupon)
            {
                coupon = each.Coupon;
                bench.Out.Write($"{each.Kind.Name}: {each.Kind.Tells}\n");
            }

            if (Asked(bench, each) is not { } answer)
            {
                return null;
            }

            answers.Add((each, answer));
        }

        return answers.ToImmutable();
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

            if (answer.Length > 0 && each.Question.Refuse(answer) is not { } fault)
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
