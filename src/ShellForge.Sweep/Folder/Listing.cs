using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ShellForge.Board.Files;
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

    // The first has a wish and the name of a file in it.
    private const int LongestLine = 1000;

    /// <summary>What the first line of an order's list says; goes through all of it.</summary>
    public static ListingHead HeadOf(SweepOrder order, CancellationToken cancel)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

        // Also a file whose name has a line end gives one line.
        string title = string.Concat(Path.GetFileNameWithoutExtension(order.Plan.File).Select(c => char.IsControl(c) ? '\uFFFD' : c));
        var head = new ListingHead("", 0, order.Plan.SparesPercent, title, order.Plan.Best);
        hash.AppendData(Encoding.UTF8.GetBytes(Header(head)));
        int lines = 0;
        foreach (ListedVariant variant in Of(order, cancel))
        {
            hash.AppendData(Encoding.ASCII.GetBytes(Line(variant)));
            lines++;
        }

        return head with { Digest = Convert.ToHexStringLower(hash.GetHashAndReset()), Count = lines };
    }

    /// <summary>All variants of an order with their keys.</summary>
    public static IEnumerable<ListedVariant> Of(SweepOrder order, CancellationToken cancel)
    {
        Func<Variant, string> keys = order.Keys();
        return VariantList.Of(order, cancel).Select(variant => new ListedVariant(variant.Number, variant.Folder, keys(variant)));
    }

    /// <summary>Writes the list under its name, whole or not at all.</summary>
    public static void Write(string path, string aside, SweepOrder order, ListingHead head)
    {
        using (var writer = new StreamWriter(aside, append: false, new UTF8Encoding(false)) { NewLine = "\n" })
        {
            writer.WriteLine(Header(head));
            foreach (ListedVariant variant in Of(order, CancellationToken.None))
            {
                writer.Write(Line(variant));
            }
        }

        File.Move(aside, path, overwrite: true);
    }

    /// <summary>Whether a folder's list is whole and that of an order.</summary>
    public static bool IsOf(string path, ListingHead head)
    {
        if (FirstLine(path) != Header(head))
        {
            return false;
        }

        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.UTF8.GetBytes(Header(head with { Digest = "", Count = 0 })));
        try
        {
            foreach (ListedVariant variant in Lines(path, head.Count))
            {
                hash.AppendData(Encoding.ASCII.GetBytes(Line(variant)));
            }
        }
        catch (IOException)
        {
            return false;
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset()) == head.Digest;
    }

    /// <summary>What the first line of a folder's list says; null where there is no list of ours.</summary>
    public static ListingHead? Read(string path)
    {
        string[] words = FirstLine(path).Split(',', 6);
        return words.Length == 6 && words[0] == Format && VariantNames.IsKey(words[1])
            && int.TryParse(words[2], NumberStyles.None, CultureInfo.InvariantCulture, out int count)
            && double.TryParse(words[3], NumberStyles.Float, CultureInfo.InvariantCulture, out double spares) && double.IsFinite(spares)
            && !words[5].Any(char.IsControl)
            ? new ListingHead(words[1], count, spares, words[5], BestWish.Parse(words[4]))
            : null;
    }

    /// <summary>The variants of a written list, in their order.</summary>
    /// <param name="path">The list.</param>
    /// <param name="count">How many its first line says.</param>
    /// <exception cref="IOException">A line is none of ours, or there are not as many.</exception>
    public static IEnumerable<ListedVariant> Lines(string path, int count)
    {
        using var reader = new StreamReader(BoundedFile.Open(path));
        Line(reader);
        int number = 0;
        while (Line(reader) is { } line)
        {
            string[] words = line.Split(',');
            if (++number > count || words.Length != 3 || words[0] != number.ToString(CultureInfo.InvariantCulture)
                || !VariantNames.IsFolder(words[1]) || !VariantNames.IsKey(words[2]))
            {
                throw Spoiled(path, number);
            }

            yield return new ListedVariant(number, words[1], words[2]);
        }

        if (number != count)
        {
            throw Spoiled(path, number + 1);
        }
    }

    // Empty where there is none.
    private static string FirstLine(string path)
    {
        try
        {
            using var reader = new StreamReader(BoundedFile.Open(path));
            return Line(reader) ?? "";
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return "";
        }
    }

    private static IOException Spoiled(string path, int variant) => new(string.Create(CultureInfo.InvariantCulture,
        $"{path}: what stands there for variant {variant} is from no sweep; run the sweep again, and the list is written anew"));

    // The next line; null at the end. What is longer than any line of ours is given as far as that, which is none of ours either.
    private static string? Line(StreamReader reader)
    {
        var line = new StringBuilder();
        int sign;
        while ((sign = reader.Read()) >= 0 && sign != '\n' && line.Length < LongestLine)
        {
            line.Append((char)sign);
        }

        return sign < 0 && line.Length == 0 ? null : line.ToString();
    }

    private static string Header(ListingHead head) =>
        string.Create(CultureInfo.InvariantCulture, $"{Format},{head.Digest},{head.Count},{head.SparesPercent},{head.Best},{head.Title}");

    private static string Line(ListedVariant variant) =>
        string.Create(CultureInfo.InvariantCulture, $"{variant.Number},{variant.Folder},{variant.Key}\n");
}
