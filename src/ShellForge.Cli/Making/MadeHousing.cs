using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans;
using ShellForge.Housing;
using ShellForge.Output.Report;
using ShellForge.Planning;
using ShellForge.Planning.Plan;

namespace ShellForge.Cli.Making;

/// <summary>Steps of the pipeline, told as they begin.</summary>
internal enum MakingStep
{
    /// <summary>Deciding every dimension.</summary>
    Plan,

    /// <summary>Computing the solids.</summary>
    Parts,

    /// <summary>Running the rules.</summary>
    Checks,
}

/// <summary>A housing from the board to the report, all in memory.</summary>
internal sealed record MadeHousing
{
    /// <summary>What was made.</summary>
    public required HousingUnderCheck Housing { get; init; }

    /// <summary>What is told about it.</summary>
    public required HousingReport Report { get; init; }

    /// <summary>Runs the pipeline.</summary>
    /// <param name="board">The board.</param>
    /// <param name="cancel">Stops it.</param>
    /// <param name="progress">Told each step as it begins.</param>
    /// <param name="beside">What else is done with the housing while the rules run.</param>
    public static MadeHousing Of(
        BoardFile board, CancellationToken cancel, Action<MakingStep>? progress = null, Action<HousingUnderCheck>? beside = null)
    {
        HousingUnderCheck housing = Drawn(board, cancel, progress);
        progress?.Invoke(MakingStep.Checks);
        return Checked(housing, cancel, beside);
    }

    /// <summary>A housing as far as a picture of it needs: planned, its parts computed, nothing checked.</summary>
    public static HousingUnderCheck Drawn(BoardFile board, CancellationToken cancel, Action<MakingStep>? progress = null)
    {
        progress?.Invoke(MakingStep.Plan);
        HousingPlan plan = HousingPlanner.Plan(board);
        ImmutableArray<HousingPart> parts = HousingBuilder.Build(plan);
        progress?.Invoke(MakingStep.Parts);
        return new HousingUnderCheck { Board = board, Plan = plan, Parts = Evaluated(parts, cancel) };
    }

    /// <summary>Runs the rules over a housing.</summary>
    /// <param name="housing">The housing.</param>
    /// <param name="cancel">Stops it.</param>
    /// <param name="beside">What else is done with the housing meanwhile.</param>
    public static MadeHousing Checked(HousingUnderCheck housing, CancellationToken cancel, Action<HousingUnderCheck>? beside = null)
    {
        housing.Prepare(cancel);
        ImmutableArray<Finding> findings = [];
        ImmutableArray<PartReport> parts = [];
        Parallel.Invoke(
            new ParallelOptions { CancellationToken = cancel },
            () => findings = CheckRun.Run(housing, RuleList.All, cancel),
            () => parts = HousingReport.PartsOf(housing),
            () => beside?.Invoke(housing));
        return new MadeHousing { Housing = housing, Report = HousingReport.Of(housing, findings, parts) };
    }

    // The evaluations share nothing, so they run side by side; the results stand in the order of the parts.
    private static ImmutableArray<CheckedPart> Evaluated(ImmutableArray<HousingPart> parts, CancellationToken cancel)
    {
        var checkedParts = new CheckedPart[parts.Length];
        Parallel.For(0, parts.Length, new ParallelOptions { CancellationToken = cancel }, i =>
            checkedParts[i] = new CheckedPart { Plan = parts[i].Plan, InPrint = SolidEvaluator.Evaluate(parts[i].InPrint, cancel) });
        return [.. checkedParts];
    }
}
