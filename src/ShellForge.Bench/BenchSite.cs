using System.Collections.Immutable;
using System.Text;
using ShellForge.Bench.Documents;
using ShellForge.Board.Schema;
using ShellForge.Output.Files;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;

namespace ShellForge.Bench;

/// <summary>
/// The page of a housing that is worked on: <c>/</c> is the page; <c>/page</c> the same without style and script, with numbers that are
/// tried (<c>set=path=value</c>) and a text that is sent in place of the file's, checked when <c>checked=1</c>, or status 422 with the
/// mistakes; <c>/mistakes</c> those alone; <c>/made</c> the files that <c>make</c> would write, their names, the one of a <c>name</c>, or
/// all as one <c>archive</c>; <c>/schema</c> what can stand in the board file, and <c>/names</c> the names of profiles that can;
/// <c>/handed-over</c> reads hand-over files that are sent into the text of a board file, and <c>/questions</c> tells what a text still
/// leaves open. Nothing else is there.
/// </summary>
/// <param name="board">The board file.</param>
/// <param name="housing">Its housing.</param>
public sealed class BenchSite(IBenchBoard board, BenchHousing housing)
{
    /// <summary>Where hand-over files are sent to.</summary>
    public const string HandOverPath = "/handed-over";

    /// <summary>How many bytes may be sent there.</summary>
    public const int LongestHandOver = HandedOver.LongestBody;

    // As many as sliders stand on the page, and some more.
    private const int MostTried = 32;
    private const int LongestTried = 200;

    /// <summary>Answers a request.</summary>
    /// <param name="request">What is asked for.</param>
    /// <param name="assets">Style and script of the page.</param>
    /// <param name="key">What the page's requests are to carry; empty for nothing.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="WrongRequestException">It is nothing that the page sends.</exception>
    /// <exception cref="DecoderFallbackException">What was sent is no text.</exception>
    public BenchAnswer Answer(BenchRequest request, Func<PageAssets> assets, string key, CancellationToken cancel)
    {
        if (request.Path == HandOverPath && request.Body is not null)
        {
            return Imported(HandedOver.Of(request.Body), cancel);
        }

        string? text = request.Body is null ? null : BenchRequest.Text(request.Body);
        return request.Path switch
        {
            "/" when text is null => Whole(assets(), key, cancel),
            "/page" => Part(request, text, cancel),
            "/mistakes" => housing.Mistakes(Tried(request), text) is { IsEmpty: false } mistakes ? Mistaken(mistakes, text)
                : new BenchAnswer(BenchAnswer.Ok, BenchAnswer.Json, MistakesDocument.Bytes([], isBegun: false)),
            "/made" => Made(request, text, cancel),
            "/questions" when text is not null => Document(BoardQuestions.Of(text, board.Profiles()).Bytes()),
            "/names" when text is null => Document(NamesDocument.Bytes(board.Profiles())),
            "/schema" when text is null => Document(Encoding.UTF8.GetBytes(BoardSchema.Json())),
            _ => BenchAnswer.Text("404 Not Found", "not here"),
        };
    }

    private static BenchAnswer Document(byte[] json) => new(BenchAnswer.Ok, BenchAnswer.Json, json);

    private static BenchAnswer Raw(byte[] content) => new(BenchAnswer.Ok, "application/octet-stream", content);

    private BenchAnswer Whole(PageAssets assets, string key, CancellationToken cancel)
    {
        BenchPage page = housing.Page([], null, isChecked: false, cancel);
        string name = Path.GetFileName(board.Name);
        PageContent content = page.Content ?? PageBuilder.OfBroken(name, new PageLive(board.Version, [], true, page.Mistakes));
        content = content with { Live = content.Live! with { Written = (name, key) } };
        return new BenchAnswer(BenchAnswer.Ok, BenchAnswer.Html, Encoding.UTF8.GetBytes(PageHtml.Write(content, assets)));
    }

    private BenchAnswer Part(BenchRequest request, string? draft, CancellationToken cancel)
    {
        BenchPage page = housing.Page(Tried(request), draft, request.Values("checked").Contains("1"), cancel);
        return page.Content is null ? Mistaken(page.Mistakes, draft)
            : new BenchAnswer(
                BenchAnswer.Ok, BenchAnswer.Html, Encoding.UTF8.GetBytes(PageHtml.Write(page.Content, new PageAssets("", ""))));
    }

    private BenchAnswer Made(BenchRequest request, string? draft, CancellationToken cancel)
    {
        (ImmutableArray<OutputFile> files, ImmutableArray<PageMistake> mistakes) = housing.Files(Tried(request), draft, cancel);
        if (!mistakes.IsEmpty)
        {
            return Mistaken(mistakes, draft);
        }

        return request.Values("archive").Any() ? Raw(FilesArchive.Of(files))
            : request.Values("name").FirstOrDefault() is not { } name ? Document(MadeFilesDocument.Bytes(files))
            : files.FirstOrDefault(file => file.Name == name) is { } wanted ? Raw(wanted.Content)
            : BenchAnswer.Text("404 Not Found", "no file of this housing");
    }

    private BenchAnswer Imported(HandedOver sent, CancellationToken cancel)
    {
        (ImportedDocument? import, ImmutableArray<PageMistake> mistakes) =
            sent.Read(Path.GetFileNameWithoutExtension(board.Name), board.Profiles(), cancel);
        return import is null ? Mistaken(mistakes, "") : Document(import.Bytes());
    }

    private BenchAnswer Mistaken(ImmutableArray<PageMistake> mistakes, string? draft) => new(
        "422 Unprocessable Content", BenchAnswer.Json, MistakesDocument.Bytes(mistakes, isBegun: draft is null && board.IsBegun));

    private static ImmutableArray<string> Tried(BenchRequest request)
    {
        ImmutableArray<string> tried = [.. request.Values("set").Take(MostTried + 1)];
        return tried.Length <= MostTried && tried.All(text => text.Length <= LongestTried) ? tried
            : throw new WrongRequestException("more numbers than this page tries");
    }
}
