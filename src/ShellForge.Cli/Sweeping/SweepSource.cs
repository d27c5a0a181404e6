using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Cli.Reading;
using ShellForge.Output.Files;
using ShellForge.Sweep.Variants;

namespace ShellForge.Cli.Sweeping;

/// <summary>A plan as it was read, with its boards, and everything there is to say about them.</summary>
/// <param name="Order">What is to be made; null when there was an error.</param>
/// <param name="Diagnostics">What there is to say, of profiles, plan and boards.</param>
internal sealed record SweepSource(SweepOrder? Order, ImmutableArray<Diagnostic> Diagnostics)
{
    // An axis of more values is looked at up to here and at its end; a variant that can't be read later fails alone.
    private const int MostLookedAt = 1000;

    private const double LargestCounted = 1e12;

    /// <summary>Reads a plan, its boards and their profiles.</summary>
    /// <exception cref="IOException">A file can't be read.</exception>
    public static SweepSource Read(string name, IReadOnlyList<string> overrides, ImmutableArray<OutputFormat> formats, bool findingsOnly,
        Workbench bench)
    {
        string path = bench.FullPath(name);
        string folder = Path.GetDirectoryName(path)!;
        string text = TextFile.Read(path, name);
        (ProfileLoadResult profiles, _) = UserProfiles.LoadWithTexts(folder, bench);
        SweepPlanResult read = SweepPlanReader.Read(name, text, profiles.Library);
        var told = new List<Diagnostic>([.. profiles.Diagnostics, .. read.Diagnostics]);
        if (read.Plan is null || told.Any(d => d.IsError))
        {
            return new SweepSource(null, [.. told]);
        }

        ImmutableArray<SweepBoard> boards = Boards(read.Plan, folder, bench, told);
        var order = new SweepOrder
        {
            Plan = read.Plan,
            Boards = boards,
            Overrides = [.. overrides],
            Formats = formats,
            FindingsOnly = findingsOnly,
            Version = Assembly.GetExecutingAssembly().GetName().Version?.ToString(3) ?? "unknown",
        };
        if (!told.Any(d => d.IsError) && VariantList.Combinations(order) is var count and > VariantList.MostCombinations)
        {
            told.Add(new Diagnostic(name, 0, 0, "too-many-variants", DiagnosticSeverity.Error,
                string.Create(CultureInfo.InvariantCulture,
                    $"the plan has {Counted(count)} combinations, and a sweep takes up to {VariantList.MostCombinations:N0}"),
                "expected fewer values, or several plans with a part of them each"));
        }

        if (!told.Any(d => d.IsError))
        {
            told.AddRange(Words(order, bench.Cancel).Distinct());
        }

        return new SweepSource(told.Any(d => d.IsError) ? null : order, [.. told]);
    }

    // Nobody counts the digits of a larger one.
    private static string Counted(double count) => count < LargestCounted
        ? count.ToString("N0", CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"about {count:0E+0}");

    private static ImmutableArray<SweepBoard> Boards(SweepPlan plan, string folder, Workbench bench, List<Diagnostic> told)
    {
        var boards = ImmutableArray.CreateBuilder<SweepBoard>();
        foreach (PlanValue said in plan.Boards)
        {
            string[] paths = said.Raw.Contains('*', StringComparison.Ordinal) ? Matching(folder, said.Raw)
                : [Path.GetFullPath(said.Raw, folder)];
            if (paths.Length == 0 || !paths.All(File.Exists))
            {
                told.Add(new Diagnostic(
                    said.Place.File, said.Place.Line, said.Place.Column, "no-such-file", DiagnosticSeverity.Error,
                    $"there is no board file '{said.Raw}'",
                    "expected a name from the folder of the plan"));
                continue;
            }

            foreach (string path in paths)
            {
                string shown = Path.GetRelativePath(bench.Folder, path);
                (ProfileLoadResult profiles,
                    IReadOnlyList<(string, string)> texts) = UserProfiles.LoadWithTexts(Path.GetDirectoryName(path), bench);
                told.AddRange(profiles.Diagnostics.Where(d => !told.Contains(d)));
                var board = new SweepBoard(shown, Path.GetFileName(path), TextFile.Read(path, shown), profiles.Library, texts);
                if (boards.Any(other => other.FileName == board.FileName))
                {
                    told.Add(new Diagnostic(
                        said.Place.File, said.Place.Line, said.Place.Column, "same-name", DiagnosticSeverity.Error,
                        $"two board files are called '{board.FileName}'",
                        "expected different names, since they tell the variants apart"));
                }

                boards.Add(board);
            }
        }

        return boards.ToImmutable();
    }

    private static string[] Matching(string folder, string pattern)
    {
        string full = Path.GetFullPath(pattern, folder);
        string within = Path.GetDirectoryName(full)!;
        return Directory.Exists(within) ? [.. Directory.EnumerateFiles(within, Path.GetFileName(full)).Order(StringComparer.Ordinal)] : [];
    }

    // A value that no board takes is a mistake of the plan, told before anything is made: each is tried alone, since what shows only when
    // values meet is the variant's own affair.
    private static IEnumerable<Diagnostic> Words(SweepOrder order, CancellationToken cancel)
    {
        SetOverride[] command = [.. order.Overrides.Select(SetOverride.Parse)];
        foreach (SweepBoard board in order.Boards)
        {
            IEnumerable<ImmutableArray<PlanSetting>> tries =
            [
                .. order.Plan.Axes.SelectMany(axis => axis.Steps.Where((_, i) => i < MostLookedAt || i == axis.Steps.Length - 1)),
                .. order.Plan.Cases.Select(one => one.Settings),
            ];
            Variant? first = VariantList.Of(order, cancel).FirstOrDefault(variant => order.Boards[variant.BoardIndex] == board);
            foreach (Diagnostic d in first is null ? []
                : BoardFileReader.Words(board.Shown, board.Text, board.Profiles, order.OverridesOf(first)))
            {
                yield return d;
            }

            foreach (ImmutableArray<PlanSetting> settings in tries)
            {
                cancel.ThrowIfCancellationRequested();
                foreach (Diagnostic d in BoardFileReader.Words(
                    board.Shown, board.Text, board.Profiles, [.. order.Plan.Fixed.Concat(settings).Select(s => s.Override), .. command]))
                {
                    if (d.IsError && d.File == order.Plan.File)
                    {
                        yield return d;
                    }
                }
            }
        }
    }
}
