using System.Collections.Immutable;

namespace ShellForge.Planning.Remembering;

/// <summary>A list that is equal to another of the same things in the same order, for keys.</summary>
/// <param name="things">The things; they compare by their content.</param>
public readonly struct Listed<T>(ImmutableArray<T> things) : IEquatable<Listed<T>>
{
    private readonly ImmutableArray<T> _things = things.IsDefault ? [] : things;

    /// <summary>A list of things.</summary>
    /// <param name="things">The things.</param>
    public Listed(IEnumerable<T> things)
        : this([.. things])
    {
    }

    /// <summary>The things.</summary>
    public ImmutableArray<T> Things => _things.IsDefault ? [] : _things;

    /// <summary>Whether both hold the same.</summary>
    public static bool operator ==(Listed<T> left, Listed<T> right) => left.Equals(right);

    /// <summary>Whether they differ.</summary>
    public static bool operator !=(Listed<T> left, Listed<T> right) => !left.Equals(right);

    /// <inheritdoc />
    public bool Equals(Listed<T> other) => Things.AsSpan().SequenceEqual(other.Things.AsSpan());

    /// <inheritdoc />
    public override bool Equals(object? obj) => obj is Listed<T> other && Equals(other);

    /// <inheritdoc />
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (T thing in Things)
        {
            hash.Add(thing);
        }

        return hash.ToHashCode();
    }
}
