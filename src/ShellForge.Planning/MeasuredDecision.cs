using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning;

/// <summary>
/// Notes what was measured of the printer with the shell's filament: what decisions and rules use in place of typical values.
/// </summary>
internal static class MeasuredDecision
{
    private const string Path = "print.measured.";

    /// <summary>Tells one reason for each measured value.</summary>
    public static void Tell(BoardFile file, Reasons reasons)
    {
        if (file.Print.Measured is not { } measured)
        {
            return;
        }

        foreach (PairingSize size in PairingSize.All)
        {
            if (size.Of(measured) is { } value)
            {
                reasons.Length(Path + size.Key, value, measured.Name, $"{value.Source}: {Lower(size.Words)}");
            }
        }
    }

    private static string Lower(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..].TrimEnd('.');
}
