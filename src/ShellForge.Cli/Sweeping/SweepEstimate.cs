using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using ShellForge.Board.Diagnostics;
using ShellForge.Cli.Printing;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;

namespace ShellForge.Cli.Sweeping;

/// <summary>Says before a sweep how many variants, how long and how much disk, from one that is made in memory.</summary>
internal static class SweepEstimate
{
    private const double BytesPerMegabyte = 1e6;

    public static ExitCode Tell(
        SweepOrder order, VariantMaker maker, string root, SweepWish wish, ImmutableArray<Diagnostic> told, Workbench bench)
    {
        int all = 0;
        int mine = 0;
        int open = 0;
        Variant? first = null;
        using SweepFolder? folder = SweepFolder.OpenFound(root);
        Func<Variant, string> keys = order.Keys();
        foreach (Variant variant in VariantList.Of(order, bench.Cancel))
        {
            all++;
            if (wish.Shard?.Has(variant) == false)
            {
                continue;
            }

            mine++;
            if (folder?.IsFinished(new ListedVariant(variant.Number, variant.Folder, keys(variant)), !order.FindingsOnly) != true)
            {
                open++;
                first ??= variant;
            }
        }

        (double seconds, double bytes) = first is null ? (0, 0) : Tried(maker, first, keys(first), bench);

        // One variant alone has all cores to itself; side by side they share them, so the time of one counts whole for each.
        double total = seconds * open;
        if (wish.Json)
        {
            JsonOut.Write(bench, new SweepDocument
            {
                Exit = (int)ExitCode.Done,
                Variants = all,
                OfThisShare = mine,
                Made = open,
                Kept = mine - open,
                Seconds = Math.Round(total, 1),
                Bytes = Math.Round(bytes * open),
                Diagnostics = told,
            }.Written());
            return ExitCode.Done;
        }

        bench.Out.WriteLine(
            string.Create(CultureInfo.InvariantCulture,
                $"{FindingsText.Counted(all, "variant")}, {mine} of them in this share, {open} to make"));
        if (first is not null)
        {
            bench.Out.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"one took {seconds:0.0} s and {bytes / BytesPerMegabyte:0.0} MB: about {SweepProgress.Duration(total)} and "
                    + $"{bytes * open / BytesPerMegabyte:0} MB in all on this machine"));
        }

        return ExitCode.Done;
    }

    private static (double Seconds, double Bytes) Tried(VariantMaker maker, Variant variant, string key, Workbench bench)
    {
        // The first one also warms the program up; the second is what the others will take.
        maker.Make(variant, key, bench.Cancel);
        long started = Stopwatch.GetTimestamp();
        MadeVariant made = maker.Make(variant, key, bench.Cancel);
        return (Stopwatch.GetElapsedTime(started).TotalSeconds,
            made.Files.Sum(file => (double)file.Content.Length) + made.Row.ToString().Length);
    }
}
