using System.Collections.Immutable;
using ShellForge.Import.Files;

namespace ShellForge.Import.Patterns;

/// <summary>What every pattern says of itself as keys of a board file.</summary>
internal static class PatternText
{
    // As exact as patterns are found.
    private const int Decimals = 6;

    /// <summary>How what is in it is turned: ", turns: false, rotation: 90"; nothing where it just turns with its place.</summary>
    /// <param name="follows">Whether it turns with its place.</param>
    /// <param name="degrees">Its turn beyond that.</param>
    public static string Turned(bool follows, double degrees) => (follows ? "" : ", turns: false") + Rotation(degrees);

    /// <summary>", rotation: 90"; nothing for none.</summary>
    public static string Rotation(double degrees)
    {
        string text = Number(Turns.Reduced(degrees));
        return text == "0" ? "" : $", rotation: {text}";
    }

    /// <summary>", skip: [2, 5]"; nothing where no place is empty.</summary>
    public static string Skip(ImmutableArray<int> skip) => skip.IsEmpty ? "" : $", skip: [{string.Join(", ", skip)}]";

    /// <summary>A length or an angle.</summary>
    public static string Number(double number) => Numeral.Text(number, Decimals);
}
