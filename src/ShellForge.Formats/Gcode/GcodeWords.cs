using System.Globalization;

namespace ShellForge.Formats.Gcode;

/// <summary>The words of a command: a letter with a number each, <c>G1 X12.5 E0.3</c>.</summary>
internal static class GcodeWords
{
    // Farther away is no printer, mm.
    private const double Farthest = 100_000;

    /// <summary>A command without its line number and checksum.</summary>
    public static ReadOnlySpan<byte> WithoutNumberAndSum(ReadOnlySpan<byte> command)
    {
        ReadOnlySpan<byte> rest = command;
        if (rest.Length > 1 && rest[0] is (byte)'N' && IsDigit(rest[1]))
        {
            rest = rest[(1 + Digits(rest[1..]))..].TrimStart(" \t"u8);
        }

        int sum = rest.LastIndexOf((byte)'*');
        return sum >= 0 && sum + 1 < rest.Length && Digits(rest[(sum + 1)..]) == rest.Length - sum - 1
            ? rest[..sum].TrimEnd(" \t"u8) : rest;
    }

    /// <summary>What stands before the first blank.</summary>
    public static ReadOnlySpan<byte> First(ReadOnlySpan<byte> words)
    {
        int end = words.IndexOfAny((byte)' ', (byte)'\t');
        return end < 0 ? words : words[..end];
    }

    /// <summary>How many digits a text begins with.</summary>
    public static int Digits(ReadOnlySpan<byte> text)
    {
        int end = text.IndexOfAnyExceptInRange((byte)'0', (byte)'9');
        return end < 0 ? text.Length : end;
    }

    /// <summary>Whether it begins as a command does: a letter with a number, or the name of a macro.</summary>
    public static bool IsCommand(ReadOnlySpan<byte> words)
    {
        if (words.IsEmpty)
        {
            return true;
        }

        ReadOnlySpan<byte> first = First(words);
        if (!IsLetter(first[0]))
        {
            return false;
        }

        foreach (byte each in first)
        {
            if (!IsLetter(each) && !IsDigit(each) && each is not ((byte)'.' or (byte)'-'))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The number of a letter among the words that follow the command.</summary>
    /// <param name="words">The command with its words.</param>
    /// <param name="letter">The letter, large.</param>
    /// <param name="value">The number; left as it is where the letter does not stand there.</param>
    /// <returns>False where what follows the letter is no number that a printer can mean.</returns>
    public static bool Number(ReadOnlySpan<byte> words, char letter, ref double? value)
    {
        for (int at = 1; at < words.Length; at++)
        {
            if ((words[at] & ~0x20) != letter || IsLetter(words[at - 1]) || IsLetter(At(words, at + 1)))
            {
                continue;
            }

            int end = at + 1;
            while (end < words.Length && (IsDigit(words[end]) || words[end] is (byte)'.' or (byte)'-' or (byte)'+'))
            {
                end++;
            }

            ReadOnlySpan<byte> number = words[(at + 1)..end];
            if (!double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out double read) || Math.Abs(read) > Farthest)
            {
                return false;
            }

            value = read;
            return true;
        }

        return true;
    }

    private static byte At(ReadOnlySpan<byte> words, int at) => at < words.Length ? words[at] : (byte)' ';

    private static bool IsDigit(byte each) => each is >= (byte)'0' and <= (byte)'9';

    private static bool IsLetter(byte each) => each is (>= (byte)'A' and <= (byte)'Z') or (>= (byte)'a' and <= (byte)'z') or (byte)'_';
}
