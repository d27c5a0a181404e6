using System.Collections.Immutable;
using ShellForge.Board.Profiles;

namespace ShellForge.Coupons.Answers;

/// <summary>The answers to one coupon by the keys of its questions.</summary>
/// <param name="Answers">The answers, each one that its question takes.</param>
public sealed record AnswerSheet(ImmutableDictionary<string, string> Answers)
{
    /// <summary>The size that was measured, mm.</summary>
    public double Size(SizeQuestion question) => Number(question);

    /// <summary>The reading of a meter.</summary>
    public double Light(ReadingQuestion question) => Number(question);

    /// <summary>The weight that a scale showed, kg.</summary>
    public double Weight(WeightQuestion question) => Number(question);

    /// <summary>Number of the step that was chosen; -1 for none.</summary>
    public int Step(StepQuestion question) => question.StepOf(Answers[question.Key]);

    private double Number(Question question) => Question.TryNumber(Answers[question.Key], out double number) ? number : double.NaN;
}

/// <summary>A value for a profile.</summary>
/// <param name="Shelf">Which profile takes it.</param>
/// <param name="Key">Its key there.</param>
/// <param name="Value">The value, in the unit of the key.</param>
/// <param name="Words">What it is, for people: "hole for m3x4-od4.6".</param>
public sealed record MeasuredValue(MeasuredShelf Shelf, string Key, double Value, string Words)
{
    /// <summary>A value of the printer with the filament, in the unit of its key.</summary>
    /// <param name="key">The key.</param>
    /// <param name="value">The value.</param>
    /// <param name="words">What it is, for people.</param>
    /// <exception cref="ArgumentException">No profile has the key.</exception>
    public static MeasuredValue OfPairing(string key, double value, string words) =>
        PairingSize.Find(key) is { } size
            ? new(MeasuredShelf.Pairing, key, value, words) { Unit = size.Unit, Range = (size.Least, size.Most) }
            : throw new ArgumentException($"no profile has the key '{key}'", nameof(key));

    /// <summary>The hole of an insert.</summary>
    /// <param name="insert">Name of the insert.</param>
    /// <param name="diameter">As drawn, mm.</param>
    public static MeasuredValue OfInsert(string insert, double diameter) =>
        new(MeasuredShelf.Pairing, "insert-holes", diameter, $"hole for {insert}") { For = insert, Range = PairingProfile.InsertHoleRange };

    /// <summary>What a profile may say, in the unit of the key.</summary>
    public required (double Least, double Most) Range { get; init; }

    /// <summary>For values that hold for one thing, its name: the insert of a hole.</summary>
    public string? For { get; init; }

    /// <summary>Unit for people.</summary>
    public string Unit { get; init; } = "mm";
}

/// <summary>Which profile a value goes into.</summary>
public enum MeasuredShelf
{
    /// <summary>The printer with the filament.</summary>
    Pairing,

    /// <summary>The printer.</summary>
    Printer,

    /// <summary>The filament.</summary>
    Filament,
}

/// <summary>Something that is wrong with answers.</summary>
/// <param name="Key">The question it is about.</param>
/// <param name="Message">What is wrong, and what to do.</param>
public sealed record AnswerFault(string Key, string Message);

/// <summary>What the answers to a coupon mean.</summary>
public sealed record Reading
{
    /// <summary>What goes into profiles; nothing where there are faults.</summary>
    public ImmutableArray<MeasuredValue> Values { get; init; } = [];

    /// <summary>What can't be true together, or can't be at all.</summary>
    public ImmutableArray<AnswerFault> Faults { get; init; } = [];

    /// <summary>What else there is to say.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>
    /// Where the steps of the coupon to print next lie; null where the answers settle it, or another kind is printed next.
    /// </summary>
    public double? NextAround { get; init; }

    /// <summary>The kind of coupon that tells why no step of this one fits; null where there is no need of another kind.</summary>
    public string? NextKind { get; init; }

    /// <summary>A value by its key; null where it is not among them.</summary>
    public double? Value(string key) => Values.FirstOrDefault(value => value.Key == key)?.Value;

    /// <summary>The next coupon of a kind; where no profile takes what its steps lie around, what to do in its place.</summary>
    /// <param name="key">The key that the kind sets for the printer with the filament.</param>
    /// <param name="around">Middle of the next steps, in the unit of the key.</param>
    /// <param name="beyond">What to do.</param>
    internal static Reading Farther(string key, double? around, string beyond) => around > PairingSize.Find(key)!.Most
        ? new() { Notes = [beyond] }
        : new() { NextAround = around };

    /// <summary>Nothing but faults.</summary>
    public static Reading Wrong(params IEnumerable<AnswerFault> faults) => new() { Faults = [.. faults] };
}
