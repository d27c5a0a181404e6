using System.Collections.Immutable;
using System.Globalization;

namespace ShellForge.Coupons.Answers;

/// <summary>A question to whoever holds the print.</summary>
/// <param name="Key">Its key in the file of answers.</param>
/// <param name="Text">The question in plain words: what to do, and what counts.</param>
public abstract record Question(string Key, string Text)
{
    /// <summary>The word that says that no step answers.</summary>
    public const string None = "none";

    /// <summary>What may be answered, in a few words.</summary>
    public abstract string Expected { get; }

    /// <summary>What is wrong with an answer by itself; null where it may stand.</summary>
    public abstract string? Refuse(string answer);

    /// <summary>A number as people write it: with a point or a comma.</summary>
    internal static bool TryNumber(string text, out double number) =>
        double.TryParse(text.Replace(',', '.'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture, out number);

    /// <summary>A number as it is shown.</summary>
    protected static string Shown(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}

/// <summary>A question that is answered by the figures of a step, or by <see cref="Question.None"/>.</summary>
/// <param name="Key">See <see cref="Question"/>.</param>
/// <param name="Text">See <see cref="Question"/>.</param>
/// <param name="Steps">The steps, rising.</param>
public sealed record StepQuestion(string Key, string Text, ImmutableArray<double> Steps) : Question(Key, Text)
{
    // Figures are read off the print: a hundredth is what the finest step differs by.
    private const double Same = 0.0051;

    /// <inheritdoc />
    public override string Expected => $"one of {string.Join(", ", Steps.Select(Shown))}, or {None}";

    /// <inheritdoc />
    public override string? Refuse(string answer) =>
        answer == None || (TryNumber(answer, out double number) && IndexOf(number) >= 0) ? null : $"'{answer}' is no figure of this coupon";

    /// <summary>Number of the step that an answer names; -1 for none.</summary>
    public int StepOf(string answer) => TryNumber(answer, out double number) ? IndexOf(number) : -1;

    private int IndexOf(double number)
    {
        for (int i = 0; i < Steps.Length; i++)
        {
            if (Math.Abs(Steps[i] - number) < Same)
            {
                return i;
            }
        }

        return -1;
    }
}

/// <summary>A question that is answered by a reading of a meter, in whatever unit it shows.</summary>
/// <param name="Key">See <see cref="Question"/>.</param>
/// <param name="Text">See <see cref="Question"/>.</param>
public sealed record ReadingQuestion(string Key, string Text) : Question(Key, Text)
{
    /// <inheritdoc />
    public override string Expected => "a number above 0, as the meter shows it";

    /// <inheritdoc />
    public override string? Refuse(string answer) =>
        TryNumber(answer, out double number) && number > 0 ? null : $"'{answer}' is no reading above 0";
}

/// <summary>A question that is answered by a weight read from a scale, kg.</summary>
/// <param name="Key">See <see cref="Question"/>.</param>
/// <param name="Text">See <see cref="Question"/>.</param>
/// <param name="Most">What no hand presses with, kg.</param>
public sealed record WeightQuestion(string Key, string Text, double Most) : Question(Key, Text)
{
    /// <inheritdoc />
    public override string Expected => $"a weight in kg from 0 to {Shown(Most)}";

    /// <inheritdoc />
    public override string? Refuse(string answer) =>
        !TryNumber(answer, out double number) || number < 0 ? $"'{answer}' is no weight"
        : number > Most ? $"{Shown(number)} kg is more than a hand presses with: read the scale in kg, not in g"
        : null;
}

/// <summary>A question that is answered by a size read from calipers.</summary>
/// <param name="Key">See <see cref="Question"/>.</param>
/// <param name="Text">See <see cref="Question"/>.</param>
/// <param name="Drawn">The size as drawn; of what was not printed, the usual one, mm.</param>
/// <param name="Reach">How far a reading may lie from it, mm: beyond, something else was measured.</param>
public sealed record SizeQuestion(string Key, string Text, double Drawn, double Reach) : Question(Key, Text)
{
    /// <summary>
    /// Of a size that nobody drew, what is told beyond the reach, after "15.6 mm is "; null for a size of a print.
    /// </summary>
    public string? Beyond { get; init; }

    /// <inheritdoc />
    public override string Expected => $"a size in mm near {Shown(Drawn)}";

    /// <inheritdoc />
    public override string? Refuse(string answer) =>
        !TryNumber(answer, out double number) ? $"'{answer}' is no size"
        : Math.Abs(number - Drawn) > Reach
            ? $"{Shown(number)} mm is " + (Beyond ?? $"{Shown(Math.Abs(number - Drawn))} mm away from the {Shown(Drawn)} mm drawn, beyond "
                + "what a printer does: measure again")
        : null;
}
