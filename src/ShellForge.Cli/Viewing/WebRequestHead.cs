using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Bench;

namespace ShellForge.Cli.Viewing;

/// <summary>The head of a request, bounded.</summary>
/// <param name="Method">GET and so on.</param>
/// <param name="Path">Path without the query.</param>
/// <param name="Query">Names and values of the query, in order.</param>
/// <param name="Host">The host that was asked for.</param>
/// <param name="FetchSite">Where a browser says the request comes from; null when it says nothing.</param>
/// <param name="FetchMode">How a browser says it asks; null when it says nothing.</param>
internal sealed record WebRequestHead(
    string Method, string Path, ImmutableArray<(string Name, string Value)> Query, string Host, string? FetchSite, string? FetchMode)
{
    /// <summary>The field in which the page's script gives its key: a page of another site can't set it.</summary>
    public const string KeyField = "X-Key";

    /// <summary>The key in its field; null when there is none.</summary>
    public string? KeyInField { get; private init; }

    /// <summary>How many bytes follow; null when it is not said, or not as a number.</summary>
    public int? BodyLength { get; private init; }

    private const int LongestHead = 16 << 10;

    /// <summary>Values of a name in the query.</summary>
    public IEnumerable<string> Values(string name) => Query.Where(pair => pair.Name == name).Select(pair => pair.Value);

    /// <summary>Reads a head, and what came along with it of the body; no head when there is none, or it is too long or no HTTP.</summary>
    public static async Task<(WebRequestHead? Head, ReadOnlyMemory<byte> Along)> Read(Stream stream, CancellationToken cancel)
    {
        byte[] buffer = new byte[LongestHead];
        int length = 0;
        while (length < buffer.Length)
        {
            int read = await stream.ReadAsync(buffer.AsMemory(length), cancel);
            if (read == 0)
            {
                return default;
            }

            length += read;
            int end = buffer.AsSpan(0, length).IndexOf("\r\n\r\n"u8);
            if (end >= 0)
            {
                const int emptyLine = 4;
                return (Parsed(Encoding.ASCII.GetString(buffer, 0, end)), buffer.AsMemory((end + emptyLine)..length));
            }
        }

        return default;
    }

    /// <summary>A head from its text without the empty line at its end; null when it is no HTTP/1 request.</summary>
    internal static WebRequestHead? Parsed(string text)
    {
        string[] lines = text.Split("\r\n");
        string[] request = lines[0].Split(' ');
        if (request.Length != 3 || !request[2].StartsWith("HTTP/1.", StringComparison.Ordinal) || !request[1].StartsWith('/'))
        {
            return null;
        }

        var fields = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (string line in lines[1..])
        {
            int colon = line.IndexOf(':', StringComparison.Ordinal);
            if (colon <= 0 || !fields.TryAdd(line[..colon], line[(colon + 1)..].Trim()))
            {
                // A field that stands twice could mean one thing to a proxy and another here.
                if (colon <= 0 || line.StartsWith("host:", StringComparison.OrdinalIgnoreCase))
                {
                    return null;
                }
            }
        }

        int question = request[1].IndexOf('?', StringComparison.Ordinal);
        string path = question < 0 ? request[1] : request[1][..question];
        string query = question < 0 ? "" : request[1][(question + 1)..];
        return new WebRequestHead(
            request[0], path, BenchRequest.Pairs(query), fields.GetValueOrDefault("Host", ""), fields.GetValueOrDefault("Sec-Fetch-Site"),
            fields.GetValueOrDefault("Sec-Fetch-Mode"))
        {
            KeyInField = fields.GetValueOrDefault(KeyField),
            BodyLength = int.TryParse(
                fields.GetValueOrDefault("Content-Length"), NumberStyles.None, CultureInfo.InvariantCulture, out int length)
                ? length : null,
        };
    }
}
