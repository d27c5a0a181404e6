using System.Globalization;
using System.Text.Json;

namespace ShellForge.Import.Tests;

/// <summary>Compares an import's JSON with the numbers a case lists, each with its own meaning; collects every difference.</summary>
internal sealed class CaseComparison(JsonElement expected, JsonElement read)
{
    private const double Length = 0.01;

    public List<string> Wrong { get; } = [];

    public int Checked { get; private set; }

    public void Run()
    {
        if (expected.TryGetProperty("outline", out JsonElement outline))
        {
            Outline(outline, read.GetProperty("outline"));
        }

        if (expected.TryGetProperty("drill", out JsonElement drill))
        {
            Drill(drill);
        }

        if (expected.TryGetProperty("placement", out JsonElement placement))
        {
            Placement(placement);
        }

        if (expected.TryGetProperty("dxf", out JsonElement dxf))
        {
            Dxf(dxf);
        }

        if (expected.TryGetProperty("thickness_mm", out JsonElement thickness))
        {
            Number("thickness", thickness, read.GetProperty("thickness_mm"), Length);
        }
    }

    private void Outline(JsonElement want, JsonElement got)
    {
        if (got.ValueKind == JsonValueKind.Null)
        {
            Wrong.Add("no outline was found");
            return;
        }

        Numbers("outline box", want.GetProperty("bbox_mm"), got.GetProperty("bbox_mm"), Length);
        Numbers("outline size", want.GetProperty("size_mm"), got.GetProperty("size_mm"), Length);
        Number("outline diameter", want.GetProperty("outer_diameter_mm"), got.GetProperty("circle_diameter_mm"), Length);
        double area = want.GetProperty("outer_area_mm2").GetDouble();
        Close("outline area", area, got.GetProperty("area_mm2").GetDouble(), Math.Max(0.02, area * 2e-5));
        if (want.TryGetProperty("outer_centre_mm", out JsonElement centre) && centre.ValueKind == JsonValueKind.Array)
        {
            Numbers("outline centre", centre, got.GetProperty("centre_mm"), Length);
        }

        if (want.TryGetProperty("max_joint_gap_mm", out JsonElement gap))
        {
            Number("largest gap", gap, got.GetProperty("largest_gap_mm"), 1e-4);
        }

        var cutouts = got.GetProperty("cutouts").EnumerateArray().ToList();
        JsonElement inner = want.GetProperty("inner_loops");
        Same("cutouts", inner.GetArrayLength(), cutouts.Count);
        foreach (JsonElement loop in inner.EnumerateArray())
        {
            Loop(loop, cutouts, "cutout");
        }
    }

    private void Loop(JsonElement want, List<JsonElement> loops, string what)
    {
        double[] size = Doubles(want.GetProperty("size_mm"));
        double area = want.GetProperty("area_mm2").GetDouble();
        JsonElement circle = want.GetProperty("circle");
        bool found = loops.Exists(l =>
        {
            double[] got = Doubles(l.GetProperty("size_mm"));

            // A circle of chords has a box a little smaller than its diameter.
            bool same = Near(size, got, circle.ValueKind == JsonValueKind.Object ? 0.02 : Length)
                && Math.Abs(area - l.GetProperty("area_mm2").GetDouble()) <= Math.Max(0.02, area * 2e-4);
            if (same && want.TryGetProperty("bbox_mm", out JsonElement box))
            {
                same = Near(Doubles(box), Doubles(l.GetProperty("bbox_mm")), circle.ValueKind == JsonValueKind.Object ? 0.02 : Length);
            }

            JsonElement gotCircle = l.GetProperty("circle_diameter_mm");
            return same && (circle.ValueKind == JsonValueKind.Object
                ? gotCircle.ValueKind == JsonValueKind.Number
                    && Math.Abs(gotCircle.GetDouble() - circle.GetProperty("d").GetDouble()) <= Length
                    && Near(Doubles(circle.GetProperty("c")), Doubles(l.GetProperty("at")), Length)
                : gotCircle.ValueKind == JsonValueKind.Null);
        });
        Checked++;
        if (!found)
        {
            Wrong.Add($"{what} {want.GetRawText()} was not found");
        }
    }

