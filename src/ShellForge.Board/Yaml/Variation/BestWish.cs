using System.Collections.Immutable;
using System.Globalization;

namespace ShellForge.Board.Yaml.Variation;

/// <summary>How a figure runs along a range.</summary>
public enum RangeShape
{
    /// <summary>It rises or falls all the way, and what stops a print stops it at one end: bisection.</summary>
    Monotone,

    /// <summary>It falls to one lowest place and rises from there; what stops a print stops it at the ends: golden section.</summary>
    Smooth,
}

/// <summary>Which variant is wished for.</summary>
/// <param name="Weights">What counts, by the words of <see cref="Words"/>, and how much, in the order of the plan.</param>
/// <param name="Along">Path of a range that is searched with few looks at it; null to make every variant.</param>
/// <param name="Shape">How the wish runs along that range.</param>
public sealed record BestWish(ImmutableArray<(string Word, double Weight)> Weights, string? Along, RangeShape Shape)
{
    /// <summary>What can be wished: low height, little plastic, even light, cool plastic, room round the parts.</summary>
    public static ImmutableArray<string> Words { get; } = ["height", "plastic", "evenness", "coolness", "room"];

    /// <summary>The wish on one line, as <see cref="Parse"/> reads it.</summary>
    public override string ToString() =>
        string.Join(';', Weights.Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Word}={one.Weight}")))
            + $"|{Shape}|{Along}";

    /// <summary>Reads a wish from one line; null where it is none.</summary>
    public static BestWish? Parse(string text)
    {
        string[] sides = text.Split('|', 3);
        var weights = ImmutableArray.CreateBuilder<(string, double)>();
        foreach (string[] pair in sides[0].Split(';').Select(one => one.Split('=')))
        {
            if (pair.Length != 2 || !Words.Contains(pair[0])
                || !double.TryParse(pair[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double weight)
                || !double.IsFinite(weight))
            {
                return null;
            }

            weights.Add((pair[0], weight));
        }

        return sides.Length == 3 && Enum.TryParse(sides[1], out RangeShape shape) && Enum.IsDefined(shape) && !sides[2].Any(char.IsControl)
            ? new BestWish(weights.ToImmutable(), sides[2].Length == 0 ? null : sides[2], shape) : null;
    }
}
