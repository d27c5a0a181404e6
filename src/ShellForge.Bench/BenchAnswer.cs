using System.Text;

namespace ShellForge.Bench;

/// <summary>An answer to a request.</summary>
/// <param name="Status">Status with its words, such as "200 OK".</param>
/// <param name="Type">Media type.</param>
/// <param name="Body">The body.</param>
public sealed record BenchAnswer(string Status, string Type, byte[] Body)
{
    /// <summary>All is well.</summary>
    public const string Ok = "200 OK";

    /// <summary>A page.</summary>
    public const string Html = "text/html; charset=utf-8";

    /// <summary>A document.</summary>
    public const string Json = "application/json";

    /// <summary>A line of text.</summary>
    /// <param name="status">Status with its words.</param>
    /// <param name="text">The line.</param>
    public static BenchAnswer Text(string status, string text) =>
        new(status, "text/plain; charset=utf-8", Encoding.UTF8.GetBytes(text + "\n"));
}
