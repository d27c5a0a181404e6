using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drill;
using ShellForge.Import.Dxf;
using ShellForge.Import.Files;
using ShellForge.Import.Gerber;
using ShellForge.Import.Idf;

namespace ShellForge.Import.Merging;

/// <summary>One import, stage by stage: read, choose the edge, read the drills against it, place the parts, find the patterns.</summary>
internal sealed class ImportWork(ImportOptions options, EcadLog log, CancellationToken ct)
{
    // Enough to tell a frame from a board.
    private const int EvidencePoints = 500;

    public ImportedBoard Run(IReadOnlyList<EcadFile> files)
    {
        ReadFiles read = ReadFiles.Of(files, options, log, ct);
        List<OutlineCandidate> candidates = Candidates(read);
        ct.ThrowIfCancellationRequested();
        (OutlineCandidate Candidate, SelectedProfile Profile)? chosen = OutlineMerge.Choose(candidates, Evidence(read), log);
        ImportedOutline? outline = null;
        if (chosen is { } c)
        {
            outline = new ImportedOutline(
                c.Candidate.File, c.Candidate.From, c.Profile.Outer, [.. c.Profile.Cutouts.Select(l => new ImportedCutout(l, false))],
                Math.Max(c.Profile.Outer.LargestGap, c.Profile.Cutouts.Select(l => l.LargestGap).DefaultIfEmpty(0).Max()),
                c.Candidate.Unit);
        }
        else if (!log.HasErrors)
        {
            NoOutline(read);
        }

        List<DrillFacts> drills =
            [.. read.Drills.Select(p => DrillResolution.Resolve(p, outline?.Outer, chosen?.Profile.Cutouts ?? [], log))];
        ct.ThrowIfCancellationRequested();
        var merge = new HoleMerge(outline, log);
        read.Boards.ForEach(merge.Add);
        drills.ForEach(merge.Add);
        read.DrillLayers.ForEach(merge.Add);
        (ImmutableArray<ImportedHole> holes, ImmutableArray<ImportedSlot> slots) = merge.Finish();
        outline = outline is null ? null : WithDrilled(outline, holes);
        ImmutableArray<ImportedPart> parts = [.. Parts(read, outline, holes)];
        (double? thickness, string from) = Thickness(read, outline);
        return new ImportedBoard
        {
            Files = [.. FileTable.Of(read, drills, candidates, chosen?.Candidate)],
            Outline = outline,
            Holes = holes,
            Slots = slots,
            Parts = parts,
            Thickness = thickness,
            ThicknessFrom = from,
            LedPatterns = LedPatterns.Of(parts, outline),
        };
    }

    private List<OutlineCandidate> Candidates(ReadFiles read)
    {
        var candidates = new List<OutlineCandidate>();
        candidates.AddRange(read.Boards.Select(OutlineCandidate.Of));
        candidates.AddRange(read.Gerbers.Select(OutlineCandidate.Of).OfType<OutlineCandidate>());
        foreach (DxfFacts dxf in read.Drawings)
        {
            (double unit, string words) = DxfUnit.Of(dxf, options, log);
            candidates.Add(OutlineCandidate.Of(dxf, unit, words, log));
        }

        foreach (GerberFacts g in read.Gerbers.Where(g => g.StepAndRepeat && candidates.Exists(c => c.File == g.File && c.Score >= 30)))
        {
            log.Error(g.File, 1, "ecad-panel", "the drawing is stepped and repeated: this is a panel of several boards",
                "export the outline of the single board");
        }

        foreach (GerberFacts g in read.Gerbers.Where(
            g => g.StrokeCount > EcadLimits.Strokes && candidates.Exists(c => c.File == g.File && c.Score >= 30)))
        {
            log.Error(g.File, 1, "ecad-too-many", $"{g.StrokeCount} strokes: more than a board edge has ({EcadLimits.Strokes})",
                "export the board edge alone");
        }

        return candidates;
    }

