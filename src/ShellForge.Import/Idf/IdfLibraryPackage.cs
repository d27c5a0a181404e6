using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Idf;

/// <summary>One .ELECTRICAL or .MECHANICAL section: names, unit and height, then the outline. Every package has its own unit.</summary>
internal static class IdfLibraryPackage
{
    public static IdfPackage? Read(string file, bool mechanical, int line, List<(int Line, string Text)> records, EcadLog log)
    {
        if (records.Count == 0)
        {
            log.Warn(file, line, "idf-record", "an empty package section");
            return null;
        }

        (int headLine, string headText) = records[0];
        List<string> head = IdfRecord.Fields(headText);
        if (head.Count < 4 || IdfRecord.UnitOf(head[2]) is not { } unit || !Numeral.TryParse(head[3], out double height))
        {
            log.Error(file, headLine, "idf-record", $"'{head.FirstOrDefault("")}' is no package record",
                "package, part number, MM or THOU, height");
            return null;
        }

        var loops = new IdfLoops(file, new EcadLog(), "package outline");
        Box2 box = Box2.Empty;
        Span<double> v = stackalloc double[3];
        foreach ((int n, string text) in records.Skip(1).Take(EcadLimits.Strokes))
        {
            List<string> fields = IdfRecord.Fields(text);
            if (fields.Count >= 4 && Numeral.TryParseInt(fields[0], out int label) && IdfRecord.Numbers(fields, v, 1, 2, 3)
                && Math.Abs(v[0] * unit) <= EcadTolerances.LargestCoordinate && Math.Abs(v[1] * unit) <= EcadTolerances.LargestCoordinate)
            {
                var at = new Point2(v[0] * unit, v[1] * unit);
                loops.Add(label, at, v[2], n);

                // Many libraries leave their outlines open; the corners tell the box all the same. A circle's centre is inside it.
                box = box.Including(at);
            }
        }

        foreach (Drawing.OutlineLoop loop in loops.Finish())
        {
            box = box.Including(loop.Bounds.Min).Including(loop.Bounds.Max);
        }

        return new IdfPackage(head[0], head[1], height * unit, box, mechanical, headLine, unit != 1);
    }
}
