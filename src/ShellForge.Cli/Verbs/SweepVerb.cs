using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Sweeping;
using ShellForge.Cli.Writing;
using ShellForge.Output.Files;
using ShellForge.Planning.Remembering;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Index;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;

namespace ShellForge.Cli.Verbs;

/// <summary><c>sweep</c>: many variants of a board's housing, made, checked and put side by side.</summary>
internal static class SweepVerb
{
    // Bytes: beside the names of all variants the program stays under 300 MB.
    private const long MostRemembered = 60_000_000;

    public static Command Create(Workbench bench)
    {
        var plan = new Argument<string?>("PLAN")
        {
            Description = "The plan (YAML): boards, and what is varied; not needed with --merge",
            Arity = ArgumentArity.ZeroOrOne
        };
        var folder = new Option<string?>("--output", "-o")
        {
            Description = "Folder to write into; by default 'sweep' beside the plan",
            HelpName = "DIR"
        };
        Option<string[]> set = SharedOptions.Set();
        Option<ImmutableArray<OutputFormat>> formats = FormatList.Option();
        var findings =
            new Option<bool>("--findings-only") { Description = "Check every variant and write the index, but no files of the variants" };
        var jobs = new Option<int?>("--jobs", "-j")
        {
            Description = "Variants at one time; by default as many as there are cores",
            HelpName = "NUMBER",
            CustomParser = SharedOptions.WholeNumber("how many variants are made at one time", 1, SweepWish.MostJobs),
        };
        var shard = new Option<Shard?>("--shard")
        {
            Description =
                "Only a share of the variants: the i-th of n, i from 0 to n - 1; in a task of Slurm, Kubernetes, AWS Batch, Grid Engine "
                    + "or GNU parallel by itself",
            HelpName = "i/n",
            CustomParser = ReadShard,
        };
        var dry = new Option<bool>("--dry-run")
        {
            Description =
            "Tell how many variants, how long and how much disk; one is made in memory for that, nothing is written"
        };
        var merge =
            new Option<string?>("--merge")
            {
                Description =
                "Join what all shares have made in a folder, write its index, and list what is missing",
                HelpName = "DIR"
            };
        var plates = new Option<bool>("--plates")
        {
            Description = "Also lay out on beds the parts of all variants that can be printed, and write one 3MF file per plate",
        };
        var script =
            new Option<string?>("--script")
            {
                Description =
                "Print the few lines that run the shares on an engine that is there: slurm, kubernetes or parallel"
            };
        OneOf.Accept(script, [.. SiteScript.All.Keys]);
        var shares = new Option<int>("--shares")
        {
            Description = "How many shares the script has",
            HelpName = "NUMBER",
            DefaultValueFactory = _ => 8
        };
        shares.Validators.Add(given =>
        {
            if (given.GetValueOrDefault<int>() is < 1 or > SweepWish.MostShares)
            {
                given.AddError($"shares are a number from 1 to {SweepWish.MostShares}");
            }
        });
        Option<bool> json = SharedOptions.Json();
        Option<bool> quiet = SharedOptions.Quiet();
        var command = new Command("sweep", "Make and check many variants and put them side by side")
        {
            plan, folder, set, formats, findings, jobs, shard, merge, plates, script, shares, dry, json, quiet,
        };
        command.Validators.Add(given =>
        {
            if (given.GetResult(plan) is not { Tokens.Count: > 0 } == given.GetResult(merge) is null)
            {
                given.AddError("say a plan, or --merge with the folder of a sweep");
            }

            if (given.GetValue(plates)
                && (given.GetResult(shard) is not null || given.GetResult(script) is not null || given.GetValue(findings)
                    || given.GetValue(dry)))
            {
                given.AddError("--plates lays out the parts of a whole sweep: leave out --shard, --script, --findings-only and --dry-run");
            }
        });
        command.SetAction(parsed => (int)Run(bench, new SweepWish
        {
            Plan = parsed.GetValue(plan) ?? "",
            Merge = parsed.GetValue(merge),
            Script = parsed.GetValue(script),
            Shares = parsed.GetValue(shares),
            Folder = parsed.GetValue(folder),
            Set = parsed.GetRequiredValue(set),
            Formats = FormatList.Wanted(parsed.GetValue(formats)),
            FindingsOnly = parsed.GetValue(findings),
            Jobs = parsed.GetValue(jobs) ?? Environment.ProcessorCount,
            Shard = parsed.GetValue(shard),
            Plates = parsed.GetValue(plates),
            DryRun = parsed.GetValue(dry),
            Json = parsed.GetValue(json),
            Quiet = parsed.GetValue(quiet),
        }));
        return command;
    }

