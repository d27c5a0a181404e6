using System.Collections.Immutable;
using System.Globalization;

namespace ShellForge.Coupons.Answers;

/// <summary>
/// Three questions about a row of steps that rise from tight to loose: the last that is too tight, the one that fits, the first that is too
/// loose. They hold each other to the truth.
/// </summary>
/// <param name="Tight">The highest step that is too tight.</param>
/// <param name="Fits">The step that fits.</param>
/// <param name="Loose">The lowest step that is too loose.</param>
internal sealed record FitAnswers(StepQuestion Tight, StepQuestion Fits, StepQuestion Loose)
{
    /// <summary>In the order of asking.</summary>
    public ImmutableArray<Question> All => [Tight, Fits, Loose];

    /// <summary>The step that fits; or why there is none.</summary>
    public FitJudgement Judge(AnswerSheet answers)
    {
        ImmutableArray<double> steps = Fits.Steps;
        int tight = answers.Step(Tight);
        int fits = answers.Step(Fits);
        int loose = answers.Step(Loose);
        int first = loose < 0 ? steps.Length : loose;
        if (tight >= first)
        {
            return new FitJudgement(null, null,
                new AnswerFault(Loose.Key,
                    $"{Shown(steps[tight])} can't be too tight while {Shown(steps[first])} is too loose: try both again"));
        }

        if (fits >= 0)
        {
            return fits <= tight
                ? new FitJudgement(null, null,
                    new AnswerFault(Fits.Key, $"{Shown(steps[fits])} can't fit while {Shown(steps[tight])} is too tight: try both again"))
                : fits >= first
                    ? new FitJudgement(null, null,
                        new AnswerFault(Fits.Key,
                            $"{Shown(steps[fits])} can't fit while {Shown(steps[first])} is too loose: try both again"))
                : new FitJudgement(steps[fits], null, null);
        }

        double span = steps[^1] - steps[0];
        return tight == steps.Length - 1 ? new FitJudgement(null, Math.Round(steps[^1] + (span / 2), 3), null)
            : loose == 0 ? new FitJudgement(null, Math.Round(steps[0] - (span / 2), 3), null)
            : tight >= 0 && first == tight + 1 ? new FitJudgement(Math.Round((steps[tight] + steps[first]) / 2, 3), null, null)
            : new FitJudgement(null, null, new AnswerFault(
                Fits.Key, tight < 0 && loose < 0
                    ? "none is too tight, none fits and none is too loose: one of the three must be"
                    : $"steps are left between {(tight < 0 ? "the first" : Shown(steps[tight]))} and "
                        + $"{(loose < 0 ? "the last" : Shown(steps[first]))} that are neither too tight nor too loose: one of them fits"));
    }

    /// <summary>Whether even what is drawn without any air is too loose: no coupon has steps below that.</summary>
    public bool IsLooseWithoutAir(AnswerSheet answers) => answers.Step(Loose) == 0 && Loose.Steps[0] <= 0;

    private static string Shown(double value) => value.ToString("0.00#", CultureInfo.InvariantCulture);
}

/// <summary>What came of three answers: a value, where to look next, or a contradiction.</summary>
/// <param name="Value">The value that fits; null for none.</param>
/// <param name="NextAround">Where the steps of the next coupon lie; null where a value was found.</param>
/// <param name="Fault">What contradicts; null for nothing.</param>
internal sealed record FitJudgement(double? Value, double? NextAround, AnswerFault? Fault);
