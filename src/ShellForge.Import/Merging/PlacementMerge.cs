using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Placement;

namespace ShellForge.Import.Merging;

/// <summary>
/// Brings placement lists onto the board: unit, side, mirrored bottom, origin. Every decision that needed evidence is told.
/// </summary>
internal sealed class PlacementMerge(ImportedOutline? outline, IReadOnlyList<ImportedHole> holes, PackageBook book, Point2? shift,
    EcadLog log)
{
    private readonly List<ImportedPart> _parts = [];

    public List<ImportedPart> Run(IReadOnlyList<PlacementFacts> lists)
    {
        foreach (PlacementFacts facts in lists)
        {
            double unit = PlacementUnit.Of(facts, outline, log);
            int unsided = 0;
            foreach (PlacementRow row in facts.Rows)
            {
                bool? side = row.Bottom ?? facts.SideFromName;
                unsided += side is null ? 1 : 0;
                Add(facts, row, unit, side ?? false);
            }

            if (unsided > 0)
            {
                log.Warn(facts.File, facts.HeaderLine, "placement-side", $"{unsided} rows name no side; they are taken as top");
            }
        }

        Repeated();
        if (CountUp())
        {
            MirrorBack();
            Shifted();
        }

        return _parts;
    }

    private void Add(PlacementFacts facts, PlacementRow row, double unit, bool bottom)
    {
        Point2 at = unit * row.At;
        string? skip = row.Unplaced ? "not placed" : PartRole.Skip(row.Reference, row.Package, row.Value);
        PackageMatch? match = skip is null ? book.Find(row.Reference, row.Package, row.Value) : null;
        _parts.Add(new ImportedPart
        {
            Reference = row.Reference,
            Package = row.Package,
            Value = row.Value,
            FileAt = at,
            At = at,
            FileRotation = row.RotationDegrees,
            Rotation = row.RotationDegrees,
            Bottom = bottom,
            Match = match,
            Skip = skip,
            Placed = !row.Unplaced,
            File = facts.File,
            Line = row.Line,
        });
    }

    // The same list given twice, once per side and once for both, must not double the parts.
    private void Repeated()
    {
        var seen = new Dictionary<(string, bool, Point2), string>();
        int count = 0;
        string? file = null;
        _parts.RemoveAll(p =>
        {
            if (seen.TryAdd((p.Reference, p.Bottom, p.FileAt), p.File))
            {
                return false;
            }

            count++;
            file ??= p.File;
            return true;
        });
        if (file is not null)
        {
            log.Note(file, 0, "ecad-repeated", $"{count} parts are listed twice and count once");
        }
    }

    // Y counted downward, as on a screen. Where an origin at the board's upper edge explains the list as well, nothing decides, and nothing
    // else is asked of the list: false.
    private bool CountUp()
    {
        List<Point2> front = [.. _parts.Where(p => !p.Bottom && p.Placed).Select(p => p.FileAt)];
        List<Point2> seen = front.Count >= 3 ? front : [.. _parts.Where(p => p.Placed).Select(p => p.FileAt)];
        if (shift is not null || outline is null || seen.Count < 3 || !OriginEvidence.CountsDown(seen, outline))
        {
            return true;
        }

        ImportedPart first = _parts[0];
        if (OriginEvidence.Named(seen, outline) is { } origin)
        {
            log.Error(
                first.File, first.Line, "placement-y-unclear",
                $"the parts lie beside the board; they would lie on it with y counted downward, and with origin shift "
                    + $"({Numeral.Text(origin.X)}, {Numeral.Text(origin.Y)}), mirrored",
                "export with the outline's origin and y upward, or give that shift");
            return false;
        }

        log.Warn(
            first.File, first.Line, "placement-y-down",
            $"the {_parts.Count} parts are written with y counted downward; they are turned back (file y = -board y)",
            "confirm one asymmetric part in the picture");
        for (int i = 0; i < _parts.Count; i++)
        {
            _parts[i] = _parts[i] with { At = new Point2(_parts[i].At.X, -_parts[i].At.Y) };
        }

        return true;
    }

    private void MirrorBack()
    {
        List<ImportedPart> bottom = _parts.FindAll(p => p.Bottom && p.Placed);
        if (bottom.Count == 0)
        {
            return;
        }

        string file = bottom[0].File;
        switch (MirrorEvidence.Of(bottom, _parts.FindAll(p => !p.Bottom && p.Placed), outline, holes))
        {
            case MirrorVerdict.Mirrored:
                log.Warn(
                    file, bottom[0].Line, "placement-mirrored",
                    $"the {bottom.Count} bottom parts are written with x mirrored; they are mirrored back (file x = -board x)",
                    "confirm one asymmetric part in the picture");
                for (int i = 0; i < _parts.Count; i++)
                {
                    if (_parts[i].Bottom)
                    {
                        _parts[i] = _parts[i] with { At = new Point2(-_parts[i].At.X, _parts[i].At.Y) };
                    }
                }

                break;
            case MirrorVerdict.Unclear:
                log.Warn(
                    file, bottom[0].Line, "placement-mirror-unclear",
                    $"whether the {bottom.Count} bottom parts are mirrored can't be told: both readings lie on the board; taken as seen "
                        + $"from the top",
                    "confirm one asymmetric part in the picture");
                break;
            default:
                break;
        }
    }

    private void Shifted()
    {
        if (shift is { } by)
        {
            for (int i = 0; i < _parts.Count; i++)
            {
                _parts[i] = _parts[i] with { At = _parts[i].At + by };
            }
        }

        if (outline is null || _parts.Count == 0)
        {
            return;
        }

        List<ImportedPart> placed = _parts.FindAll(p => p.Placed && p.Skip is null);
        placed = placed.Count > 0 ? placed : _parts.FindAll(p => p.Placed);
        int inside = placed.Count(p => IsOn(p.At));
        if (inside * 2 >= placed.Count)
        {
            MarkOutside();
            return;
        }

        string offer = OriginEvidence.Offer([.. placed.Select(p => p.At)], outline) is { } found
            ? $"; with origin shift ({Numeral.Text(found.X)}, {Numeral.Text(found.Y)}) they would lie on it"
            : "";
        ImportedPart first = placed[0];
        if (inside == 0
            && (placed.Count >= 3 || outline.Outer.Distance(first.At, 2 * EcadTolerances.PartOverhang) > EcadTolerances.PartOverhang))
        {
            log.Error(
                first.File, first.Line, "ecad-parts-outside", $"all {placed.Count} parts lie outside the board{offer}",
                offer.Length > 0 ? "export with the outline's origin, or give that shift"
                    : "export placement and outline of the same board with one origin");
            return;
        }

        log.Warn(first.File, first.Line, "ecad-parts-outside", $"only {inside} of {placed.Count} parts lie on the board{offer}",
            "export placement and outline with one origin");
        MarkOutside();
    }

    private void MarkOutside()
    {
        for (int i = 0; i < _parts.Count; i++)
        {
            ImportedPart p = _parts[i];
            if (!p.Placed || IsOn(p.At))
            {
                continue;
            }

            bool near = outline!.Outer.Distance(p.At, 2 * EcadTolerances.PartOverhang) <= EcadTolerances.PartOverhang;
            log.Warn(
                p.File, p.Line, "ecad-part-outside",
                $"{p.Reference} lies outside the board, at ({Numeral.Text(p.At.X)}, "
                    + $"{Numeral.Text(p.At.Y)}){(near ? "; kept: connectors may overhang" : "; left out")}");
            _parts[i] = near ? p : p with { Skip = p.Skip ?? "outside the board" };
        }
    }

    private bool IsOn(Point2 p) => outline!.Outer.Contains(p) || outline.Outer.Distance(p, 1) <= EcadTolerances.SameOutline;
}
