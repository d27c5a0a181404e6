using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ShellForge.Board.Schema;
using ShellForge.Cli.Reading;
using ShellForge.Output.Files;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;

namespace ShellForge.Cli.Viewing;

/// <summary>
/// The page of a housing that follows its file: <c>/</c> is the page; <c>/page</c> the same without style and script, with numbers
/// that are tried (<c>set=path=value</c>) and a text that is sent in place of the file's, checked when <c>checked=1</c>, or status 422
/// with the mistakes; <c>/made</c> the files that <c>make</c> would write, their names or the one of a <c>name</c>; <c>/file</c> the
/// board file, written when a text is sent with the stamp of the one it replaces; <c>/schema</c> what can stand in it, and <c>/names</c>
/// the names of profiles that can; <c>/handed-over</c> reads hand-over files that are sent into the text of a board file, and
/// <c>/questions</c> tells what a text still leaves open. Nothing else is there.
/// </summary>
/// <param name="housing">The housing.</param>
/// <param name="file">Its board file, as it is written.</param>
/// <param name="boardName">Its name as the user gave it.</param>
/// <param name="isNew">Whether it may begin with no file.</param>
/// <param name="defect">Told what the program can't answer for: a defect of its own.</param>
internal sealed class ViewSite(ViewedHousing housing, WrittenFile file, string boardName, bool isNew, Action<Exception> defect) : IWebSite
{
    // As many as sliders stand on the page, and some more.
    private const int MostTried = 32;
    private const int LongestTried = 200;
    private const int KeyLength = 32;
    private const string HandOverPath = "/handed-over";

    private const string Html = "text/html; charset=utf-8";
    private const string Json = "application/json";
    private const string Ok = "200 OK";

    /// <inheritdoc />
    public string Key { get; } = RandomNumberGenerator.GetHexString(KeyLength, lowercase: true);

    /// <inheritdoc />
    public Task<long> NextEvent(long seen, CancellationToken cancel) => housing.NextVersion(seen, cancel);

    /// <inheritdoc />
    public int LongestBody(string path) => path == HandOverPath ? HandedOver.LongestBody : TextFile.LongestBytes;

    /// <inheritdoc />
    public WebAnswer Answer(WebRequestHead request, byte[]? body, CancellationToken cancel)
    {
        try
        {
            if (request.Path == HandOverPath && body is not null)
            {
                return Imported(HandedOver.Of(body), cancel);
            }

            string? text = body is null ? null : Strict.GetString(body);
            return request.Path switch
            {
                "/" when text is null => Whole(cancel),
                "/page" => Part(request, text, cancel),
                "/made" => Made(request, text, cancel),
                "/questions" when text is not null => new WebAnswer(Ok, Json, BoardQuestions.Of(text, housing.Profiles()).Bytes()),
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
        ViewedPage page = housing.Page(Tried(request), draft, request.Values("checked").Contains("1"), cancel);
        return page.Content is null ? Mistaken(page.Mistakes, draft)
            : new WebAnswer(Ok, Html, Encoding.UTF8.GetBytes(PageHtml.Write(page.Content, new PageAssets("", ""))));
    }

    private WebAnswer Made(WebRequestHead request, string? draft, CancellationToken cancel)
    {
        (ImmutableArray<OutputFile> files, ImmutableArray<PageMistake> mistakes) = housing.Files(Tried(request), draft, cancel);
        if (!mistakes.IsEmpty)
        {
            return Mistaken(mistakes, draft);
        }

        return request.Values("name").FirstOrDefault() is not { } name ? new WebAnswer(Ok, Json, MadeFilesDocument.Bytes(files))
            : files.FirstOrDefault(file => file.Name == name) is { } wanted
                ? new WebAnswer(Ok, "application/octet-stream", wanted.Content)
            : WebAnswer.Text("404 Not Found", "no file of this housing");
    }

    private WebAnswer Imported(HandedOver sent, CancellationToken cancel)
    {
        (ImportedDocument? import, ImmutableArray<PageMistake> mistakes) =
            sent.Read(Path.GetFileNameWithoutExtension(boardName), housing.Profiles(), cancel);
        return import is null ? Mistaken(mistakes, "") : new WebAnswer(Ok, Json, import.Bytes());
    }

    private WebAnswer Mistaken(ImmutableArray<PageMistake> mistakes, string? draft) => new(
        "422 Unprocessable Content", Json, MistakesDocument.Bytes(mistakes, isBegun: draft is null && isNew && !file.Exists));

    private static ImmutableArray<string> Tried(WebRequestHead request)
    {
        ImmutableArray<string> tried = [.. request.Values("set").Take(MostTried + 1)];
        return tried.Length <= MostTried && tried.All(text => text.Length <= LongestTried) ? tried
            : throw new WrongFileException("more numbers than this page tries");
    }
}
