using System.Collections.Concurrent;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Seeking;
using ShellForge.Sweep.Variants;

namespace ShellForge.Sweep.Running;

/// <summary>What a run has to do and what it did.</summary>
/// <param name="Mine">Variants of the share.</param>
/// <param name="Kept">Finished before.</param>
public sealed record SweepCounts(int Mine, int Kept);

/// <summary>Makes what is missing of a sweep, several variants at a time, and keeps what is there.</summary>
public static class SweepRun
{
    /// <summary>Counts what there is to do.</summary>
    /// <exception cref="FolderTakenException">A variant's folder is taken by what no sweep wrote.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> asked for it.</exception>
    public static SweepCounts Count(SweepOrder order, SweepFolder folder, Shard shard, CancellationToken cancel = default)
    {
        int mine = 0;
        int kept = 0;
        var taken = new List<string>();
        foreach ((Variant variant, string key) in Mine(order, shard, cancel))
        {
            mine++;
            if (Finished(order, folder, variant, key) is not null)
            {
                kept++;
            }
            else if (!order.FindingsOnly && folder.IsTaken(variant))
            {
                taken.Add(variant.Folder);
            }
        }

        // Told before anything is made, and all at once.
        if (taken.Count > 0)
        {
            throw new FolderTakenException(taken);
        }

        return new SweepCounts(mine, kept);
    }

    /// <summary>Makes what is missing.</summary>
    /// <param name="order">The order.</param>
    /// <param name="folder">Where to.</param>
    /// <param name="part">Which share of it, and how many variants at a time.</param>
    /// <param name="make">Makes one variant of its key.</param>
    /// <param name="told">Told every finished variant, by several threads at once.</param>
    /// <param name="cancel">Stops the run; what is finished stays finished.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> asked for it.</exception>
    /// <exception cref="IOException">The folder can't be written to, or belongs to another plan by now.</exception>
    public static void Run(
        SweepOrder order, SweepFolder folder, SweepPart part, Func<Variant, string, CancellationToken, MadeVariant> make,
        Action<VariantRow> told, CancellationToken cancel)
    {
        using SweepWriter writer = folder.TakeWriter();
        if (order.Plan.Best is { Along: not null } wish)
        {
            Seek(order, folder, writer, wish, new Making(part, make, told, cancel));
            return;
        }

        var open = Mine(order, part.Shard, cancel).Where(each => Finished(order, folder, each.Variant, each.Key) is null);
        try
        {
            Parallel.ForEach(
                Partitioner.Create(open, EnumerablePartitionerOptions.NoBuffering),
                new ParallelOptions { MaxDegreeOfParallelism = part.Jobs, CancellationToken = cancel },
                each => told(One(each.Variant, each.Key, folder, writer, make, cancel)));
        }
        catch (AggregateException several) when (several.InnerExceptions.FirstOrDefault(
            e => e is IOException or UnauthorizedAccessException or OperationCanceledException) is { } first)
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(first);
        }
    }

    // Every combination of the other axes has a range of its own to search; what is not looked at is not made.
    private static void Seek(SweepOrder order, SweepFolder folder, SweepWriter writer, BestWish wish, Making making)
    {
        var ranges = Mine(order, Shard.Whole, making.Cancel)
            .GroupBy(
                each => string.Join('\n',
                    [each.Variant.BoardIndex.ToString(System.Globalization.CultureInfo.InvariantCulture), each.Variant.Case ?? "",
                        .. each.Variant.Telling.Where(s => s.Path != wish.Along).Select(s => $"{s.Path}={s.Value.Text}")]))
            .Select(range => range.ToArray()).ToArray();
        Parallel.ForEach(
            Partitioner.Create(ranges, loadBalance: true),
            new ParallelOptions { MaxDegreeOfParallelism = making.Part.Jobs, CancellationToken = making.Cancel },
            range => LineSearch.Best(range.Length, wish.Shape, i =>
            {
                (Variant variant, string key) = range[i];
                VariantRow? row = Finished(order, folder, variant, key);
                if (row is null)
                {
                    row = One(variant, key, folder, writer, making.Make, making.Cancel);
                    making.Told(row);
                }

                return row.Housing is { Stops: 0 } housing ? BestChoice.Score(wish, housing) : null;
            }));
    }

    private sealed record Making(
        SweepPart Part, Func<Variant, string, CancellationToken, MadeVariant> Make, Action<VariantRow> Told, CancellationToken Cancel);

    private static VariantRow One(
        Variant variant, string key, SweepFolder folder, SweepWriter writer, Func<Variant, string, CancellationToken, MadeVariant> make,
        CancellationToken cancel)
    {
        if (folder.FinishedMeanwhile(variant.Folder, key) is { } there)
        {
            writer.Note(there);
            return there;
        }

        MadeVariant made = make(variant, key, cancel);
        writer.Finish(made.Row, made.Files);
        return made.Row;
    }

    private static IEnumerable<(Variant Variant, string Key)> Mine(SweepOrder order, Shard shard, CancellationToken cancel)
    {
        Func<Variant, string> keys = order.Keys();
        return VariantList.Of(order, cancel).Where(shard.Has).Select(variant => (variant, keys(variant)));
    }

    private static VariantRow? Finished(SweepOrder order, SweepFolder folder, Variant variant, string key) =>
        folder.Finished(new ListedVariant(variant.Number, variant.Folder, key), !order.FindingsOnly);
}

/// <summary>What part of a sweep a run takes on.</summary>
/// <param name="Shard">Which share.</param>
/// <param name="Jobs">Variants at a time, at least 1.</param>
public sealed record SweepPart(Shard Shard, int Jobs);
