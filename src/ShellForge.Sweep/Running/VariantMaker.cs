using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Output.Files;
using ShellForge.Pipeline;
using ShellForge.Planning.Remembering;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Variants;

namespace ShellForge.Sweep.Running;

/// <summary>A variant as it was made, all in memory.</summary>
/// <param name="Row">Its row in the index.</param>
/// <param name="Files">Its files; none where it is only checked, or there is no housing.</param>
public sealed record MadeVariant(VariantRow Row, ImmutableArray<OutputFile> Files);

/// <summary>Makes one variant of an order. A variant that can't be made is a result like any other: it fails alone.</summary>
/// <param name="order">The order.</param>
/// <param name="memory">What variants have in common is computed once with it; null to make each alone, to the same bytes.</param>
public sealed class VariantMaker(SweepOrder order, WorkMemory? memory = null)
{
    // Longest revision that a board file may have; the mark inside is no longer either.
    private const int LongestMark = 24;

    /// <summary>Makes a variant.</summary>
    /// <param name="variant">The variant.</param>
    /// <param name="key">Its key.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> asked for it.</exception>
    public MadeVariant Make(Variant variant, string key, CancellationToken cancel)
    {
        SweepBoard board = order.Boards[variant.BoardIndex];
        VariantRow row = new()
        {
            Key = key,
            Folder = variant.Folder,
            Code = variant.Code,
            Board = board.FileName,
            Case = variant.Case,
            Values = HousingFigured.ValuesOf(variant.Telling),
            Outcome = VariantOutcome.Failed,
        };
        try
        {
            BoardReadResult read = BoardFileReader.Read(board.FileName, board.Text, board.Profiles, order.OverridesOf(variant));
            return read.File is null
                ? new MadeVariant(
                    row with
                    {
                        Outcome = VariantOutcome.Refused,
                        Faults = [.. read.Diagnostics.Where(d => d.IsError).Select(d => d.ToString())]
                    }, [])
                : Housed(row, Named(read.File, variant), board, cancel);
        }
        catch (Exception e) when (e is not (OperationCanceledException or IOException or UnauthorizedAccessException
            or OutOfMemoryException))
        {
            // The one place below the command that catches everything: a defect in one variant must not take the others with it. It is told
            // in the index.
            return new MadeVariant(
                row with { Faults = [$"a defect of the program: {e.GetType().Name}: {e.Message.ReplaceLineEndings(" ")}"] }, []);
        }
    }

    private MadeVariant Housed(VariantRow row, BoardFile file, SweepBoard board, CancellationToken cancel)
    {
        DrawnFiles? drawn = null;
        MadeHousing made = HousingPipeline.Make(
            file, beside: order.FindingsOnly ? null : housing => drawn = DrawnFiles.Of(housing, order.Formats), memory: memory,
            cancel: cancel);
        row = row with { Outcome = VariantOutcome.Made, Housing = HousingFigured.Of(made, order.Plan.Prices) };
        if (drawn is null)
        {
            return new MadeVariant(row, []);
        }

        cancel.ThrowIfCancellationRequested();
        return new MadeVariant(row,
        [
            .. MadeFiles.Of(made, drawn, board.Text),
            new OutputFile(Folder.SweepPaths.Record, RowJson.Line(row)),
        ]);
    }

    // The plan's lines move when it grows; what is made must not change with them, so only its name is told.
    private BoardFile Named(BoardFile file, Variant variant)
    {
        string plan = Path.GetFileName(order.Plan.File);
        file = file.NamingFilesBare();
        string mark = $"{file.Revision} {variant.Code}".Trim();
        return file with
        {
            Variant = variant.Code,
            Revision = order.Plan.Mark == VariantMark.Inside ? mark[..Math.Min(mark.Length, LongestMark)] : file.Revision,
            Remarks = [.. file.Remarks.Select(remark => remark.File == plan ? remark with { Line = 0, Column = 0 } : remark)],
            Places = file.Places.ToImmutableDictionary(place => place.Key,
                place => place.Value.File == plan ? place.Value with { Line = 0, Column = 0 } : place.Value),
        };
    }
}