    private static ExitCode Run(Workbench bench, SweepWish wish)
    {
        if (wish.Merge is not null)
        {
            return SweepEnd.Join(bench.FullPath(wish.Merge), wish, bench);
        }

        SweepSource source = SweepSource.Read(wish.Plan, wish.Set, wish.Formats, wish.FindingsOnly, bench);
        if (source.Order is not { } order)
        {
            return Refuse(source, bench, wish.Json);
        }

        if (wish.Script is not null)
        {
            var site = new SiteWish(wish.Plan, wish.Folder ?? "sweep", wish.Shares);
            if (SiteScript.Refuses(site) is { } refused)
            {
                bench.Complain($"shellforge: {refused}");
                return ExitCode.BadInput;
            }

            bench.Out.Write(SiteScript.All[wish.Script](site).ReplaceLineEndings("\n") + "\n");
            return ExitCode.Done;
        }

        string from = "";
        string? fault = null;
        Shard? shard = wish.Shard ?? EngineShare.Read(bench.Variable, out from, out fault);
        if (fault is not null)
        {
            bench.Complain($"shellforge: {fault}");
            return ExitCode.BadInput;
        }

        if (shard is not null && wish.Plates)
        {
            bench.Complain("shellforge: this is one share of a sweep; say --plates with --merge, when all shares are through");
            return ExitCode.BadInput;
        }

        if (shard is not null && order.Plan.Best?.Along is not null)
        {
            bench.Complain("shellforge: a plan that seeks along a range is not cut into shares: leave 'along' out, or run it as one");
            return ExitCode.BadInput;
        }

        try
        {
            return Made(bench, wish, source, order, shard, from);
        }
        catch (FolderTakenException e)
        {
            bench.Complain($"shellforge: {e.Message}");
            return ExitCode.BadInput;
        }
    }

    private static ExitCode Made(Workbench bench, SweepWish wish, SweepSource source, SweepOrder order, Shard? shard, string from)
    {
        string root = wish.Folder is null ? Path.Combine(Path.GetDirectoryName(bench.FullPath(wish.Plan))!, "sweep")
            : bench.FullPath(wish.Folder);
        DiagnosticsText.Write(source.Diagnostics, bench, wish.Quiet || wish.Json);
        var maker = new VariantMaker(order, new WorkMemory(MostRemembered));
        if (wish.DryRun)
        {
            return SweepEstimate.Tell(order, maker, root, wish with { Shard = shard }, source.Diagnostics, bench);
        }

        OthersFiles.Refuse(root, SweepIndex.Others(root));
        SweepProgress progress;
        SweepCounts counts;
        using (SweepFolder folder = SweepFolder.Open(root, order, bench.Cancel))
        {
            counts = SweepRun.Count(order, folder, shard ?? Shard.Whole, bench.Cancel);
            progress = new SweepProgress(counts.Mine, counts.Kept);
            if (counts.Kept < counts.Mine)
            {
                progress.Show(bench, wish.Quiet || wish.Json, told =>
                    SweepRun.Run(order, folder, new SweepPart(shard ?? Shard.Whole, wish.Jobs), maker.Make, told, bench.Cancel));
            }
        }

        var run = new SweepTold(counts, progress, source.Diagnostics);
        return shard is { } share ? SweepEnd.TellShare(root, wish, run, share, from, bench) : SweepEnd.Tell(root, wish, run, bench);
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
