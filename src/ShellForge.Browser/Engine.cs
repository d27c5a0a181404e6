using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text;
using ShellForge.Bench;
using ShellForge.Output.Page;

namespace ShellForge.Browser;

/// <summary>
/// What the worker of the page calls: a request and its answer, as the command's server gives it. A call keeps the worker busy until it
/// is done; who wants it no longer ends the worker.
/// </summary>
[SupportedOSPlatform("browser")]
internal static partial class Engine
{
    // Memory of a browser's tab is dearer than going back to a number that was tried three numbers ago.
    private const int MostKept = 2;

    private static readonly PageBoard Board = new();
    private static readonly BenchSite Site = new(Board, new BenchHousing(Board, MostKept, stage => Told(stage.ToString())));
    private static BenchAnswer _answer = BenchAnswer.Text("404 Not Found", "nothing was asked");

    /// <summary>Asks.</summary>
    /// <param name="path">Path without the query.</param>
    /// <param name="query">The query without its question mark.</param>
    /// <param name="body">What is sent with it; null for nothing.</param>
    /// <returns>The status.</returns>
    [JSExport]
    internal static string Ask(string path, string query, byte[]? body)
    {
        _answer = Answered(new BenchRequest(path, BenchRequest.Pairs(query), body));
        return _answer.Status;
    }

    /// <summary>The media type of the last answer.</summary>
    [JSExport]
    internal static string AnswerType() => _answer.Type;

    /// <summary>The body of the last answer.</summary>
    [JSExport]
    internal static byte[] AnswerBody() => _answer.Body;

    [JSImport("told", "engine")]
    private static partial void Told(string stage);

    private static BenchAnswer Answered(BenchRequest request)
    {
        try
        {
            return Site.Answer(request, () => new PageAssets("", ""), "", CancellationToken.None);
        }
        catch (DecoderFallbackException e)
        {
            return BenchAnswer.Text("400 Bad Request", $"what was given is not UTF-8 text (byte {e.Index + 1})");
        }
        catch (IOException e)
        {
            return BenchAnswer.Text("400 Bad Request", e.Message);
        }
    }
}
