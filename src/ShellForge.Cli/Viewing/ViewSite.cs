using System.Security.Cryptography;
using System.Text;
using ShellForge.Bench;
using ShellForge.Cli.Reading;
using ShellForge.Output.Page;

namespace ShellForge.Cli.Viewing;

/// <summary>
/// The page of a housing that follows its file: what <see cref="BenchSite"/> answers, and <c>/file</c>, the board file, written when a
/// text is sent with the stamp of the one it replaces. Nothing else is there.
/// </summary>
/// <param name="site">The page.</param>
/// <param name="file">Its board file, as it is written.</param>
/// <param name="versions">Its saves.</param>
/// <param name="defect">Told what the program can't answer for: a defect of its own.</param>
internal sealed class ViewSite(BenchSite site, WrittenFile file, SavedVersions versions, Action<Exception> defect) : IWebSite
{
    private const int KeyLength = 32;
    private const string FilePath = "/file";

    /// <inheritdoc />
    public string Key { get; } = RandomNumberGenerator.GetHexString(KeyLength, lowercase: true);

    /// <inheritdoc />
    public Task<long> NextEvent(long seen, CancellationToken cancel) => versions.NextVersion(seen, cancel);

    /// <inheritdoc />
    public int LongestBody(string path) => path == BenchSite.HandOverPath ? BenchSite.LongestHandOver : TextFile.LongestBytes;

    /// <inheritdoc />
    public BenchAnswer Answer(WebRequestHead request, byte[]? body, CancellationToken cancel)
    {
        try
        {
            return request.Path == FilePath
                ? body is null ? Document(file.Read()) : Write(BenchRequest.Text(body), request.Values("stamp").FirstOrDefault() ?? "")
                : site.Answer(
                    new BenchRequest(request.Path, request.Query, body), () => PageAssets.EmbeddedForBench, Key, cancel);
        }
        catch (DecoderFallbackException e)
        {
            return BenchAnswer.Text("400 Bad Request", $"what was sent is not UTF-8 text (byte {e.Index + 1})");
        }
        catch (Exception e) when (e is WrongFileException or WrongRequestException)
        {
            return BenchAnswer.Text("400 Bad Request", e.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return BenchAnswer.Text("500 Internal Server Error", e.Message);
        }
#pragma warning disable CA1031 // A defect must not end the page in silence: it is told, and the next save is shown again.
        catch (Exception e) when (e is not OperationCanceledException)
#pragma warning restore CA1031
        {
            defect(e);
            return BenchAnswer.Text("500 Internal Server Error", "a defect of the program, told in its terminal");
        }
    }

    private static BenchAnswer Document(WrittenFileDocument now) => new(BenchAnswer.Ok, BenchAnswer.Json, now.Bytes());

    private BenchAnswer Write(string text, string stamp)
    {
        bool written = file.Replace(text, stamp, out WrittenFileDocument now);
        return written ? Document(now) : new BenchAnswer("409 Conflict", BenchAnswer.Json, now.Bytes());
    }
}
