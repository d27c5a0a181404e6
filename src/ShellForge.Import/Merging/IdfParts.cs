using ShellForge.Import.Files;
using ShellForge.Import.Idf;

namespace ShellForge.Import.Merging;

/// <summary>Placements of an IDF board as parts. Coordinates are in the one board system, bottom parts too.</summary>
internal static class IdfParts
{
    public static ImportedPart Part(IdfPlacement p, string file, PackageBook book, HeightMerge heights)
    {
        string? skip = p.IsPlaced ? PartRole.Skip(p.Reference, p.Package, p.PartNumber) : "not placed";
        var part = new ImportedPart
        {
            Reference = p.Reference,
            Package = p.Package,
            Value = p.PartNumber,
            FileAt = p.At,
            At = p.At,
            FileRotation = p.RotationDegrees,

            // From below the turn is counter-clockwise: from the top it runs the other way.
            Rotation = p.Bottom ? -p.RotationDegrees : p.RotationDegrees,
            Bottom = p.Bottom,
            Match = skip is null ? book.Find(p.Reference, p.Package, p.PartNumber) : null,
            Skip = skip,
            Placed = p.IsPlaced,
            File = file,
            Line = p.Line,
        };
        return heights.Apply(part, p);
    }

    public static void Missing(List<ImportedPart> parts, HeightMerge heights, List<IdfBoardFacts> boards, EcadLog log)
    {
        List<ImportedPart> missing = parts.FindAll(p => p.Placed && p.Skip is null && heights.Find(p.Package, p.Value) is null);
        foreach (IGrouping<string, ImportedPart> group in missing.GroupBy(p => p.Package, StringComparer.OrdinalIgnoreCase).Take(20))
        {
            ImportedPart first = group.First();
            log.Warn(
                first.File, first.Line, "idf-library-missing",
                $"'{group.Key}' is not in the library; the height of "
                    + $"{string.Join(", ", group.Take(4).Select(p => p.Reference))}{(group.Count() > 4 ? ", ..." : "")} is unknown");
        }
    }

    public static void Outside(List<ImportedPart> parts, ImportedOutline? outline, EcadLog log)
    {
        if (outline is null)
        {
            return;
        }

        List<ImportedPart> placed = parts.FindAll(p => p.Placed);
        List<ImportedPart> off =
            placed.FindAll(p => !outline.Outer.Contains(p.At) && outline.Outer.Distance(p.At, 1) > EcadTolerances.SameOutline);
        if (placed.Count >= 3 && off.Count == placed.Count)
        {
            log.Error(off[0].File, off[0].Line, "ecad-parts-outside", $"all {off.Count} parts lie outside the board",
                "export outline and placement of the same board");
            return;
        }

        foreach (ImportedPart p in off.Take(12))
        {
            bool near = outline.Outer.Distance(p.At, 2 * EcadTolerances.PartOverhang) <= EcadTolerances.PartOverhang;
            log.Warn(
                p.File, p.Line, "ecad-part-outside",
                $"{p.Reference} lies outside the board, at ({Numeral.Text(p.At.X)}, "
                    + $"{Numeral.Text(p.At.Y)}){(near ? "; kept: connectors may overhang" : "; left out")}");
            if (!near)
            {
                int at = parts.IndexOf(p);
                parts[at] = p with { Skip = p.Skip ?? "outside the board" };
            }
        }
    }
}
