using System.Collections.Immutable;

namespace ShellForge.Board.Profiles;

/// <summary>A number of a profile with the place it comes from ("ISO 7089", "typical: check your datasheet").</summary>
public readonly record struct Sourced(double Value, string Source)
{
    /// <summary>The bare number.</summary>
    public static implicit operator double(Sourced sourced) => sourced.Value;

    /// <summary>The bare number.</summary>
    public double ToDouble() => Value;
}

/// <summary>Several numbers of a profile that come from one place, such as the lengths a screw is sold in.</summary>
/// <param name="Values">The numbers.</param>
/// <param name="Source">Where they come from.</param>
public sealed record SourcedList(ImmutableArray<double> Values, string Source);
