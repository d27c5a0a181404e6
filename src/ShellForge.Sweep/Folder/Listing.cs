using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ShellForge.Sweep.Variants;

namespace ShellForge.Sweep.Folder;

/// <summary>A variant as the list names it.</summary>
/// <param name="Number">Its place, from 1.</param>
/// <param name="Folder">Its folder.</param>
/// <param name="Key">Hash over everything that decides it.</param>
public readonly record struct ListedVariant(int Number, string Folder, string Key);

/// <summary>
/// The list of all variants of an order, as a file: so that shards can be joined without the plan, and two plans in one folder are told
/// from each other. One line a variant; the first line says what the whole is.
/// </summary>
internal static class Listing
{
    private const string Format = "shellforge-variants/1";

    /// <summary>The list of an order, one line after the other, and its digest.</summary>
    public static string DigestOf(SweepOrder order, out int count)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        int lines = 0;
        foreach (ListedVariant variant in Of(order))
        {
            hash.AppendData(Encoding.ASCII.GetBytes(Line(variant)));
            lines++;
        }

        count = lines;
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>All variants of an order with their keys.</summary>
    public static IEnumerable<ListedVariant> Of(SweepOrder order)
    {
        Func<Variant, string> keys = order.Keys();
        return VariantList.Of(order).Select(variant => new ListedVariant(variant.Number, variant.Folder, keys(variant)));
    }

    /// <summary>Writes the list under its name, whole or not at all.</summary>
    public static void Write(string path, string aside, SweepOrder order, string digest, int count)
    {
        using (var writer = new StreamWriter(aside, append: false, new UTF8Encoding(false)) { NewLine = "\n" })
        {
            writer.WriteLine(Header(digest, count));
            foreach (ListedVariant variant in Of(order))
            {
                writer.Write(Line(variant));
            }
        }

        File.Move(aside, path, overwrite: true);
    }

    /// <summary>The digest that a folder's list carries, with its count; null where there is no list.</summary>
    public static (string Digest, int Count)? Read(string path)
    {
        try
        {
            using var reader = new StreamReader(new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
            string[] words = (reader.ReadLine() ?? "").Split(',');
            return words.Length == 3 && words[0] == Format && int.TryParse(words[2], NumberStyles.None, CultureInfo.InvariantCulture, out int count)
                ? (words[1], count)
                : null;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    /// <summary>The variants of a written list, in their order.</summary>
    /// <exception cref="InvalidDataException">A line is none of ours.</exception>
    public static IEnumerable<ListedVariant> Lines(string path)
    {
        foreach (string line in File.ReadLines(path).Skip(1))
        {
            string[] words = line.Split(',');
            if (words.Length != 3 || !int.TryParse(words[0], NumberStyles.None, CultureInfo.InvariantCulture, out int number) || words[1] != Path.GetFileName(words[1]))
            {
                throw new InvalidDataException($"{path}: '{line}' names no variant; run the sweep again, and the list is written anew");
            }

            yield return new ListedVariant(number, words[1], words[2]);
        }
    }

    private static string Header(string digest, int count) => string.Create(CultureInfo.InvariantCulture, $"{Format},{digest},{count}");

    private static string Line(ListedVariant variant) => string.Create(CultureInfo.InvariantCulture, $"{variant.Number},{variant.Folder},{variant.Key}\n");
}
