using System.Collections.Immutable;
using System.Text;

namespace ShellForge.Bench;

/// <summary>What the page asks for.</summary>
/// <param name="Path">Path without the query.</param>
/// <param name="Query">Names and values of the query, in order.</param>
/// <param name="Body">What was sent with it; null for nothing.</param>
public sealed record BenchRequest(string Path, ImmutableArray<(string Name, string Value)> Query, byte[]? Body)
{
    /// <summary>Values of a name in the query.</summary>
    /// <param name="name">The name.</param>
    public IEnumerable<string> Values(string name) => Query.Where(pair => pair.Name == name).Select(pair => pair.Value);

    /// <summary>Names and values of a query as it stands in an address, without its question mark.</summary>
    /// <param name="query">The query.</param>
    public static ImmutableArray<(string Name, string Value)> Pairs(string query) =>
    [
        .. query.Split('&', StringSplitOptions.RemoveEmptyEntries).Select(pair =>
        {
            int equals = pair.IndexOf('=', StringComparison.Ordinal);
            return equals < 0 ? (Decoded(pair), "") : (Decoded(pair[..equals]), Decoded(pair[(equals + 1)..]));
        }),
    ];

    /// <summary>The text that was sent.</summary>
    /// <param name="body">Its bytes, UTF-8.</param>
    /// <exception cref="DecoderFallbackException">It is no text.</exception>
    public static string Text(byte[] body) => Strict.GetString(body);

    private static UTF8Encoding Strict { get; } = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static string Decoded(string text) => Uri.UnescapeDataString(text.Replace('+', ' '));
}

/// <summary>What was sent is nothing that the page sends.</summary>
/// <param name="message">What it is.</param>
public sealed class WrongRequestException(string message) : IOException(message);
