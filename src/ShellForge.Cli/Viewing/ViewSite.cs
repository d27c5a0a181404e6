using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ShellForge.Board.Schema;
using ShellForge.Cli.Reading;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;

namespace ShellForge.Cli.Viewing;

/// <summary>
/// The page of a housing that follows its file: <c>/</c> is the page; <c>/page</c> the same without style and script, with numbers
/// that are tried (<c>set=path=value</c>) and a text that is sent in place of the file's, checked when <c>checked=1</c>, or status 422
/// with the mistakes; <c>/file</c> the board file, written when a text is sent with the stamp of the one it replaces; <c>/schema</c> what
/// can stand in it, and <c>/names</c> the names of profiles that can. Nothing else is there.
/// </summary>
/// <param name="housing">The housing.</param>
/// <param name="file">Its board file, as it is written.</param>
/// <param name="boardName">Its name as the user gave it.</param>
/// <param name="defect">Told what the program can't answer for: a defect of its own.</param>
internal sealed class ViewSite(ViewedHousing housing, WrittenFile file, string boardName, Action<Exception> defect) : IWebSite
{
    // As many as sliders stand on the page, and some more.
    private const int MostTried = 32;
    private const int LongestTried = 200;
    private const int KeyLength = 32;

    private const string Html = "text/html; charset=utf-8";
    private const string Json = "application/json";
    private const string Ok = "200 OK";

    /// <inheritdoc />
    public string Key { get; } = RandomNumberGenerator.GetHexString(KeyLength, lowercase: true);

    /// <inheritdoc />
    public Task<long> NextEvent(long seen, CancellationToken cancel) => housing.NextVersion(seen, cancel);

    /// <inheritdoc />
    public WebAnswer Answer(WebRequestHead request, byte[]? body, CancellationToken cancel)
    {
        try
        {
            string? text = body is null ? null : Strict.GetString(body);
            return request.Path switch
            {
                "/" when text is null => Whole(cancel),
                "/page" => Part(request, text, cancel),
                "/file" when text is null => new WebAnswer(Ok, Json, file.Read().Bytes()),
                "/file" => Write(text, request.Values("stamp").FirstOrDefault() ?? ""),
                "/names" when text is null => new WebAnswer(Ok, Json, NamesDocument.Bytes(housing.Profiles())),
                "/schema" when text is null => new WebAnswer(Ok, Json, Encoding.UTF8.GetBytes(BoardSchema.Json())),
                _ => WebAnswer.Text("404 Not Found", "not here"),
            };
        }
        catch (DecoderFallbackException e)
        {
            return WebAnswer.Text("400 Bad Request", $"what was sent is not UTF-8 text (byte {e.Index + 1})");
        }
        catch (WrongFileException e)
        {
            return WebAnswer.Text("400 Bad Request", e.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return WebAnswer.Text("500 Internal Server Error", e.Message);
        }
#pragma warning disable CA1031 // A defect must not end the page in silence: it is told, and the next save is shown again.
        catch (Exception e) when (e is not OperationCanceledException)
#pragma warning restore CA1031
        {
            defect(e);
            return WebAnswer.Text("500 Internal Server Error", "a defect of the program, told in its terminal");
        }
    }

    private static UTF8Encoding Strict { get; } = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private WebAnswer Write(string text, string stamp)
    {
        bool written = file.Replace(text, stamp, out WrittenFileDocument now);
        return new WebAnswer(written ? Ok : "409 Conflict", Json, now.Bytes());
    }

    private WebAnswer Whole(CancellationToken cancel)
    {
        ViewedPage page = housing.Page([], null, isChecked: false, cancel);
        string name = Path.GetFileName(boardName);
        PageContent content = page.Content ?? PageBuilder.OfBroken(name, new PageLive(housing.Version, [], true, page.Mistakes));
        content = content with { Live = content.Live! with { Written = (name, Key) } };
        return new WebAnswer(Ok, Html, Encoding.UTF8.GetBytes(PageHtml.Write(content, PageAssets.EmbeddedForBench)));
    }

    private WebAnswer Part(WebRequestHead request, string? draft, CancellationToken cancel)
    {
        ImmutableArray<string> tried = [.. request.Values("set").Take(MostTried + 1)];
        if (tried.Length > MostTried || tried.Any(text => text.Length > LongestTried))
        {
            return WebAnswer.Text("400 Bad Request", "more numbers than this page tries");
        }

        ViewedPage page = housing.Page(tried, draft, request.Values("checked").Contains("1"), cancel);
        return page.Content is null
            ? new WebAnswer("422 Unprocessable Content", Json, MistakesDocument.Bytes(page.Mistakes))
            : new WebAnswer(Ok, Html, Encoding.UTF8.GetBytes(PageHtml.Write(page.Content, new PageAssets("", ""))));
    }
}
