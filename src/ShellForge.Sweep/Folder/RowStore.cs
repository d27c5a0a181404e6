using System.Globalization;
using System.Text;
using ShellForge.Board.Files;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Folder;

/// <summary>
/// Finds the rows of finished variants in files of rows: a line each, led by its key and its length, so that a line that a killed
/// writer left unfinished is known for one. Only places are kept in memory; a row is read when it is asked for.
/// </summary>
internal sealed class RowStore : IDisposable
{
    // A row of a large board has some ten kilobytes.
    private const int LongestRow = 16 << 20;

    private readonly Dictionary<string, Found> _byKey = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Found>> _again = new(StringComparer.Ordinal);
    private readonly List<Stream> _files = [];

    /// <summary>A row as a line of a file of rows.</summary>
    public static byte[] Line(VariantRow row)
    {
        byte[] json = RowJson.Line(row);
        byte[] head =
            Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{row.Key} {json.Length} "));
        return [.. head, .. json, (byte)'\n'];
    }

    /// <summary>Looks through a file of rows, as far as its lines are whole.</summary>
    public void Add(string path)
    {
        if (!File.Exists(path))
        {
            return;
        }

        Stream file = BoundedFile.Open(path);
        _files.Add(file);
        Scan(file, _files.Count - 1);
    }

    /// <summary>The row of a variant; null where none is there that a sweep can have written.</summary>
    public VariantRow? Read(ListedVariant variant)
    {
        if (!_byKey.TryGetValue(variant.Key, out Found found))
        {
            return null;
        }

        // The same key is the same row, whoever wrote it, but for one that has been spoiled.
        return Read(variant, found)
            ?? (_again.TryGetValue(variant.Key, out List<Found>? others)
                ? others.Select(other => Read(variant, other)).FirstOrDefault(row => row is not null) : null);
    }

    /// <inheritdoc />
    public void Dispose()
    {
        foreach (Stream file in _files)
        {
            file.Dispose();
        }
    }

    private VariantRow? Read(ListedVariant variant, Found found)
    {
        byte[] json = new byte[found.Length];
        lock (_files)
        {
            Stream file = _files[found.File];
            file.Seek(found.Offset, SeekOrigin.Begin);
            file.ReadExactly(json);
        }

        return RowJson.Read(json) is { } row && row.Key == variant.Key && row.Folder == variant.Folder ? row : null;
    }

    private void Scan(Stream file, int number)
    {
        const int keyLength = 64;
        const int longestHead = keyLength + 12;
        byte[] head = new byte[longestHead];
        long at = 0;
        long end = file.Length;
        while (at + longestHead < end)
        {
            file.Seek(at, SeekOrigin.Begin);
            file.ReadExactly(head);
            int space = head.AsSpan(keyLength + 1).IndexOf((byte)' ');
            if (head[keyLength] != ' ' || space < 1
                || !int.TryParse(head.AsSpan(keyLength + 1, space), NumberStyles.None, CultureInfo.InvariantCulture, out int length)
                || length is < 1 or > LongestRow)
            {
                return;
            }

            long from = at + keyLength + 1 + space + 1;
            if (from + length >= end)
            {
                return;
            }

            file.Seek(from + length, SeekOrigin.Begin);
            if (file.ReadByte() != '\n')
            {
                return;
            }

            string key = Encoding.ASCII.GetString(head, 0, keyLength);
            var found = new Found(number, from, length);
            if (!_byKey.TryAdd(key, found))
            {
                (_again.TryGetValue(key, out List<Found>? others) ? others : _again[key] = []).Add(found);
            }

            at = from + length + 1;
        }
    }

    private readonly record struct Found(int File, long Offset, int Length);
}
