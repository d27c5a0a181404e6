using System.Collections.Immutable;

namespace ShellForge.Board.Profiles;

/// <summary>A number of a profile with the place it comes from ("ISO 7089", "typical: check your datasheet").</summary>
public readonly record struct Sourced(double Value, string Source)
{
    /// <summary>How the source of a number begins that its user measured.</summary>
    public const string MeasuredWord = "measured ";

    /// <summary>Whether its user measured it.</summary>
    public bool IsMeasured => Source.StartsWith(MeasuredWord, StringComparison.Ordinal);

    /// <summary>The bare number.</summary>
    public static implicit operator double(Sourced sourced) => sourced.Value;

    /// <summary>The bare number.</summary>
    public double ToDouble() => Value;
}

/// <summary>A number that is known within a range, with the place it comes from.</summary>
/// <param name="Value">What is computed with.</param>
/// <param name="Low">Smallest value in the trade or in the literature.</param>
/// <param name="High">Largest value.</param>
/// <param name="Source">Where it comes from.</param>
public readonly record struct SourcedRange(double Value, double Low, double High, string Source);

/// <summary>Several numbers of a profile that come from one place, such as the lengths a screw is sold in.</summary>
/// <param name="Values">The numbers.</param>
/// <param name="Source">Where they come from.</param>
public sealed record SourcedList(ImmutableArray<double> Values, string Source);
