using System.CommandLine;
using ShellForge.Cli.Comparing;
using ShellForge.Cli.Making;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Reading;
using ShellForge.Output.Report;
using ShellForge.Output.Words;
using ShellForge.Pipeline;
using ShellForge.Sweep.Comparing;
using Spectre.Console;

namespace ShellForge.Cli.Verbs;

/// <summary><c>check</c>: the findings only; writes nothing.</summary>
internal static class CheckVerb
{
    public static Command Create(Workbench bench)
    {
        Argument<string> board = SharedOptions.BoardFile();
        Option<string[]> set = SharedOptions.Set();
        Option<string[]> gcode = SharedOptions.Gcode();
        Option<bool> strict = SharedOptions.Strict();
        Option<bool> json = SharedOptions.Json();
        Option<bool> details = SharedOptions.Details();
        Option<bool> quiet = SharedOptions.Quiet();
        var last = new Option<string?>("--last")
        {
            Description = "Folder with the last report, to tell what changed since; by default 'housing' beside the board file",
            HelpName = "DIR",
        };
        var command = new Command("check", "Tell what would go wrong, without writing anything")
        {
            board, set, last, gcode, strict, details, json, quiet,
        };
        command.Validators.Add(given =>
        {
            if (given.GetValue(last) is not null && (given.GetValue(json) || given.GetValue(quiet)))
            {
                given.AddError("--last tells in words what changed: leave out --json and --quiet, or say 'compare DIR BOARD --json'");
            }
        });
        command.SetAction(parsed => (int)Run(
            bench, new Wish(
                parsed.GetRequiredValue(board), parsed.GetRequiredValue(set), parsed.GetValue(last),
                parsed.GetRequiredValue(gcode), parsed.GetValue(strict),
                parsed.GetValue(details), parsed.GetValue(json), parsed.GetValue(quiet))));
        return command;
    }

    /// <summary>The exit status that a report asks for.</summary>
    public static ExitCode ExitOf(HousingReport report, bool strict) =>
        report.Verdict == Verdict.DoNotPrint || (strict && report.Verdict == Verdict.MindWarnings) ? ExitCode.Stopped : ExitCode.Done;

    private static ExitCode Run(Workbench bench, Wish wish)
    {
        // A folder that was named must have a report; the usual one may not be there yet. Files are compared with none: none is made here.
        HousingState? named = wish.Last is null ? null : ComparedSide.OfNamedFolder(wish.Last, bench, withFiles: false);
        BoardSource source = BoardSource.ReadWithGcode(wish.Board, wish.Set, wish.Gcode, bench);
        if (source.File is null)
        {
            return BadBoardReport.Print(source, bench,
                wish.Json ? ReportJson.OfCheck((int)ExitCode.BadInput, source.Diagnostics, null) : null);
        }

        MadeHousing made = MakingProgress.Run(
            bench, wish.Quiet || wish.Json, step => HousingPipeline.Make(source.File, step, sliced: source.Sliced, cancel: bench.Cancel));
        ExitCode exit = ExitOf(made.Report, wish.Strict);
        if (wish.Json)
        {
            JsonOut.Write(bench, ReportJson.OfCheck((int)exit, source.NotAmongFindings, made.Report));
            return exit;
        }

        DiagnosticsText.Write(source.NotAmongFindings, bench, wish.Quiet);
        if (!wish.Quiet)
        {
            IAnsiConsole console = bench.OutConsole();
            HousingText.WriteSummary(console, made.Report, wish.Strict);
            FindingsText.Write(console, made.Report.Findings, wish.Details);
            HousingText.WriteSliced(console, made.Report);
            HousingState? last = named ?? ComparedSide.OfFolder(source.HousingFolder(bench), withFiles: false);
            TellChanges(console, wish, last, made);
        }

        return exit;
    }

    private static void TellChanges(IAnsiConsole console, Wish wish, HousingState? last, MadeHousing made)
    {
        if (last is null || HousingState.Read(ReportJson.Bytes(made.Report), _ => null) is not { } now)
        {
            return;
        }

        var comparison = HousingComparison.Of(last, now);
        if (!comparison.IsEmpty)
        {
            console.WriteLine();
            ChangesText.WriteSinceLast(console, comparison, $"in {wish.Last ?? "'housing'"}",
                $"shellforge compare {ShellWord.OfPath(wish.Last ?? "housing")} {ShellWord.OfPath(wish.Board)} tells all");
        }
    }

    private sealed record Wish(string Board, string[] Set, string? Last, string[] Gcode, bool Strict, bool Details, bool Json, bool Quiet);
}
