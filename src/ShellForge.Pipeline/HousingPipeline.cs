using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Checks.Sliced;
using ShellForge.Housing;
using ShellForge.Output.Plates;
using ShellForge.Output.Report;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Remembering;

namespace ShellForge.Pipeline;

/// <summary>
/// From a board to a checked housing, all in memory: plan, solids, meshes, findings, report. Whoever wants a housing calls this and need
/// not know the order of the stages. Works without console, files and clock; a call shares nothing with another but what it is given for
/// that.
/// </summary>
public static class HousingPipeline
{
    /// <summary>Runs the whole pipeline.</summary>
    /// <param name="board">The board.</param>
    /// <param name="progress">Told each stage as it begins.</param>
    /// <param name="beside">What else is done with the housing while the rules run.</param>
    /// <param name="memory">Knows what was worked out for other housings; null for a housing alone. The bytes are the same.</param>
    /// <param name="sliced">What the maker's slicer made of its parts.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> asked for it.</exception>
    public static MadeHousing Make(
        BoardFile board,
        Action<PipelineStage>? progress = null,
        Action<HousingUnderCheck>? beside = null,
        WorkMemory? memory = null,
        ImmutableArray<SlicedFile> sliced = default,
        CancellationToken cancel = default)
    {
        HousingUnderCheck housing = Draw(board, progress, memory, cancel);
        if (!sliced.IsDefaultOrEmpty)
        {
            housing = WithSliced(housing, sliced);
        }

        progress?.Invoke(PipelineStage.Checks);
        return Check(housing, beside, cancel);
    }

    /// <summary>A housing as far as a picture of it needs: planned, its parts computed, nothing checked.</summary>
    /// <param name="board">The board.</param>
    /// <param name="progress">Told each stage as it begins.</param>
    /// <param name="memory">Knows what was worked out for other housings; null for a housing alone. The bytes are the same.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> asked for it.</exception>
    public static HousingUnderCheck Draw(
        BoardFile board, Action<PipelineStage>? progress = null, WorkMemory? memory = null, CancellationToken cancel = default)
    {
        memory ??= new WorkMemory();
        progress?.Invoke(PipelineStage.Plan);
        HousingPlan plan = HousingPlanner.Plan(board, memory);
        progress?.Invoke(PipelineStage.Parts);
        return new HousingUnderCheck
        {
            Board = board,
            Plan = plan,
            Parts = PartMaker.Make(plan, memory, cancel),
            Memory = memory,
        };
    }

    // The names of plates are those of their files.
    private static HousingUnderCheck WithSliced(HousingUnderCheck housing, ImmutableArray<SlicedFile> sliced) => housing with
    {
        Sliced = SlicedJobs.Of(
            housing, sliced, HousingPlates.Of(housing).Select(plate => (Path.GetFileNameWithoutExtension(plate.File), plate.Parts))),
    };

    /// <summary>Runs the rules over a housing.</summary>
    /// <param name="housing">The housing.</param>
    /// <param name="beside">What else is done with the housing meanwhile.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> asked for it.</exception>
    public static MadeHousing Check(
        HousingUnderCheck housing, Action<HousingUnderCheck>? beside = null, CancellationToken cancel = default)
    {
        housing.Prepare(cancel);
        ImmutableArray<Finding> findings = [];
        ImmutableArray<PartReport> parts = [];
        Parallel.Invoke(
            new ParallelOptions { CancellationToken = cancel },
            () => findings = CheckRun.Run(housing, RuleList.All, cancel),
            () => parts = HousingReport.PartsOf(housing),
            () => beside?.Invoke(housing));
        return new MadeHousing(housing, HousingReport.Of(housing, findings, parts));
    }
}
