using System.Globalization;

namespace ShellForge.Sweep.Variants;

/// <summary>One share of a sweep's variants: every <paramref name="Count"/>th from the <paramref name="Index"/>th on.</summary>
/// <param name="Index">Which share, from 0.</param>
/// <param name="Count">How many shares there are.</param>
public readonly record struct Shard(int Index, int Count)
{
    /// <summary>All variants.</summary>
    public static Shard Whole { get; } = new(0, 1);

    /// <summary>Whether a variant belongs to this share.</summary>
    public bool Has(Variant variant) => (variant.Number - 1) % Count == Index;

    /// <summary>Reads <c>i/n</c>, i from 0 to n - 1; null when it is none.</summary>
    public static Shard? Parse(string text)
    {
        string[] sides = text.Split('/');
        return sides.Length == 2 && Of(sides[0], sides[1]) is { } shard ? shard : null;
    }

    /// <summary>A share of two numbers as text; null when they are none.</summary>
    public static Shard? Of(string index, string count) =>
        int.TryParse(index, NumberStyles.None, CultureInfo.InvariantCulture, out int i)
        && int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out int n) && n > 0 && i < n
            ? new Shard(i, n)
            : null;
}
