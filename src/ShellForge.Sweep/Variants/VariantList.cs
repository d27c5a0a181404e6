using System.Collections.Immutable;
using ShellForge.Board.Yaml.Variation;

namespace ShellForge.Sweep.Variants;

/// <summary>
/// The variants of an order, one after the other and never all at once: boards first, the last axis fastest, then the cases. The same
/// order gives the same list.
/// </summary>
public static class VariantList
{
    /// <summary>How many combinations a plan may have: each is looked at, and a name of each is kept in memory.</summary>
    public const int MostCombinations = 1_000_000;

    /// <summary>
    /// How many combinations are looked at before exclusions and repetitions; a plan may have too many even to count through.
    /// </summary>
    public static double Combinations(SweepOrder order) =>
        order.Boards.Length
            * (order.Plan.Axes.IsEmpty && !order.Plan.Cases.IsEmpty ? 0
                : order.Plan.Axes.Aggregate(1.0, (product, axis) => product * axis.Steps.Length))
        + (order.Boards.Length * (double)order.Plan.Cases.Length);

    /// <summary>All variants.</summary>
    /// <param name="order">The order; with more than <see cref="MostCombinations"/> this takes long and much memory.</param>
    /// <param name="cancel">Ends the list.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> asked for it.</exception>
    public static IEnumerable<Variant> Of(SweepOrder order, CancellationToken cancel = default)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var folders = new HashSet<string>(StringComparer.Ordinal);
        HashSet<string> pinned = [.. order.Pinned];
        int number = 0;
        foreach ((int board, string? caseName, ImmutableArray<PlanSetting> telling) in Choices(order, cancel))
        {
            // What the command line holds fixed tells no variants apart: combinations that then are one are made once.
            ImmutableArray<PlanSetting> told = [.. telling.Where(setting => !pinned.Contains(setting.Path))];
            string code = VariantNames.LongCode(order.Boards[board].FileName, caseName, told);
            if (!seen.Add(code))
            {
                continue;
            }

            string name = VariantNames.Telling(order.Boards.Length > 1 ? order.Boards[board].Stem : null, caseName, told);
            int letters = VariantNames.CodeLength;
            while (letters < code.Length && folders.Contains($"{name}_{code[..letters]}"))
            {
                letters++;
            }

            folders.Add($"{name}_{code[..letters]}");
            yield return new Variant
            {
                Number = ++number,
                BoardIndex = board,
                Case = caseName,
                Telling = told,
                Settings = [.. order.Plan.Fixed, .. telling, .. Derived(order, board, caseName, telling)],
                Code = code[..letters],
                Folder = $"{name}_{code[..letters]}",
            };
        }
    }

    private static IEnumerable<(int Board, string? Case, ImmutableArray<PlanSetting> Telling)> Choices(
        SweepOrder order, CancellationToken cancel)
    {
        SweepPlan plan = order.Plan;
        for (int board = 0; board < order.Boards.Length; board++)
        {
            // A plan of cases alone has no combination beside them.
            bool combines = !plan.Axes.IsEmpty || plan.Cases.IsEmpty;
            foreach (ImmutableArray<PlanSetting> settings in combines ? Combined(plan.Axes) : [])
            {
                cancel.ThrowIfCancellationRequested();
                if (!plan.Except.Any(entry => IsMet(entry, settings, order.Boards[board])))
                {
                    yield return (board, null, settings);
                }
            }
        }

        for (int board = 0; board < order.Boards.Length; board++)
        {
            foreach (PlanCase one in plan.Cases)
            {
                yield return (board, one.Name, one.Settings);
            }
        }
    }

    private static IEnumerable<ImmutableArray<PlanSetting>> Combined(ImmutableArray<PlanAxis> axes)
    {
        int[] at = new int[axes.Length];
        while (true)
        {
            yield return [.. axes.SelectMany((axis, i) => axis.Steps[at[i]])];
            int turn = axes.Length - 1;
            while (turn >= 0 && ++at[turn] == axes[turn].Steps.Length)
            {
                at[turn--] = 0;
            }

            if (turn < 0)
            {
                yield break;
            }
        }
    }

    private static bool IsMet(ImmutableArray<PlanSetting> entry, ImmutableArray<PlanSetting> settings, SweepBoard board) =>
        entry.All(wanted => wanted.Path == SweepPlan.BoardWord
            ? wanted.Value.Raw == board.FileName || wanted.Value.Raw == board.Stem || wanted.Value.Raw == board.Shown
            : settings.Any(setting => setting.Path == wanted.Path && setting.Value.Text == wanted.Value.Text));

    private static IEnumerable<PlanSetting> Derived(SweepOrder order, int board, string? caseName, ImmutableArray<PlanSetting> telling)
    {
        // The last that says a path holds, as it does in the board file.
        PlanSetting[] known = [.. order.Plan.Fixed.Concat(telling).Reverse().DistinctBy(setting => setting.Path)];
        return order.Plan.Derived.Select(setting => setting with
        {
            Value = PlanValue.Of(
                PlanTemplate.Filled(setting.Value.Raw, word => word switch
                {
                    SweepPlan.BoardWord => order.Boards[board].Stem,
                    SweepPlan.CaseWord => caseName,
                    _ => PlanTemplate.ValueOf(known, word),
                }).Trim(),
                setting.Value.Place),
        });
    }
}
