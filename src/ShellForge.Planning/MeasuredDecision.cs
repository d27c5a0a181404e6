using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning;

/// <summary>
/// Notes what was measured of the printer with the shell's filament: what decisions and rules use in place of typical values.
/// </summary>
internal static class MeasuredDecision
{
    /// <summary>How a measured value's path begins.</summary>
    public const string Path = "print.measured.";

    /// <summary>One reason for each measured value.</summary>
    public static Decided<int> Of(BoardFile file)
    {
        var reasons = new Reasons();
        if (file.Print.Measured is not { } measured)
        {
            return reasons.Of(0);
        }

        foreach (PairingSize size in PairingSize.All)
        {
            if (size.Of(measured) is { } value)
            {
                reasons.Length(Path + size.Key, value, measured.Name, $"{value.Source}: {Lower(size.Words)}");
            }
        }

        return reasons.Of(0);
    }

    private static string Lower(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..].TrimEnd('.');
}
