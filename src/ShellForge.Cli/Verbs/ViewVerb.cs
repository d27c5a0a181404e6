using System.CommandLine;
using ShellForge.Bench;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Viewing;

namespace ShellForge.Cli.Verbs;

/// <summary><c>view</c>: a page on this machine that shows the housing and follows the file.</summary>
internal static class ViewVerb
{
    private const int LastPort = 65535;
    private const int MostKept = 6;

    public static Command Create(Workbench bench)
    {
        Argument<string> board = SharedOptions.BoardFile();
        var port = new Option<int?>("--port")
        {
            Description = "Port to listen on; by default one that is free",
            HelpName = "NUMBER",
            CustomParser = SharedOptions.WholeNumber("a port", 0, LastPort),
        };
        var isNew = new Option<bool>("--new")
        {
            Description = "Begin with an empty file, to drop hand-over files on or to write; the first save makes it",
        };
        Option<string[]> set = SharedOptions.Set();
        var command = new Command(
            "view", "Show the housing on a local page that follows the board file, which can be written in beside it")
        {
            board, isNew, port, set,
        };
        command.SetAction((parsed, _) => Run(
            bench, parsed.GetRequiredValue(board), parsed.GetValue(isNew), parsed.GetValue(port) ?? 0, parsed.GetRequiredValue(set)));
        return command;
    }

    private static async Task<int> Run(Workbench bench, string board, bool isNew, int port, string[] set)
    {
        string path = bench.FullPath(board);
        if (!isNew || File.Exists(path))
        {
            // A file that is not there is told at once; one with mistakes is what the page is for.
            BoardSource source = BoardSource.Read(board, set, bench);
            DiagnosticsText.Write(source.NotAmongFindings, bench, errorsOnly: false);
        }

        using var watch = new FileWatch(path);
        var versions = new SavedVersions();
        var viewed = new ViewedBoard(board, [.. set], isNew, versions, bench);
        var site = new ViewSite(
            new BenchSite(viewed, new BenchHousing(viewed, MostKept)), new WrittenFile(path, board), versions,
            e => ProgramDefectReport.Tell(e, ["view", board, .. set.SelectMany(text => new[] { "--set", text })], bench));
        using LoopbackServer server = LoopbackServer.Start(port, site);
        bench.Out.WriteLine($"{board} is shown at {server.Address}");
        bench.Out.WriteLine("Write in the file there or in your own editor: the housing follows. Ctrl+C stops.");
        bench.Out.Flush();
        await Task.WhenAll(server.Run(bench.Cancel), watch.Run(versions.FileChanged, bench.Cancel));
        return (int)ExitCode.Done;
    }
}