    private void Drill(JsonElement want)
    {
        List<JsonElement> holes = [.. read.GetProperty("holes").EnumerateArray()];
        if (want.TryGetProperty("total", out JsonElement total))
        {
            Same("holes in the file", total.GetInt32(), Files("idf-board").Sum(f => f.GetProperty("holes").GetInt32()));
        }

        if (want.TryGetProperty("totals", out JsonElement totals))
        {
            foreach (JsonElement line in totals.EnumerateArray())
            {
                Totals(line.GetString()!);
            }
        }

        List<JsonElement> large = holes.FindAll(h => h.GetProperty("diameter_mm").GetDouble() >= 1.4999);
        JsonElement wanted = want.GetProperty("holes_ge_1p5");
        Same("holes from 1.5 mm", wanted.GetArrayLength(), large.Count);
        foreach (JsonElement hole in wanted.EnumerateArray())
        {
            Checked++;
            bool isNotch = hole.GetProperty("where").GetString() == "cuts the edge";
            bool plated = hole.GetProperty("src").GetString()!.Split(' ').Contains("PTH");
            bool bare = hole.GetProperty("src").GetString()!.Split(' ').Contains("NPTH");
            bool found = large.Exists(h =>
                Math.Abs(h.GetProperty("diameter_mm").GetDouble() - hole.GetProperty("d").GetDouble()) <= Length
                && Near([hole.GetProperty("x").GetDouble(), hole.GetProperty("y").GetDouble()], Doubles(h.GetProperty("at")), Length)
                && isNotch == (h.GetProperty("kind").GetString() == "notch")
                && (!plated || h.GetProperty("plated").ValueKind == JsonValueKind.True)
                && (!bare || h.GetProperty("plated").ValueKind == JsonValueKind.False));
            if (!found)
            {
                Wrong.Add($"hole {hole.GetRawText()} was not found");
            }
        }

        if (want.TryGetProperty("slots", out JsonElement slots))
        {
            Slots(slots);
        }
    }

    private void Slots(JsonElement want)
    {
        List<JsonElement> got = [.. read.GetProperty("slots").EnumerateArray()];
        Same("slots", want.GetArrayLength(), got.Count);
        foreach (JsonElement slot in want.EnumerateArray())
        {
            Checked++;
            double[][] path = [.. slot.GetProperty("path").EnumerateArray().Select(Doubles)];
            bool found = got.Exists(g =>
                Math.Abs(g.GetProperty("width_mm").GetDouble() - slot.GetProperty("width").GetDouble()) <= Length
                && Math.Abs(g.GetProperty("length_mm").GetDouble() - slot.GetProperty("length").GetDouble()) <= Length
                && g.GetProperty("path").EnumerateArray().Select(Doubles).ToArray() is var own
                && path.Length == own.Length
                && path.Zip(own).All(p => Near(p.First, p.Second, Length)));
            if (!found)
            {
                Wrong.Add($"slot {slot.GetRawText()} was not found");
            }
        }
    }

