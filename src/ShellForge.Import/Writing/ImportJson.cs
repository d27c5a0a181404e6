using System.Text;
using System.Text.Json;
using ShellForge.Board.Diagnostics;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>
/// The import as JSON, in millimetres and file coordinates:
/// <c>{files, outline, holes, slots, parts: {top, bottom, skipped, rows}, thickness_mm, diagnostics}</c>. The numbers top and
/// bottom count all rows placed on that side; skipped lists the rows that are no parts, with the reason.
/// </summary>
public static class ImportJson
{
    private const int MostLoops = 40;

    /// <summary>The JSON text, indented, ended by a line feed.</summary>
    public static string Text(ImportResult result) => Text(result, result.Diagnostics);

    /// <summary>The JSON text with diagnostics of more than the import itself, such as files that could not be read.</summary>
    public static string Text(ImportResult result, IReadOnlyList<Diagnostic> diagnostics)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            ImportedBoard board = result.Board;
            json.WriteStartObject();
            Files(json, board);
            Outline(json, board.Outline);
            Holes(json, board);
            Slots(json, board);
            Parts(json, board);
            Number(json, "thickness_mm", board.Thickness, 6);
            Diagnostics(json, diagnostics);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Files(Utf8JsonWriter json, ImportedBoard board)
    {
        json.WriteStartArray("files");
        foreach (ImportedFile f in board.Files)
        {
            json.WriteStartObject();
            json.WriteString("name", f.Name);
            json.WriteString("kind", KindWord(f));
            json.WriteString("units", f.Unit);
            Count(json, "holes", f.Holes);
            Count(json, "slots", f.Slots);
            Count(json, "parts", f.Parts);
            if (f.Loops is { } loops)
            {
                json.WriteString("role", f.Role);
                json.WriteNumber("closed_loops", loops.Count + f.RepeatedLoops);
                json.WriteNumber("repeated_loops", f.RepeatedLoops);
                Count(json, "open_chains", f.OpenChains);
                json.WriteStartArray("loops");
                foreach (OutlineLoop loop in loops.Take(MostLoops))
                {
                    json.WriteStartObject();
                    Loop(json, loop);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string KindWord(ImportedFile f) => f.Kind switch
    {
        FileKind.IdfBoard => "idf-board",
        FileKind.IdfPanel => "idf-panel",
        FileKind.IdfLibrary => "idf-library",
        FileKind.Gerber => "gerber",
        FileKind.Drill => "drill",
        FileKind.Placement => "placement",
        FileKind.Dxf => "dxf",
        FileKind.DxfBinary => "dxf-binary",
        FileKind.JobFile => "gerber-job",
        FileKind.Accompanying => "other",
        _ => "unknown",
    };

    private static void Outline(Utf8JsonWriter json, ImportedOutline? outline)
    {
        if (outline is null)
        {
            json.WriteNull("outline");
            return;
        }

        json.WriteStartObject("outline");
        json.WriteString("file", outline.File);
        json.WriteString("from", outline.From);
        Pair(json, "size_mm", outline.Outer.Bounds.Size);
        Box(json, "bbox_mm", outline.Outer.Bounds);
        Number(json, "circle_diameter_mm", outline.Outer.Circle?.Diameter, 4);
        Pair(json, "centre_mm", outline.Centre);
        Number(json, "bore_mm", outline.Bore?.Loop.Circle?.Diameter, 4);
        Number(json, "area_mm2", outline.Outer.Area, 3);
        json.WriteNumber("segments", outline.Outer.Segments.Count);
        Number(json, "largest_gap_mm", outline.LargestGap, 6);
        json.WriteStartArray("cutouts");
        foreach (ImportedCutout cutout in outline.Cutouts)
        {
            json.WriteStartObject();
            Loop(json, cutout.Loop);
            json.WriteBoolean("also_drilled", cutout.AlsoDrilled);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Loop(Utf8JsonWriter json, OutlineLoop loop)
    {
        Pair(json, "size_mm", loop.Bounds.Size);
        Box(json, "bbox_mm", loop.Bounds);
        if (loop.Circle is { } circle)
        {
            Pair(json, "at", circle.Centre);
            Number(json, "circle_diameter_mm", circle.Diameter, 4);
        }
        else
        {
            Pair(json, "at", loop.Bounds.Centre);
            json.WriteNull("circle_diameter_mm");
        }

        Number(json, "area_mm2", loop.Area, 3);
    }

    private static void Holes(Utf8JsonWriter json, ImportedBoard board)
    {
        json.WriteStartArray("holes");
        foreach (ImportedHole h in board.Holes)
        {
            json.WriteStartObject();
            Pair(json, "at", h.At);
            Number(json, "diameter_mm", h.Diameter, 4);
            Flag(json, "plated", h.Plated);
            json.WriteString("kind", KindWord(h.Kind));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string KindWord(HoleKind kind) => kind switch
    {
        HoleKind.Mounting => "mounting",
        HoleKind.Via => "via",
        HoleKind.Pin => "pin",
        HoleKind.Tooling => "tooling",
        HoleKind.Notch => "notch",
        HoleKind.Outside => "outside",
        _ => "unknown",
    };

    private static void Slots(Utf8JsonWriter json, ImportedBoard board)
    {
        json.WriteStartArray("slots");
        foreach (ImportedSlot s in board.Slots)
        {
            json.WriteStartObject();
            json.WriteStartArray("path");
            foreach (Point2 p in s.Path)
            {
                Pair(json, null, p);
            }

            json.WriteEndArray();
            Number(json, "width_mm", s.Width, 4);
            Number(json, "length_mm", s.Length, 4);
            Flag(json, "plated", s.Plated);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Parts(Utf8JsonWriter json, ImportedBoard board)
    {
        json.WriteStartObject("parts");
        json.WriteNumber("top", board.Parts.Count(p => p.Placed && !p.Bottom));
        json.WriteNumber("bottom", board.Parts.Count(p => p.Placed && p.Bottom));
        json.WriteStartArray("skipped");
        foreach (ImportedPart p in board.Parts.Where(p => p.Skip is not null))
        {
            json.WriteStartObject();
            json.WriteString("ref", p.Reference);
            json.WriteString("side", p.Bottom ? "bottom" : "top");
            json.WriteString("why", p.Skip);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("rows");
        foreach (ImportedPart p in board.Parts.Where(p => p.Placed))
        {
            json.WriteStartObject();
            json.WriteString("ref", p.Reference);
            json.WriteString("package", p.Package);
            Pair(json, "at", p.FileAt);
            if (p.At != p.FileAt)
            {
                Pair(json, "board_at", p.At);
            }

            Number(json, "rotation_deg", p.FileRotation, 4);
            json.WriteString("side", p.Bottom ? "bottom" : "top");
            Number(json, "height_mm", p.Height, 4);
            json.WriteString("height_from", p.HeightFrom switch { HeightSource.Library => "library", HeightSource.Filler => "filler", HeightSource.Package => "package", _ => "unknown" });
            if (p.LibraryHeight is { } library && p.HeightFrom != HeightSource.Library)
            {
                Number(json, "library_height_mm", library, 4);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Diagnostics(Utf8JsonWriter json, IReadOnlyList<Diagnostic> diagnostics)
    {
        json.WriteStartArray("diagnostics");
        foreach (Diagnostic d in diagnostics)
        {
            json.WriteStartObject();
            json.WriteString("file", d.File);
            json.WriteNumber("line", d.Line);
            json.WriteNumber("column", d.Column);
            json.WriteString("code", d.Code);
            json.WriteString("severity", d.Severity switch { DiagnosticSeverity.Error => "error", DiagnosticSeverity.Warning => "warning", _ => "note" });
            json.WriteString("message", d.Message);
            if (d.Expected is { } expected)
            {
                json.WriteString("expected", expected);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Count(Utf8JsonWriter json, string name, int? value)
    {
        if (value is { } v)
        {
            json.WriteNumber(name, v);
        }
    }

    private static void Flag(Utf8JsonWriter json, string name, bool? value)
    {
        if (value is { } v)
        {
            json.WriteBoolean(name, v);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static void Number(Utf8JsonWriter json, string name, double? value, int decimals)
    {
        if (value is { } v)
        {
            json.WriteNumber(name, Tidy(v, decimals));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static void Pair(Utf8JsonWriter json, string? name, Point2 p)
    {
        if (name is null)
        {
            json.WriteStartArray();
        }
        else
        {
            json.WriteStartArray(name);
        }

        json.WriteNumberValue(Tidy(p.X, 4));
        json.WriteNumberValue(Tidy(p.Y, 4));
        json.WriteEndArray();
    }

    private static void Box(Utf8JsonWriter json, string name, Box2 box)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(Tidy(box.Min.X, 4));
        json.WriteNumberValue(Tidy(box.Min.Y, 4));
        json.WriteNumberValue(Tidy(box.Max.X, 4));
        json.WriteNumberValue(Tidy(box.Max.Y, 4));
        json.WriteEndArray();
    }

    // No negative zero, no digits that are noise.
    private static double Tidy(double value, int decimals) => Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;
}