    private void NoOutline(ReadFiles read)
    {
        if (read.HasNothing)
        {
            return;
        }

        string file = read.FirstUseful;
        log.Warn(
            file, 0, "ecad-no-outline", "none of the files draws the board edge",
            "add the outline: an IDF board, a Gerber profile or a DXF drawing");
    }

    // Points well inside the board, read in the way the files state: enough to tell a frame, not yet to place holes.
    private static List<Point2> Evidence(ReadFiles read)
    {
        var points = new List<Point2>();
        foreach (DrillProgram p in read.Drills.Where(p => p.AllPoints && p.Stated.Unit is not null && points.Count < EvidencePoints))
        {
            DrillProgram part = p.Steps.Length <= EvidencePoints ? p : p with { Steps = p.Steps[..EvidencePoints] };
            points.AddRange(DrillRun.Run(part, new DrillReading(p.Stated.Unit!.Value, 3, 3, false), null).Holes.Select(h => h.At));
        }

        return points;
    }

    private static ImportedOutline WithDrilled(ImportedOutline outline, ImmutableArray<ImportedHole> holes)
    {
        List<ImportedHole> larger = [.. holes.Where(h => h.Kind is not HoleKind.Via).Take(5000)];
        bool IsDrilled(Drawing.OutlineLoop loop) => loop.Circle is { } c && larger.Exists(h =>
            Point2.Distance(h.At, c.Centre) <= EcadTolerances.SameOpening
                && Math.Abs(h.Diameter - c.Diameter) <= 2 * EcadTolerances.SameOpening);
        return outline with { Cutouts = [.. outline.Cutouts.Take(2000).Select(c => c with { AlsoDrilled = IsDrilled(c.Loop) })] };
    }

    private List<ImportedPart> Parts(ReadFiles read, ImportedOutline? outline, ImmutableArray<ImportedHole> holes)
    {
        PackageBook book = PackageShelf.Book(options.Profiles ?? ProfileLibrary.Load([]).Library);
        var heights = new HeightMerge(read.Libraries, log);
        var parts = new List<ImportedPart>();
        foreach (IdfBoardFacts board in read.Boards)
        {
            foreach (IdfPlacement p in board.Placements)
            {
                parts.Add(IdfParts.Part(p, board.File, book, heights));
            }
        }

        if (parts.Count > 0)
        {
            if (heights.HasLibrary)
            {
                IdfParts.Missing(parts, heights, read.Boards, log);
            }

            heights.Say(parts);
            IdfParts.Outside(parts, outline, log);
        }

        if (read.Placements.Count > 0 && parts.Count > 0)
        {
            log.Note(read.Placements[0].File, 0, "ecad-ignored", "the IDF board places the parts already; the placement list is not used");
        }
        else
        {
            parts.AddRange(new PlacementMerge(outline, holes, book, options.PartsShift, log).Run(read.Placements)
                .Select(p => p.Match?.Height is { } h ? p with { Height = h, HeightFrom = HeightSource.Package } : p));
        }

        return parts;
    }

    private (double? Thickness, string From) Thickness(ReadFiles read, ImportedOutline? outline)
    {
        foreach (IdfBoardFacts board in read.Boards.Where(b => b.Thickness is not null))
        {
            return (board.Thickness, board.File);
        }

        foreach (JobFacts job in read.Jobs.Where(j => j.Thickness is not null))
        {
            // The job file's size has the pen's width added by some exporters: half a millimetre says the files differ.
            if (outline is not null && job is { SizeX: { } x, SizeY: { } y }
                && (Math.Abs(x - outline.Outer.Bounds.Size.X) > 1 || Math.Abs(y - outline.Outer.Bounds.Size.Y) > 1))
            {
                log.Warn(job.File, 1, "job-size",
                    $"the job file says {Numeral.Text(x)} x {Numeral.Text(y)} mm, the outline is {ProfileSelection.Size(outline.Outer)}");
            }

            return (job.Thickness, job.File);
        }

        return (null, "");
    }
}
