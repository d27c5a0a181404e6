using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Diagnostics;
using ShellForge.Cli.Printing;
using ShellForge.Output.Words;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Index;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Seeking;
using ShellForge.Sweep.Variants;

namespace ShellForge.Cli.Sweeping;

/// <summary>Joins what is finished, writes the index once nothing is missing, and tells how the sweep stands.</summary>
internal static class SweepEnd
{
    private const int MostNamed = 20;

    /// <summary>Joins the shares of a folder and tells how the whole stands.</summary>
    public static ExitCode Join(string root, SweepWish wish, Workbench bench)
    {
        if (!Directory.Exists(root))
        {
            throw new IOException($"{wish.Merge}: there is no such folder");
        }

        using SweepFolder folder = SweepFolder.OpenJoined(root)
            ?? throw new IOException($"{wish.Merge}: no sweep has been started in this folder");

        // A search along a range makes only what it looks at.
        int missing = 0;
        foreach (ListedVariant variant in folder.Head.Best?.Along is null ? folder.Missing() : [])
        {
            missing++;
            if (!wish.Quiet && !wish.Json)
            {
                bench.Out.WriteLine($"missing: {variant.Folder}");
            }
        }

        ExitCode told = Tell(folder, wish with { Folder = wish.Merge },
            new SweepTold(new SweepCounts(0, 0), new SweepProgress(0, 0), []), bench);
        return missing > 0 ? ExitCode.Stopped : told;
    }

    /// <summary>Tells how a share went. Joining is left to the end of all of them.</summary>
    public static ExitCode TellShare(string root, SweepWish wish, SweepTold run, Shard share, string from, Workbench bench)
    {
        if (wish.Json)
        {
            JsonOut.Write(bench, new SweepDocument
            {
                Exit = (int)ExitCode.Done,
                Folder = root,
                OfThisShare = run.Counts.Mine,
                Made = run.Progress.Made,
                Kept = run.Counts.Kept,
                Diagnostics = run.Diagnostics,
            }.Written());
        }
        else if (!wish.Quiet)
        {
            string source = from.Length == 0 ? "" : $" (by {from})";
            bench.Out.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"share {share.Index}/{share.Count}{source}: {FindingsText.Counted(run.Counts.Mine, "variant")}, {run.Progress.Made} "
                    + $"made, {run.Counts.Kept} kept"));
            bench.Out.WriteLine($"when all shares are through: shellforge sweep --merge {ShellWord.OfPath(wish.Folder ?? root)}");
        }

        // A variant that can't be made is told when the shares are joined: an engine would run the task again for nothing.
        return ExitCode.Done;
    }

    /// <summary>Joins what is finished, writes the index and tells how the sweep stands.</summary>
    public static ExitCode Tell(string root, SweepWish wish, SweepTold run, Workbench bench)
    {
        using SweepFolder folder = SweepFolder.OpenJoined(root) ?? throw new IOException($"{root}: the list of variants is gone");
        return Tell(folder, wish, run, bench);
    }

    private static ExitCode Tell(SweepFolder folder, SweepWish wish, SweepTold run, Workbench bench)
    {
        string root = folder.Root;
        int plates = SweepIndex.Write(folder, wish.Plates);
        (SweepCounts counts, SweepProgress progress, ImmutableArray<Diagnostic> told) = run;
        var sum = SweepSum.Of(folder);
        ExitCode exit = sum.Failed.Count > 0 ? ExitCode.Stopped : ExitCode.Done;
        if (wish.Json)
        {
            JsonOut.Write(bench, new SweepDocument
            {
                Exit = (int)exit,
                Folder = root,
                Variants = folder.Count,
                OfThisShare = counts.Mine,
                Made = progress.Made,
                Kept = counts.Kept,
                WithAStop = sum.Stops,
                WithoutHousing = sum.Failed.Count,
                Missing = folder.Count - sum.Finished,
                Diagnostics = told,
            }.Written());
            return exit;
        }

        if (wish.Quiet)
        {
            return exit;
        }

        foreach (VariantRow row in sum.Failed.Take(MostNamed))
        {
            bench.Out.WriteLine($"{row.Folder}: can't be made");
            foreach (string fault in row.Faults)
            {
                bench.Out.WriteLine($"    {fault}");
            }
        }

        bench.Out.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{FindingsText.Counted(folder.Count, "variant")}: {progress.Made} made, {counts.Kept} kept; {sum.Print} to print, "
                + $"{sum.Minds} with warnings, {sum.Stops} with a stop, {sum.Failed.Count} not made"));
        bench.Out.WriteLine($"{Path.Combine(wish.Folder ?? root, SweepIndex.PageFile)} shows them side by side");
        if (wish.Plates)
        {
            bench.Out.WriteLine(
                $"{Path.Combine(wish.Folder ?? root, BatchPlates.Folder)}: {FindingsText.Counted(plates, "plate")} of the batch");
        }

        if (folder.Head.Best is { } best)
        {
            var choice = BestChoice.Of(best, folder.Rows());
            bench.Out.WriteLine($"best by {BestChoice.Words(best)}: {choice.Row?.Folder ?? "none can be printed"}");
            if (choice.Limit is not null)
            {
                bench.Out.WriteLine($"  what limits it: {choice.Limit}");
            }
        }

        if (folder.Head.Best?.Along is { } along)
        {
            bench.Out.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"{sum.Finished} of {folder.Count} were looked at along {along}"));
        }
        else if (folder.Count > sum.Finished)
        {
            bench.Out.WriteLine(
                string.Create(CultureInfo.InvariantCulture,
                    $"{folder.Count - sum.Finished} are still missing: run the other shares or the plan again, then `shellforge sweep "
                        + $"--merge {ShellWord.OfPath(wish.Folder ?? root)}`"));
        }

        IReadOnlyList<string> outdated = folder.Outdated();
        if (outdated.Count > 0)
        {
            bench.Out.WriteLine(
                $"{FindingsText.Counted(outdated.Count, "folder")} of an earlier plan left as they are: "
                    + $"{string.Join(", ", outdated.Take(MostNamed))}{(outdated.Count > MostNamed ? " ..." : "")}");
        }

        return exit;
    }
}

/// <summary>What a run has to tell.</summary>
internal sealed record SweepTold(SweepCounts Counts, SweepProgress Progress, ImmutableArray<Diagnostic> Diagnostics);

/// <summary>A sweep in numbers.</summary>
/// <param name="Finished">Variants whose rows are there.</param>
/// <param name="Print">To print.</param>
/// <param name="Minds">To print with warnings in mind.</param>
/// <param name="Stops">Not to print.</param>
/// <param name="Failed">Those without a housing.</param>
internal sealed record SweepSum(int Finished, int Print, int Minds, int Stops, IReadOnlyList<VariantRow> Failed)
{
    public static SweepSum Of(SweepFolder folder)
    {
        (int finished, int print, int minds, int stops) = (0, 0, 0, 0);
        var failed = new List<VariantRow>();
        foreach (VariantRow row in folder.Rows())
        {
            finished++;
            if (row.Housing is not { } housing)
            {
                failed.Add(row);
            }
            else if (housing.Stops > 0)
            {
                stops++;
            }
            else if (housing.Warnings > 0)
            {
                minds++;
            }
            else
            {
                print++;
            }
        }

        return new SweepSum(finished, print, minds, stops, failed);
    }
}
