using System.Collections.Immutable;
using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using ShellForge.Cli.Comparing;
using ShellForge.Cli.Making;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Writing;
using ShellForge.Output.Files;
using ShellForge.Output.Report;
using ShellForge.Pipeline;
using ShellForge.Sweep.Comparing;
using Spectre.Console;

namespace ShellForge.Cli.Verbs;

/// <summary><c>make</c>: everything, from the board file to parts, report and drawings.</summary>
internal static class MakeVerb
{
    public static Command Create(Workbench bench)
    {
        Argument<string> board = SharedOptions.BoardFile();
        var folder = new Option<string?>("--output", "-o")
        {
            Description = "Folder to write into; by default 'housing' beside the board file",
            HelpName = "DIR",
        };
        Option<ImmutableArray<OutputFormat>> formats = FormatList.Option();
        Option<string[]> set = SharedOptions.Set();
        Option<string[]> gcode = SharedOptions.Gcode();
        Option<bool> strict = SharedOptions.Strict();
        Option<bool> details = SharedOptions.Details();
        Option<bool> json = SharedOptions.Json();
        Option<bool> quiet = SharedOptions.Quiet();
        var command = new Command("make", "Make the housing: parts to print, report, shopping list, drawings")
        {
            board, folder, set, formats, gcode, strict, details, json, quiet,
        };
        command.SetAction(parsed => (int)Run(bench, new Wish(
            parsed.GetRequiredValue(board), parsed.GetValue(folder), parsed.GetRequiredValue(set),
            FormatList.Wanted(parsed.GetValue(formats)), parsed.GetRequiredValue(gcode),
            parsed.GetValue(strict), parsed.GetValue(details), parsed.GetValue(json), parsed.GetValue(quiet))));
        return command;
    }

    private static ExitCode Run(Workbench bench, Wish wish)
    {
        long started = Stopwatch.GetTimestamp();
        BoardSource source = BoardSource.ReadWithGcode(wish.Board, wish.Set, wish.Gcode, bench);
        if (source.File is null)
        {
            return BadBoardReport.Print(source, bench,
                wish.Json ? ReportJson.OfMake((int)ExitCode.BadInput, null, null, source.Diagnostics, null) : null);
        }

        DrawnFiles? drawn = null;
        MadeHousing made = MakingProgress.Run(
            bench, wish.Quiet || wish.Json,
            step => HousingPipeline.Make(source.File, step, housing => drawn = DrawnFiles.Of(housing, wish.Formats), sliced: source.Sliced,
                cancel: bench.Cancel));
        string folder = wish.Folder is null
            ? source.HousingFolder(bench)
            : bench.FullPath(wish.Folder);
        ImmutableArray<OutputFile> files = MadeFiles.Of(made, drawn!, source.Text);
        bench.Cancel.ThrowIfCancellationRequested();
        OthersFiles.Refuse(folder, files, EarlierRun.IsIn(folder), [source.Path, .. wish.Gcode.Select(bench.FullPath)]);
        HousingState? last = wish.Quiet || wish.Json ? null : ComparedSide.OfFolder(folder);
        StagedFiles.Write(folder, files, EarlierRun.Files);
        HousingReport report = HousingFiles.Told(drawn!, made.Report);
        ExitCode exit = CheckVerb.ExitOf(report, wish.Strict);
        HousingComparison? changed = last is not null && ComparedSide.OfFolder(folder) is { } now ? HousingComparison.Of(last, now) : null;
        Tell(bench, wish, source, new Told(report, folder, files, changed), exit, Stopwatch.GetElapsedTime(started));
        return exit;
    }

    private static void Tell(Workbench bench, Wish wish, BoardSource source, Told told, ExitCode exit, TimeSpan took)
    {
        (HousingReport report, string folder, ImmutableArray<OutputFile> files, HousingComparison? changed) = told;
        if (wish.Json)
        {
            JsonOut.Write(bench, ReportJson.OfMake((int)exit, folder, files.Select(file => file.Name), source.NotAmongFindings, report));
            return;
        }

        DiagnosticsText.Write(source.NotAmongFindings, bench, wish.Quiet);
        if (wish.Quiet)
        {
            return;
        }

        IAnsiConsole console = bench.OutConsole();
        HousingText.WriteSummary(console, report, wish.Strict);
        FindingsText.Write(console, report.Findings, wish.Details);
        console.WriteLine();
        HousingText.WriteParts(console, report);
        console.WriteLine();
        HousingText.WriteSliced(console, report);
        if (changed is not null)
        {
            ChangesText.WriteSinceLast(console, changed);
        }

        console.MarkupLineInterpolated(
            CultureInfo.InvariantCulture, $"{FindingsText.Counted(files.Length, "file")} in {folder} ({took.TotalSeconds:0.0} s)");
    }

    private sealed record Told(HousingReport Report, string Folder, ImmutableArray<OutputFile> Files, HousingComparison? Changed);

    private sealed record Wish(
        string Board, string? Folder, string[] Set, ImmutableArray<OutputFormat> Formats, string[] Gcode, bool Strict, bool Details,
        bool Json, bool Quiet);
}