    // "board-PTH.drl: 384 holes, 4 slots (inch, LZ)"
    private void Totals(string line)
    {
        string name = line[..line.IndexOf(':', StringComparison.Ordinal)];
        string[] words = line[(name.Length + 1)..].Split([' ', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        JsonElement file = read.GetProperty("files").EnumerateArray().Single(f => f.GetProperty("name").GetString() == name);
        Same(name + " holes", int.Parse(words[0], CultureInfo.InvariantCulture), file.GetProperty("holes").GetInt32());
        Same(name + " slots", int.Parse(words[2], CultureInfo.InvariantCulture), file.GetProperty("slots").GetInt32());
        Checked++;
        if (file.GetProperty("units").GetString() != words[4])
        {
            Wrong.Add($"{name} is read in {file.GetProperty("units").GetString()}, not {words[4]}");
        }
    }

    private void Placement(JsonElement want)
    {
        JsonElement parts = read.GetProperty("parts");
        Same("parts on top", want.GetProperty("top").GetInt32(), parts.GetProperty("top").GetInt32());
        Same("parts on bottom", want.GetProperty("bottom").GetInt32(), parts.GetProperty("bottom").GetInt32());
        List<JsonElement> rows = [.. parts.GetProperty("rows").EnumerateArray()];
        if (want.TryGetProperty("rows", out JsonElement wanted))
        {
            foreach (JsonElement row in wanted.EnumerateArray())
            {
                Checked++;
                bool found = rows.Exists(r =>
                    r.GetProperty("ref").GetString() == row.GetProperty("ref").GetString()
                    && r.GetProperty("side").GetString() == row.GetProperty("side").GetString()
                    && Near([row.GetProperty("x").GetDouble(), row.GetProperty("y").GetDouble()], Doubles(r.GetProperty("at")), Length)
                    && Math.Abs(row.GetProperty("rot").GetDouble() - r.GetProperty("rotation_deg").GetDouble()) <= Length);
                if (!found)
                {
                    Wrong.Add($"part {row.GetRawText()} was not found");
                }
            }
        }

        foreach (string side in new[] { "top", "bottom" })
        {
            if (want.TryGetProperty("tallest_" + side, out JsonElement tallest))
            {
                Checked++;
                double height = rows.Where(r => r.GetProperty("side").GetString() == side).Max(LibraryHeight);
                Close("tallest on " + side, tallest.GetProperty("height_mm").GetDouble(), height, Length);
            }
        }

        if (want.TryGetProperty("outside_outline", out JsonElement outside) && outside.GetArrayLength() > 0)
        {
            string all = read.GetProperty("diagnostics").GetRawText();
            foreach (JsonElement name in outside.EnumerateArray())
            {
                Checked++;
                if (!all.Contains($"{name.GetString()} lies outside the board", StringComparison.Ordinal))
                {
                    Wrong.Add($"nobody says that {name.GetString()} lies outside the board");
                }
            }
        }
    }

    private static double LibraryHeight(JsonElement row) =>
        row.TryGetProperty("library_height_mm", out JsonElement library) && library.ValueKind == JsonValueKind.Number ? library.GetDouble()
            : row.GetProperty("height_mm") is { ValueKind: JsonValueKind.Number } height ? height.GetDouble() : 0;

    private void Dxf(JsonElement want)
    {
        JsonElement file = Files("dxf").Single();
        Same("closed loops", want.GetProperty("closed_loops").GetInt32(), file.GetProperty("closed_loops").GetInt32());
        Same("open chains", want.GetProperty("open_chains").GetInt32(), file.GetProperty("open_chains").GetInt32());
        List<JsonElement> loops = [.. file.GetProperty("loops").EnumerateArray()];
        foreach (JsonElement loop in want.GetProperty("largest").EnumerateArray())
        {
            Loop(loop, loops, "loop");
        }
    }

    private IEnumerable<JsonElement> Files(string kind) =>
        read.GetProperty("files").EnumerateArray().Where(f => f.GetProperty("kind").GetString() == kind);

    private void Number(string what, JsonElement want, JsonElement got, double tolerance)
    {
        if (want.ValueKind == JsonValueKind.Number && got.ValueKind == JsonValueKind.Number)
        {
            Close(what, want.GetDouble(), got.GetDouble(), tolerance);
            return;
        }

        Checked++;
        if (want.ValueKind != got.ValueKind)
        {
            Wrong.Add($"{what}: {got.GetRawText()}, not {want.GetRawText()}");
        }
    }

    private void Numbers(string what, JsonElement want, JsonElement got, double tolerance)
    {
        Checked++;
        if (!Near(Doubles(want), Doubles(got), tolerance))
        {
            Wrong.Add($"{what}: {got.GetRawText()}, not {want.GetRawText()}");
        }
    }

    private void Close(string what, double want, double got, double tolerance)
    {
        Checked++;
        if (!(Math.Abs(want - got) <= tolerance))
        {
            Wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: {got}, not {want}"));
        }
    }

    private void Same(string what, int want, int got)
    {
        Checked++;
        if (want != got)
        {
            Wrong.Add($"{what}: {got}, not {want}");
        }
    }

    private static double[] Doubles(JsonElement array) => [.. array.EnumerateArray().Select(v => v.GetDouble())];

    private static bool Near(double[] a, double[] b, double tolerance) =>
        a.Length == b.Length && a.Zip(b).All(p => Math.Abs(p.First - p.Second) <= tolerance);
}
