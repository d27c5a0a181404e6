using System.Text;

namespace ShellForge.Testing;

/// <summary>
/// Spoils files in the ways that hurt readers: cut, repeated and spliced pieces, flipped bytes, numbers out of any range.
/// </summary>
/// <param name="dice">Says how.</param>
/// <param name="tokens">What is put in between: words and numbers that mean something to the reader.</param>
public sealed class Mutator(Random dice, IReadOnlyList<string> tokens)
{
    /// <summary>One of some files, spoiled.</summary>
    /// <param name="seeds">The files.</param>
    public byte[] Next(IReadOnlyList<byte[]> seeds)
    {
        byte[] bytes = [.. seeds[dice.Next(seeds.Count)]];
        int rounds = 1 + dice.Next(6);
        for (int i = 0; i < rounds; i++)
        {
            bytes = Once(bytes, seeds);
        }

        return bytes.Length > 200_000 ? bytes[..200_000] : bytes;
    }

    private byte[] Once(byte[] bytes, IReadOnlyList<byte[]> seeds)
    {
        int at = dice.Next(bytes.Length + 1);
        switch (dice.Next(9))
        {
            case 0:
                return bytes[..at];
            case 1:
                return bytes[at..];
            case 2 when bytes.Length > 0:
                bytes[dice.Next(bytes.Length)] = (byte)dice.Next(256);
                return bytes;
            case 3:
                return [.. bytes[..at], .. Encoding.UTF8.GetBytes(tokens[dice.Next(tokens.Count)]), .. bytes[at..]];
            case 4:
                byte[] other = seeds[dice.Next(seeds.Count)];
                int from = dice.Next(other.Length + 1);
                return [.. bytes[..at], .. other[from..Math.Min(other.Length, from + dice.Next(2000))], .. bytes[at..]];
            case 5:
                int end = Math.Min(bytes.Length, at + dice.Next(400));
                return [.. bytes[..end], .. bytes[at..end], .. bytes[at..end], .. bytes[end..]];
            case 6:
                return [.. bytes[..at], .. bytes[Math.Min(bytes.Length, at + dice.Next(60))..]];
            case 7:
                return Digits(bytes);
            default:
                return Swapped(bytes);
        }
    }

    // Changes digits in a stretch: coordinates go astray while the grammar stays whole.
    private byte[] Digits(byte[] bytes)
    {
        int at = dice.Next(bytes.Length + 1);
        for (int i = at; i < Math.Min(bytes.Length, at + 200); i++)
        {
            if (bytes[i] is >= (byte)'0' and <= (byte)'9' && dice.Next(3) == 0)
            {
                bytes[i] = (byte)('0' + dice.Next(10));
            }
            else if (bytes[i] == (byte)'.' && dice.Next(6) == 0)
            {
                bytes[i] = (byte)'9';
            }
        }

        return bytes;
    }

    // Two lines change places.
    private byte[] Swapped(byte[] bytes)
    {
        List<string> lines = [.. Encoding.Latin1.GetString(bytes).Split('\n')];
        int a = dice.Next(lines.Count);
        int b = dice.Next(lines.Count);
        (lines[a], lines[b]) = (lines[b], lines[a]);
        return Encoding.Latin1.GetBytes(string.Join('\n', lines));
    }
}
