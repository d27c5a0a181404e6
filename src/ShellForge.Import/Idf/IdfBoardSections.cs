using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Idf;

/// <summary>Takes the sections of a board file one by one. Only .BOARD_OUTLINE is the board: other outlines reuse its labels.</summary>
internal sealed class IdfBoardSections(string file, double unit, int version, EcadLog log)
{
    private readonly IdfLoops _loops = new(file, log, ".BOARD_OUTLINE");
    private readonly List<IdfHole> _holes = [];
    private readonly List<IdfPlacement> _placements = [];
    private double? _thickness;
    private bool _hasOutline;
    private int _outlineRecords;

    public void Take(string section, string owner, int line, List<(int Line, string Text)> records)
    {
        switch (section)
        {
            case "BOARD_OUTLINE":
                TakeOutline(line, records);
                break;
            case "DRILLED_HOLES":
                TakeHoles(records);
                break;
            case "PLACEMENT":
                TakePlacement(records);
                break;
            case "PANEL_OUTLINE":
                log.Error(file, line, "ecad-panel", "a panel outline in a board file", "export the single board");
                break;
            default:
                break;
        }
    }

    public IdfBoardFacts Facts(IdfHeader header)
    {
        ImmutableArray<Drawing.OutlineLoop> all = [.. _loops.Finish()];
        if (!_hasOutline || (all.IsEmpty && _outlineRecords == 0))
        {
            log.Error(
                file, header.Line, "ecad-outline-empty", _hasOutline ? ".BOARD_OUTLINE is empty" : "no .BOARD_OUTLINE section",
                "draw the board edge on the outline layer and export again");
        }

        return new IdfBoardFacts(file, header.Version, header.Unit.ToUpperInvariant(), _thickness, all, [.. _holes], [.. _placements]);
    }

    private void TakeOutline(int line, List<(int Line, string Text)> records)
    {
        _hasOutline = true;
        Span<double> v = stackalloc double[3];
        foreach ((int n, string text) in records)
        {
            List<string> fields = IdfRecord.Fields(text);
            if (fields.Count is 1 or 2 && _thickness is null && Numeral.TryParse(fields[^1], out double t))
            {
                _thickness = Math.Round(t * unit, 9);
                continue;
            }

            if (fields.Count < 4 || !Numeral.TryParseInt(fields[0], out int label) || !IdfRecord.Numbers(fields, v, 1, 2, 3))
            {
                log.Error(file, n, "idf-record", $".BOARD_OUTLINE: '{Cut(text)}' is no outline record", "loop label, x, y, included angle");
                continue;
            }

            if (++_outlineRecords > EcadLimits.Strokes)
            {
                log.Error(file, n, "ecad-too-many", $"more than {EcadLimits.Strokes} outline records");
                return;
            }

            if (Place(v[0], v[1], n) is { } at)
            {
                _loops.Add(label, at, v[2], n);
            }
        }

        if (_thickness is null)
        {
            log.Warn(file, line, "idf-thickness", ".BOARD_OUTLINE has no thickness record");
        }
        else if (!(_thickness > 0))
        {
            log.Warn(file, line, "idf-thickness", $"a board thickness of {Numeral.Text(_thickness.Value)} mm is none; taken as unknown");
            _thickness = null;
        }
    }

    private void TakeHoles(List<(int Line, string Text)> records)
    {
        Span<double> v = stackalloc double[3];
        foreach ((int n, string text) in records)
        {
            List<string> fields = IdfRecord.Fields(text);
            if (fields.Count < 4 || !IdfRecord.Numbers(fields, v, 0, 1, 2))
            {
                log.Error(file, n, "idf-record", $".DRILLED_HOLES: '{Cut(text)}' is no hole record",
                    "diameter, x, y, PTH or NPTH, part, type");
                continue;
            }

            double diameter = v[0] * unit;
            if (!(diameter > 0))
            {
                log.Warn(file, n, "idf-hole-diameter", $"a hole of diameter {Numeral.Text(diameter)} mm is left out");
                continue;
            }

            if (_holes.Count >= EcadLimits.Holes)
            {
                log.Error(file, n, "ecad-too-many", $"more than {EcadLimits.Holes} holes");
                return;
            }

            if (Place(v[1], v[2], n) is { } at)
            {
                bool plated = fields[3].Equals("PTH", StringComparison.OrdinalIgnoreCase);
                string type = version >= 3 && fields.Count > 5 ? fields[5].ToUpperInvariant() : "";
                _holes.Add(new IdfHole(at, diameter, plated, fields.Count > 4 ? fields[4] : "", type, n));
            }
        }
    }

    // Two lines each: names, then place. Version 2 has no mounting offset.
    private void TakePlacement(List<(int Line, string Text)> records)
    {
        Span<double> v = stackalloc double[4];
        for (int i = 0; i < records.Count; i++)
        {
            (int n, string text) = records[i];
            List<string> names = IdfRecord.Fields(text);
            if (names.Count < 3 || i + 1 >= records.Count)
            {
                log.Error(file, n, "idf-record", $".PLACEMENT: '{Cut(text)}' is no placement record",
                    "package, part number and reference, then a line with the place");
                continue;
            }

            (int n2, string placeText) = records[++i];
            List<string> place = IdfRecord.Fields(placeText);
            int side =
                place.FindIndex(
                    f => f.Equals("TOP", StringComparison.OrdinalIgnoreCase) || f.Equals("BOTTOM", StringComparison.OrdinalIgnoreCase));

            // The side's column tells whether the offset is there, whatever version the header claims.
            bool read = side switch
            {
                4 => IdfRecord.Numbers(place, v, 0, 1, 2, 3),
                3 => IdfRecord.Numbers(place, v, 0, 1, 2),
                _ => false,
            };
            if (!read)
            {
                log.Error(file, n2, "idf-record", $".PLACEMENT: '{Cut(placeText)}' is no place",
                    version >= 3 ? "x, y, offset, rotation, TOP or BOTTOM, status" : "x, y, rotation, TOP or BOTTOM, status");
                continue;
            }

            if (_placements.Count >= EcadLimits.Parts)
            {
                log.Error(file, n, "ecad-too-many", $"more than {EcadLimits.Parts} parts");
                return;
            }

            if (Place(v[0], v[1], n2) is { } at)
            {
                double offset = side == 4 ? v[2] * unit : 0;
                double rotation = side == 4 ? v[3] : v[2];
                bool bottom = place[side].Equals("BOTTOM", StringComparison.OrdinalIgnoreCase);
                string status = side + 1 < place.Count ? place[side + 1].ToUpperInvariant() : "";
                _placements.Add(new IdfPlacement(names[0], names[1], names[2], at, offset, rotation, bottom, status, n));
            }
        }
    }

    private Point2? Place(double x, double y, int line)
    {
        var at = new Point2(x * unit, y * unit);
        if (Math.Abs(at.X) <= EcadTolerances.LargestCoordinate && Math.Abs(at.Y) <= EcadTolerances.LargestCoordinate)
        {
            return at;
        }

        log.Error(file, line, "ecad-number", "a coordinate beyond a kilometre");
        return null;
    }

    private static string Cut(string text) => text.Length <= 60 ? text : text[..57] + "...";
}
