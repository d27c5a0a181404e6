using System.CommandLine;
using ShellForge.Cli.Making;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Telling;
using ShellForge.Output.Report;
using ShellForge.Pipeline;

namespace ShellForge.Cli.Verbs;

/// <summary><c>check</c>: the findings only; writes nothing.</summary>
internal static class CheckVerb
{
    public static Command Create(Workbench bench)
    {
        Argument<string> board = SharedOptions.BoardFile();
        Option<string[]> set = SharedOptions.Set();
        Option<bool> strict = SharedOptions.Strict();
        Option<bool> json = SharedOptions.Json();
        Option<bool> quiet = SharedOptions.Quiet();
        var command = new Command("check", "Tell what would go wrong, without writing anything") { board, set, strict, json, quiet };
        command.SetAction(parsed => (int)Run(
            bench, parsed.GetRequiredValue(board), parsed.GetRequiredValue(set), parsed.GetValue(strict), parsed.GetValue(json),
            parsed.GetValue(quiet)));
        return command;
    }

    /// <summary>The exit status that a report asks for.</summary>
    public static ExitCode ExitOf(HousingReport report, bool strict) =>
        report.Verdict == Verdict.DoNotPrint || (strict && report.Verdict == Verdict.MindWarnings) ? ExitCode.Stopped : ExitCode.Done;

    private static ExitCode Run(Workbench bench, string board, string[] set, bool strict, bool json, bool quiet)
    {
        BoardSource source = BoardSource.Read(board, set, bench);
        if (source.File is null)
        {
            return BadBoard.Tell(source, bench, json ? ReportJson.OfCheck((int)ExitCode.BadInput, source.Diagnostics, null) : null);
        }

        MadeHousing made = MakingProgress.Run(
            bench, quiet || json, step => HousingPipeline.Make(source.File, step, cancel: bench.Cancel));
        ExitCode exit = ExitOf(made.Report, strict);
        if (json)
        {
            JsonOut.Write(bench, ReportJson.OfCheck((int)exit, source.NotAmongFindings, made.Report));
            return exit;
        }

        DiagnosticsText.Write(source.NotAmongFindings, bench, quiet);
        if (!quiet)
        {
            FindingsText.Write(bench.OutConsole(), made.Report.Findings);
            FindingsText.WriteVerdict(bench.OutConsole(), made.Report, strict);
        }

        return exit;
    }
}
