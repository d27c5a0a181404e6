using Microsoft.Playwright;
using ShellForge.Cli;
using ShellForge.Testing;

namespace ShellForge.Browser.Tests;

/// <summary>Texts of a board file that would be run, were they taken for anything but text.</summary>
[Collection(SharedBrowser.Name)]
public sealed class HostileTextTests(Browser browser) : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [SkippableFact]
    public async Task No_text_of_a_board_file_runs_in_any_page_or_picture()
    {
        Skip.IfNot(Browser.Missing is null, Browser.Missing);
        _folder.Write("board.yaml", HostileBoard.Text);
        _folder.Write("plan.yaml", $"format: shellforge-plan/1\nboard: board.yaml\nvary: {{housing.walls: [3, 4]}}\n");
        Run("make", "board.yaml", "-o", "out", "--formats", "stl,paper");
        Run("sweep", "plan.yaml", "-o", "many", "--findings-only");
        Run("compare", "out", "board.yaml", "-o", "compared.html");

        IPage page = await browser.Blank();
        bool wasAsked = false;
        page.Dialog += (_, dialog) =>
        {
            wasAsked = true;
            _ = dialog.DismissAsync();
        };
        string[] files =
        [
            _folder.File("out/report.html"), _folder.File("many/index.html"), _folder.File("compared.html"),
            .. Directory.GetFiles(_folder.File("out"), "*.svg"),
        ];
        foreach (string file in files.Where(File.Exists))
        {
            await page.GotoAsync(new Uri(file).AbsoluteUri);
            await page.WaitForTimeoutAsync(300);
            Assert.True(await page.EvaluateAsync<bool>("window.hurt === undefined"), $"a text ran in {Path.GetFileName(file)}");
        }

        Assert.False(wasAsked);
        Assert.True(files.Count(File.Exists) > 6, "too few files to mean anything");
        await page.CloseAsync();
    }

    private void Run(params string[] args)
    {
        using var told = new StringWriter { NewLine = "\n" };
        int exit = ShellForgeCommand.Run(args, new Workbench { Out = told, Err = told, Folder = _folder.Path });
        Assert.True(exit is 0 or 1, told.ToString());
    }
}
