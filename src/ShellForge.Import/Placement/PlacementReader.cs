using System.Collections.Immutable;
using ShellForge.Import.Files;

namespace ShellForge.Import.Placement;

/// <summary>
/// Reads a placement list of any layout: finds the row of column names wherever it stands, or tells the columns by what is in
/// them. Which separator is used shows in which one makes the most of the table.
/// </summary>
internal static class PlacementReader
{
    private const int HeaderSearchLines = 300;

    /// <summary>Whether a text can be read as a placement list.</summary>
    public static bool LooksLike(SourceText source) => FindLayout(source) is not null;

    public static PlacementFacts Read(SourceText source, EcadLog log, CancellationToken ct)
    {
        double? preambleUnit = PlacementPreamble.Unit(source, HeaderSearchLines, out bool? preambleSide);
        bool? side = preambleSide ?? PlacementPreamble.SideFromName(source.File);
        if (FindLayout(source) is not { } layout)
        {
            log.Error(source.File, 1, "placement-columns", "no row of column names and no table of parts",
                "columns for reference, x and y");
            return new PlacementFacts(source.File, null, "", side, 0, []);
        }

        var rows = ImmutableArray.CreateBuilder<PlacementRow>();
        double? cellUnit = null;
        int without = 0;
        for (int n = layout.HeaderLine + 1; n <= source.LineCount; n++)
        {
            if (n % 4096 == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            ReadOnlySpan<char> line = source.Line(n);
            if (line.Length > EcadLimits.LineCharacters)
            {
                log.Error(source.File, n, "ecad-line-length", $"a line of {line.Length} characters",
                    $"at most {EcadLimits.LineCharacters}");
                break;
            }

            if (!PlacementTable.IsContent(line) || PlacementPreamble.IsComment(line))
            {
                continue;
            }

            if (rows.Count >= EcadLimits.Parts)
            {
                log.Error(source.File, n, "ecad-too-many", $"more than {EcadLimits.Parts} parts");
                break;
            }

            if (PlacementRows.Read(layout, line, n, ref cellUnit) is { } row)
            {
                rows.Add(row);
            }
            else if (layout.Cells(line).Count(c => c.Length > 0) >= 3 && ++without <= 5)
            {
                log.Warn(source.File, n, "placement-row", "no reference with two coordinates in this row; it is left out");
            }
        }

        if (rows.Count == 0)
        {
            log.Error(source.File, layout.HeaderLine, "placement-empty", "no parts under the column names",
                "export the list with at least one part");
        }

        double? unit = cellUnit is not null ? 1 : layout.Columns.Unit ?? preambleUnit;
        string from = cellUnit is not null ? "the cells"
            : layout.Columns.Unit is not null ? "the column names" : preambleUnit is not null ? "the head" : "";
        return new PlacementFacts(source.File, unit, from, side, layout.HeaderLine, rows.ToImmutable());
    }

    private static PlacementLayout? FindLayout(SourceText source)
    {
        PlacementLayout? best = null;
        for (int n = 1; n <= Math.Min(source.LineCount, HeaderSearchLines); n++)
        {
            ReadOnlySpan<char> line = source.Line(n);
            if (!PlacementTable.IsContent(line))
            {
                continue;
            }

            foreach (PlacementLayout layout in PlacementLayout.Of(source, n))
            {
                if (best is null || layout.Score > best.Score)
                {
                    best = layout;
                }
            }

            if (best is not null)
            {
                return best;
            }
        }

        return PlacementLayout.WithoutHeader(source);
    }
}
