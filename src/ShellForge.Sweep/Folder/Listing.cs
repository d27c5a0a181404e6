using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Sweep.Variants;

namespace ShellForge.Sweep.Folder;

/// <summary>A variant as the list names it.</summary>
/// <param name="Number">Its place, from 1.</param>
/// <param name="Folder">Its folder.</param>
/// <param name="Key">Hash over everything that decides it.</param>
public readonly record struct ListedVariant(int Number, string Folder, string Key);

/// <summary>What the first line of a list says.</summary>
/// <param name="Digest">What the list is known by: over all its lines, and over what the index says of the whole.</param>
/// <param name="Count">How many variants it has.</param>
/// <param name="SparesPercent">How many more small parts are bought than used.</param>
/// <param name="Title">What the sweep is called.</param>
/// <param name="Best">Which variant is wished for; null for none.</param>
public sealed record ListingHead(string Digest, int Count, double SparesPercent, string Title, BestWish? Best);

/// <summary>
/// The list of all variants of an order, as a file: so that shards can be joined without the plan, and two plans in one folder are told
/// from each other. One line a variant; the first line says what the whole is.
/// </summary>
internal static class Listing
{
    private const string Format = "shellforge-variants/1";

    /// <summary>What the first line of an order's list says; goes through all of it.</summary>
    public static ListingHead HeadOf(SweepOrder order)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var head = new ListingHead("", 0, order.Plan.SparesPercent, Path.GetFileNameWithoutExtension(order.Plan.File), order.Plan.Best);
        hash.AppendData(Encoding.UTF8.GetBytes(Header(head)));
        int lines = 0;
        foreach (ListedVariant variant in Of(order))
        {
            hash.AppendData(Encoding.ASCII.GetBytes(Line(variant)));
            lines++;
        }

        return head with { Digest = Convert.ToHexStringLower(hash.GetHashAndReset()), Count = lines };
    }

    /// <summary>All variants of an order with their keys.</summary>
    public static IEnumerable<ListedVariant> Of(SweepOrder order)
    {
        Func<Variant, string> keys = order.Keys();
        return VariantList.Of(order).Select(variant => new ListedVariant(variant.Number, variant.Folder, keys(variant)));
    }

    /// <summary>Writes the list under its name, whole or not at all.</summary>
    public static void Write(string path, string aside, SweepOrder order, ListingHead head)
    {
        using (var writer = new StreamWriter(aside, append: false, new UTF8Encoding(false)) { NewLine = "\n" })
        {
            writer.WriteLine(Header(head));
            foreach (ListedVariant variant in Of(order))
            {
                writer.Write(Line(variant));
            }
        }

        File.Move(aside, path, overwrite: true);
    }

    /// <summary>What the first line of a folder's list says; null where there is no list.</summary>
    public static ListingHead? Read(string path)
    {
        try
        {
            using var reader =
                new StreamReader(new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
            string[] words = (reader.ReadLine() ?? "").Split(',', 6);
            return words.Length == 6 && words[0] == Format
                && int.TryParse(words[2], NumberStyles.None, CultureInfo.InvariantCulture, out int count)
                && double.TryParse(words[3], NumberStyles.Float, CultureInfo.InvariantCulture, out double spares)
                ? new ListingHead(words[1], count, spares, words[5], BestWish.Parse(words[4]))
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
            if (words.Length != 3 || !int.TryParse(words[0], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
                || words[1] != Path.GetFileName(words[1]))
            {
                throw new InvalidDataException($"{path}: '{line}' names no variant; run the sweep again, and the list is written anew");
            }

            yield return new ListedVariant(number, words[1], words[2]);
        }
    }

    private static string Header(ListingHead head) =>
        string.Create(CultureInfo.InvariantCulture, $"{Format},{head.Digest},{head.Count},{head.SparesPercent},{head.Best},{head.Title}");

    private static string Line(ListedVariant variant) =>
        string.Create(CultureInfo.InvariantCulture, $"{variant.Number},{variant.Folder},{variant.Key}\n");
}
