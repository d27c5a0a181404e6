using System.Collections.Immutable;
using System.Text;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;

namespace ShellForge.Cli.Viewing;

/// <summary>
/// The page of a housing that follows its file: <c>/</c> is the page; <c>/page</c> the same without style and script, with numbers
/// that are tried (<c>set=path=value</c>), checked when <c>checked=1</c>, or status 422 with the file's mistakes. Nothing else is there.
/// </summary>
/// <param name="housing">The housing.</param>
/// <param name="boardName">Its board file, as the user named it.</param>
/// <param name="defect">Told what the program can't answer for: a defect of its own.</param>
internal sealed class ViewSite(ViewedHousing housing, string boardName, Action<Exception> defect) : IWebSite
{
    // As many as sliders stand on the page, and some more.
    private const int MostTried = 32;
    private const int LongestTried = 200;

    private const string Html = "text/html; charset=utf-8";
    private const string Ok = "200 OK";

    /// <inheritdoc />
    public Task<long> NextEvent(long seen, CancellationToken cancel) => housing.NextVersion(seen, cancel);

    /// <inheritdoc />
    public WebAnswer Answer(WebRequestHead request, CancellationToken cancel)
    {
        try
        {
            return request.Path switch
            {
                "/" => Whole(cancel),
                "/page" => Part(request, cancel),
                _ => WebAnswer.Text("404 Not Found", "not here"),
            };
        }
#pragma warning disable CA1031 // A defect must not end the page in silence: it is told, and the next save is shown again.
        catch (Exception e) when (e is not OperationCanceledException)
#pragma warning restore CA1031
        {
            defect(e);
            return WebAnswer.Text("500 Internal Server Error", "a defect of the program, told in its terminal");
        }
    }

    private WebAnswer Whole(CancellationToken cancel)
    {
        ViewedPage page = housing.Page([], isChecked: false, cancel);
        PageContent content = page.Content
            ?? PageBuilder.OfBroken(Path.GetFileName(boardName), new PageLive(housing.Version, [], true, page.Mistakes));
        return new WebAnswer(Ok, Html, Encoding.UTF8.GetBytes(PageHtml.Write(content, PageAssets.Embedded)));
    }

    private WebAnswer Part(WebRequestHead request, CancellationToken cancel)
    {
        ImmutableArray<string> tried = [.. request.Values("set").Take(MostTried + 1)];
        if (tried.Length > MostTried || tried.Any(text => text.Length > LongestTried))
        {
            return WebAnswer.Text("400 Bad Request", "more numbers than this page tries");
        }

        ViewedPage page = housing.Page(tried, request.Values("checked").Contains("1"), cancel);
        return page.Content is null
            ? new WebAnswer("422 Unprocessable Content", "application/json", MistakesDocument.Bytes(page.Mistakes))
            : new WebAnswer(Ok, Html, Encoding.UTF8.GetBytes(PageHtml.Write(page.Content, new PageAssets("", ""))));
    }
}
