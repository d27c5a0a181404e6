using System.Text;
using ShellForge.Cli.Writing;
using ShellForge.Output.Files;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests.Writing;

public class StagedFilesTests
{
    private static OutputFile TextFile(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));

    [Fact]
    public void Files_appear_with_their_content_and_nothing_else_does()
    {
        using var folder = new TemporaryFolder();

        StagedFiles.Write(folder.File("new/deep"), [TextFile("a.txt", "one"), TextFile("b.txt", "two")]);

        Assert.Equal(["a.txt", "b.txt"], Directory.GetFiles(folder.File("new/deep")).Select(Path.GetFileName).Order());
        Assert.Equal("one", File.ReadAllText(folder.File("new/deep/a.txt")));
    }

    [Fact]
    public void When_one_file_cannot_be_written_none_is_touched()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a.txt", "old");

        // The name's folder does not exist, so the second file fails to be written aside.
        Assert.ThrowsAny<IOException>(() => StagedFiles.Write(folder.Path, [TextFile("a.txt", "new"), TextFile("no/b.txt", "x")]));

        Assert.Equal("old", File.ReadAllText(folder.File("a.txt")));
        Assert.Single(Directory.GetFileSystemEntries(folder.Path));
    }

    [SkippableFact]
    public void What_lies_where_files_are_written_aside_is_not_written_through()
    {
        Skip.If(OperatingSystem.IsWindows(), "links need rights there");
        using var folder = new TemporaryFolder();
        string foreign = folder.Write("elsewhere/precious.txt", "precious");
        Directory.CreateDirectory(folder.File("out"));
        File.CreateSymbolicLink(folder.File($"out/.a.txt.{Environment.ProcessId}.part"), foreign);
        File.CreateSymbolicLink(folder.File("out/a.txt"), foreign);

        StagedFiles.Write(folder.File("out"), [TextFile("a.txt", "new")]);

        Assert.Equal("precious", File.ReadAllText(foreign));
        Assert.Equal("new", File.ReadAllText(folder.File("out/a.txt")));
        Assert.Null(new FileInfo(folder.File("out/a.txt")).LinkTarget);
    }

    [Theory]
    [InlineData("known", true, "mine")]
    [InlineData("theirs", false, "theirs")]
    [InlineData("", false, "")]
    public void Only_a_known_file_is_exchanged_and_another_goes_back(string there, bool exchanged, string left)
    {
        using var folder = new TemporaryFolder();
        string final = folder.Write("a.txt", there);
        string aside = folder.Write(".a.txt.1.part", "mine");

        Assert.Equal(exchanged, StagedFiles.Exchange(aside, final, "mine"u8.ToArray(), "known"u8.ToArray()));

        Assert.Equal(left, File.ReadAllText(final));
        Assert.Equal(["a.txt"], Directory.GetFiles(folder.Path).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData(null, "theirs", false, "theirs")]
    [InlineData(null, null, true, "mine")]
    [InlineData("known", null, false, null)]
    [InlineData("known", "theirs", false, "theirs")]
    [InlineData("known", "known", true, "mine")]
    public void A_file_takes_the_place_of_the_known_one_alone(string? known, string? there, bool written, string? left)
    {
        using var folder = new TemporaryFolder();
        if (there is not null)
        {
            folder.Write("a.txt", there);
        }

        byte[]? expected = known is null ? null : Encoding.UTF8.GetBytes(known);
        Assert.Equal(written, StagedFiles.Replace(folder.Path, TextFile("a.txt", "mine"), expected));

        Assert.Equal(left, File.Exists(folder.File("a.txt")) ? File.ReadAllText(folder.File("a.txt")) : null);
        Assert.True(Directory.GetFiles(folder.Path).Length <= 1);
    }

    [Fact]
    public void Parts_of_an_earlier_run_that_are_no_longer_made_go_in_every_format()
    {
        using var folder = new TemporaryFolder();
        folder.Write("baffle.stl", "old");
        folder.Write("baffle.step", "old");
        folder.Write("leds.h", "old");
        folder.Write("paper-drill.svg", "old");
        folder.Write("mine.step", "not ours");
        folder.Write("housing-2.3mf", "old");
        folder.Write("mine.stl", "not ours");
        folder.Write("report.json",
            """{"format": "shellforge-report/1", "parts": [{"file": "baffle.stl", "plate": "housing-2.3mf"}, {"plate": "/a.3mf"}, {"file": "../x.stl"}, {"file": 3}, 4]}""");

        StagedFiles.Write(folder.Path, [TextFile("tub.stl", "new")], EarlierRun.Files);

        Assert.Equal(["mine.step", "mine.stl", "report.json", "tub.stl"], Directory.GetFiles(folder.Path).Select(Path.GetFileName).Order());
    }

    [Theory]
    [InlineData("")]
    [InlineData("not json")]
    [InlineData("[]")]
    [InlineData("{\"format\": \"other/1\", \"parts\": [{\"file\": \"a.stl\"}]}")]
    [InlineData("{\"format\": \"shellforge-report/1\", \"parts\": 5}")]
    public void A_report_that_is_not_ours_names_nothing(string text)
    {
        using var folder = new TemporaryFolder();
        folder.Write("report.json", text);

        Assert.Empty(EarlierRun.Files(folder.Path));
    }
}
