using ShellForge.Board.Diagnostics;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Merging;

/// <summary>Chooses among several drawings of the edge, and says where they differ.</summary>
internal static class OutlineMerge
{
    /// <summary>The chosen edge with its candidate; null without a usable one. All errors are in the log then.</summary>
    public static (OutlineCandidate Candidate, SelectedProfile Profile)? Choose(
        IReadOnlyList<OutlineCandidate> candidates, IReadOnlyList<Point2> evidence, EcadLog log)
    {
        List<OutlineCandidate> ordered = [.. candidates.OrderByDescending(c => c.Score).ThenBy(c => c.File, StringComparer.Ordinal)];

        // A layer that nothing marks as the edge is none while another one is marked.
        if (ordered.Count > 0 && ordered[0].Score >= 30)
        {
            ordered.RemoveAll(c => c.Score < 10);
        }

        (OutlineCandidate Candidate, SelectedProfile Profile)? chosen = null;
        EcadLog? firstFailure = null;
        foreach (OutlineCandidate candidate in ordered)
        {
            var own = new EcadLog();
            SelectedProfile? profile = ProfileSelection.Select(candidate.Chained, candidate.File, evidence, own);
            if (chosen is null)
            {
                if (profile is null || own.HasErrors)
                {
                    firstFailure ??= own;

                    // What is marked as the edge and can't be used stops the import: a weaker drawing must not step in unasked.
                    if (candidate.Score >= 50)
                    {
                        break;
                    }

                    continue;
                }

                Copy(own, log);
                Ignored(candidate, profile, log);
                chosen = (candidate, profile);
            }
            else if (profile is not null)
            {
                Compare(chosen.Value, candidate, profile, log);
            }
        }

        if (chosen is null && firstFailure is not null)
        {
            Copy(firstFailure, log);
        }

        return chosen;
    }

    private static void Copy(EcadLog from, EcadLog to)
    {
        foreach (Diagnostic d in from.Entries)
        {
            to.Add(d);
        }
    }

    private static void Ignored(OutlineCandidate candidate, SelectedProfile profile, EcadLog log)
    {
        foreach (string decoy in profile.Decoys.Take(12))
        {
            log.Note(candidate.File, profile.Outer.Line, "ecad-ignored", $"left out: {decoy}");
        }

        if (candidate.Chained.Repeated > 0)
        {
            log.Note(candidate.File, profile.Outer.Line, "ecad-repeated",
                $"{candidate.Chained.Repeated} strokes are drawn twice and used once");
        }

        double gap = Math.Max(profile.Outer.LargestGap, profile.Cutouts.Select(c => c.LargestGap).DefaultIfEmpty(0).Max());
        if (gap > EcadTolerances.SamePoint)
        {
            log.Warn(
                candidate.File, profile.Outer.Line, "ecad-gap",
                $"ends up to {Numeral.Text(gap, 4)} mm apart were joined (joined up to {Numeral.Text(EcadTolerances.Joint)} mm)");
        }

        Box2 box = profile.Outer.Bounds;
        double size = Math.Max(box.Size.X, box.Size.Y);
        if (size is < EcadTolerances.SmallestBoard or > EcadTolerances.LargestBoard)
        {
            log.Warn(
                candidate.File, profile.Outer.Line, "ecad-size", $"a board of {ProfileSelection.Size(profile.Outer)} is hardly meant",
                "check the unit of the export");
        }
    }

    private static void Compare(
        (OutlineCandidate Candidate, SelectedProfile Profile) chosen, OutlineCandidate other, SelectedProfile profile, EcadLog log)
    {
        OutlineLoop a = chosen.Profile.Outer;
        OutlineLoop b = profile.Outer;
        bool sameSize = Math.Abs(a.Bounds.Size.X - b.Bounds.Size.X) <= EcadTolerances.SameOutline
            && Math.Abs(a.Bounds.Size.Y - b.Bounds.Size.Y) <= EcadTolerances.SameOutline
            && Math.Abs(a.Area - b.Area) <= EcadTolerances.SameOutline * (a.Bounds.Size.X + a.Bounds.Size.Y);
        Point2 shift = a.Bounds.Centre - b.Bounds.Centre;
        if (sameSize)
        {
            string moved = shift.Length <= EcadTolerances.SameOutline
                ? "at the same place"
                : $"moved by ({Numeral.Text(-shift.X)}, {Numeral.Text(-shift.Y)}) mm";
            log.Note(other.File, b.Line, "ecad-same-outline", $"the same outline as in {chosen.Candidate.File}, {moved}; not used twice");
        }
        else if (other.Score >= chosen.Candidate.Score - 30)
        {
            log.Warn(
                other.File, b.Line, "ecad-outline-differs",
                $"another outline, {ProfileSelection.Size(b)}, beside the {ProfileSelection.Size(a)} of {chosen.Candidate.File}, which is "
                    + $"used ({chosen.Candidate.From})",
                "import only the files of one board");
        }
        else
        {
            log.Note(other.File, b.Line, "ecad-ignored",
                $"not used for the outline: {ProfileSelection.Size(b)}, and nothing marks it as the board edge");
        }
    }
}
