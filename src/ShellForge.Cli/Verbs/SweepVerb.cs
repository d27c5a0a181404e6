using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using ShellForge.Cli.Making;
using ShellForge.Cli.Sweeping;
using ShellForge.Cli.Telling;
using ShellForge.Output.Files;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;

namespace ShellForge.Cli.Verbs;

/// <summary><c>sweep</c>: many variants of a board's housing, made, checked and put side by side.</summary>
internal static class SweepVerb
{
    public static Command Create(Workbench bench)
    {
        var plan = new Argument<string>("PLAN") { Description = "The plan (YAML): boards, and what is varied" };
        var folder = new Option<string?>("--output", "-o") { Description = "Folder to write into; by default 'sweep' beside the plan", HelpName = "DIR" };
        Option<string[]> set = SharedOptions.Set();
        Option<ImmutableArray<OutputFormat>> formats = FormatList.Option();
        var findings = new Option<bool>("--findings-only") { Description = "Check every variant and write the index, but no files of the variants" };
        var jobs = new Option<int?>("--jobs", "-j")
        {
            Description = "Variants at one time; by default as many as there are cores",
            HelpName = "NUMBER",
        };
        jobs.Validators.Add(given =>
        {
            if (given.GetValueOrDefault<int?>() is < 1 or > SweepWish.MostJobs)
            {
                given.AddError($"variants at one time are a number from 1 to {SweepWish.MostJobs}");
            }
        });
        var shard = new Option<Shard?>("--shard")
        {
            Description = "Only a share of the variants: the i-th of n, i from 0 to n - 1",
            HelpName = "i/n",
            CustomParser = ReadShard,
        };
        var dry = new Option<bool>("--dry-run") { Description = "Tell how many variants, how long and how much disk; one is made in memory for that, nothing is written" };
        Option<bool> json = SharedOptions.Json();
        Option<bool> quiet = SharedOptions.Quiet();
        var command = new Command("sweep", "Make and check many variants and put them side by side") { plan, folder, set, formats, findings, jobs, shard, dry, json, quiet };
        command.SetAction(parsed => (int)Run(bench, new SweepWish
        {
            Plan = parsed.GetRequiredValue(plan),
            Folder = parsed.GetValue(folder),
            Set = parsed.GetRequiredValue(set),
            Formats = FormatList.Wanted(parsed.GetValue(formats)),
            FindingsOnly = parsed.GetValue(findings),
            Jobs = parsed.GetValue(jobs) ?? Environment.ProcessorCount,
            Shard = parsed.GetValue(shard) ?? Shard.Whole,
            DryRun = parsed.GetValue(dry),
            Json = parsed.GetValue(json),
            Quiet = parsed.GetValue(quiet),
        }));
        return command;
    }

    private static ExitCode Run(Workbench bench, SweepWish wish)
    {
        SweepSource source = SweepSource.Read(wish.Plan, wish.Set, wish.Formats, wish.FindingsOnly, bench);
        if (source.Order is not { } order)
        {
            return Refuse(source, bench, wish.Json);
        }

        string root = wish.Folder is null ? Path.Combine(Path.GetDirectoryName(bench.FullPath(wish.Plan))!, "sweep") : bench.FullPath(wish.Folder);
        DiagnosticsText.Write(source.Diagnostics, bench, wish.Quiet || wish.Json);
        var maker = new VariantMaker(order, DefectFiles.Of);
        if (wish.DryRun)
        {
            return SweepEstimate.Tell(order, maker, root, wish, source.Diagnostics, bench);
        }

        using SweepFolder folder = SweepFolder.Open(root, order);
        SweepCounts counts = SweepRun.Count(order, folder, wish.Shard);
        var progress = new SweepProgress(counts.Mine, counts.Kept);
        if (counts.Kept < counts.Mine)
        {
            progress.Show(bench, wish.Quiet || wish.Json, told =>
                SweepRun.Run(order, folder, new SweepPart(wish.Shard, wish.Jobs), maker.Make, told, bench.Cancel));
        }

        return SweepEnd.Tell(root, wish, counts, progress, source.Diagnostics, bench);
    }

    private static ExitCode Refuse(SweepSource source, Workbench bench, bool json)
    {
        if (json)
        {
            JsonOut.Write(bench, new SweepDocument { Exit = (int)ExitCode.BadInput, Diagnostics = source.Diagnostics }.Written());
        }
        else
        {
            DiagnosticsText.Write(source.Diagnostics, bench, errorsOnly: false);
        }

        return ExitCode.BadInput;
    }

    private static Shard? ReadShard(ArgumentResult given)
    {
        Shard? shard = given.Tokens.Count == 1 ? Shard.Parse(given.Tokens[0].Value) : null;
        if (shard is null)
        {
            given.AddError(string.Create(CultureInfo.InvariantCulture, $"a share is i/n with i from 0 to n - 1, such as 0/4"));
        }

        return shard;
    }
}
