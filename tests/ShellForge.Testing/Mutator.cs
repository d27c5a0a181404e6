using System.Text;

namespace ShellForge.Testing;

/// <summary>
/// Spoils files in the ways that hurt readers: cut, repeated and spliced pieces, flipped bytes, numbers out of any range.
/// </summary>
/// <param name="seed">The same seed spoils in the same ways.</param>
/// <param name="tokens">What is put in between: words and numbers that mean something to the reader.</param>
public sealed class Mutator(int seed, IReadOnlyList<string> tokens)
{
    private readonly Random _random = new(seed);

    /// <summary>One of some files, spoiled.</summary>
    /// <param name="seeds">The files.</param>
    public byte[] Next(IReadOnlyList<byte[]> seeds)
    {
        byte[] bytes = [.. seeds[_random.Next(seeds.Count)]];
        int rounds = 1 + _random.Next(6);
        for (int i = 0; i < rounds; i++)
        {
            bytes = Once(bytes, seeds);
        }

        return bytes.Length > 200_000 ? bytes[..200_000] : bytes;
    }

    private byte[] Once(byte[] bytes, IReadOnlyList<byte[]> seeds)
    {
        int at = _random.Next(bytes.Length + 1);
        switch (_random.Next(9))
        {
            case 0:
                return bytes[..at];
            case 1:
                return bytes[at..];
            case 2 when bytes.Length > 0:
                bytes[_random.Next(bytes.Length)] = (byte)_random.Next(256);
                return bytes;
            case 3:
                return [.. bytes[..at], .. Encoding.UTF8.GetBytes(tokens[_random.Next(tokens.Count)]), .. bytes[at..]];
            case 4:
                byte[] other = seeds[_random.Next(seeds.Count)];
                int from = _random.Next(other.Length + 1);
                return [.. bytes[..at], .. other[from..Math.Min(other.Length, from + _random.Next(2000))], .. bytes[at..]];
            case 5:
                int end = Math.Min(bytes.Length, at + _random.Next(400));
                return [.. bytes[..end], .. bytes[at..end], .. bytes[at..end], .. bytes[end..]];
            case 6:
                return [.. bytes[..at], .. bytes[Math.Min(bytes.Length, at + _random.Next(60))..]];
            case 7:
                return Digits(bytes);
            default:
                return Swapped(bytes);
        }
    }

    // Changes digits in a stretch: coordinates go astray while the grammar stays whole.
    private byte[] Digits(byte[] bytes)
    {
        int at = _random.Next(bytes.Length + 1);
        for (int i = at; i < Math.Min(bytes.Length, at + 200); i++)
        {
            if (bytes[i] is >= (byte)'0' and <= (byte)'9' && _random.Next(3) == 0)
            {
                bytes[i] = (byte)('0' + _random.Next(10));
            }
            else if (bytes[i] == (byte)'.' && _random.Next(6) == 0)
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
        int a = _random.Next(lines.Count);
        int b = _random.Next(lines.Count);
        (lines[a], lines[b]) = (lines[b], lines[a]);
        return Encoding.Latin1.GetBytes(string.Join('\n', lines));
    }
}
