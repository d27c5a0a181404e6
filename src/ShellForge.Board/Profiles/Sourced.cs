namespace ShellForge.Board.Profiles;

/// <summary>A number of a profile with the place it comes from ("ISO 7089", "typical: check your datasheet").</summary>
public readonly record struct Sourced(double Value, string Source)
{
    /// <summary>The bare number.</summary>
    public static implicit operator double(Sourced sourced) => sourced.Value;

    /// <summary>The bare number.</summary>
    public double ToDouble() => Value;
}
