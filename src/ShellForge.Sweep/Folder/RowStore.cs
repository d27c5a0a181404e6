using System.Globalization;
using System.Text;
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
    private readonly List<FileStream> _files = [];

    /// <summary>How many rows are known.</summary>
    public int Count => _byKey.Count;

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

        var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        _files.Add(file);
        Scan(file, _files.Count - 1);
    }

    /// <summary>Whether the row of a key is there.</summary>
    public bool Has(string key) => _byKey.ContainsKey(key);

    /// <summary>The row of a key; null where it is not there.</summary>
    public VariantRow? Read(string key) => Bytes(key) is { } bytes ? RowJson.Read(bytes) : null;

    /// <summary>The JSON of a key's row; null where it is not there.</summary>
    public byte[]? Bytes(string key)
    {
        if (!_byKey.TryGetValue(key, out Found found))
        {
            return null;
        }

        byte[] json = new byte[found.Length];
        lock (_files)
        {
            FileStream file = _files[found.File];
            file.Seek(found.Offset, SeekOrigin.Begin);
            file.ReadExactly(json);
        }

        return json;
    }

    /// <inheritdoc />
    public void Dispose()
    {
        foreach (FileStream file in _files)
        {
            file.Dispose();
        }
    }

    private void Scan(FileStream file, int number)
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

            // The same key is the same row, whoever wrote it.
            _byKey.TryAdd(Encoding.ASCII.GetString(head, 0, keyLength), new Found(number, from, length));
            at = from + length + 1;
        }
    }

    private readonly record struct Found(int File, long Offset, int Length);
}
