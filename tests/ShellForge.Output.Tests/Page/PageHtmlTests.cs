using System.Text.RegularExpressions;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Page;
using ShellForge.Planning.Hands;

namespace ShellForge.Output.Tests.Page;

public class PageHtmlTests
{
    private const string Hostile = "</script><script>alert(1)</script>\"' onload=\"x";

    private static PageContent Content(string text) => new()
    {
        Name = text,
        Revision = text,
        Verdict = new PageVerdict("warn", text),
        Answers = [new PageAnswer(text, text, new Point3(1, 2, 3))],
        Findings = [new PageFinding(1, "warn", text, text, text, text, text, new Point3(1.00049, -2, 3), text)],
        Bodies = [],
        Drawings = [new PageDrawing(text, "<svg></svg>", 297, 210)],
        Pictures = [new PagePicture(text, text, [1, 2, 3], true)],
        Figures = [(text, text, text)],
        Shopping = [(text, 3)],
        Parts = [new PagePart(text, text, text, text, text, text, text, text, text, text, text, [text])],
        PrintAdvice = [text],
        Steps = [new PageStep(text, text, text, [new HandCaution(text, text)], [text], [1], text)],
        Resolved = [(text, text, text, text)],
        Cautions = [new HandCaution(text, text)],
        Live = new PageLive(4, [new PageTry(text, text, 1, 0, 2, 0.1)]),
    };

    [Fact]
    public void Text_of_a_board_file_never_becomes_markup()
    {
        string page = PageHtml.Write(Content(Hostile), new PageAssets("", "c2NyaXB0"));

        Assert.DoesNotContain("alert(1)</script>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("onload=\"", page, StringComparison.Ordinal);

        // One start tag each: data, script, starter.
        Assert.Equal(3, Regex.Count(page, "<script"));
        Assert.Equal(3, Regex.Count(page, "</script"));
    }

    [Fact]
    public void Everything_is_in_the_file()
    {
        string page = PageHtml.Write(Content("plain"), PageAssets.Embedded);

        Assert.DoesNotMatch(@"(?:src|href)=""(?!data:|#)", page);
        Assert.DoesNotMatch(@"url\((?!#|data:)", page);
        Assert.DoesNotContain("@import", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_script_the_page_says_so_and_offers_no_controls()
    {
        string page = PageHtml.Write(Content("plain"), new PageAssets("", null));

        Assert.Contains("made without the 3D script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"explode\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_content_gives_the_same_page() => Assert.Equal(
        PageHtml.Write(Content("plain"), PageAssets.Embedded), PageHtml.Write(Content("plain"), PageAssets.Embedded));
}
