using System.Text.Encodings.Web;
using System.Text.Json;
using ShellForge.Checks.Findings;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Report;

/// <summary>The report as JSON. Lengths are mm, rounded to a micrometre; the same report gives the same bytes.</summary>
public static class ReportJson
{
    /// <summary>What <c>format</c> says.</summary>
    public const string Format = "shellforge-report/1";

    /// <summary>How all JSON of the program is written.</summary>
    public static JsonWriterOptions Options { get; } = new()
    {
        Indented = true,
        NewLine = "\n",

        // Degree signs and other letters stay readable; the file is never pasted into a script.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The whole file.</summary>
    public static byte[] Bytes(HousingReport report)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            Write(json, report);
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    /// <summary>The report as an object within another document.</summary>
    public static void Write(Utf8JsonWriter json, HousingReport report)
    {
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteString("name", report.Name);
        if (report.Revision.Length > 0)
        {
            json.WriteString("revision", report.Revision);
        }

        json.WriteString("verdict", Word(report.Verdict));
        json.WriteStartArray("parts");
        foreach (PartReport part in report.Parts)
        {
            WritePart(json, part);
        }

        json.WriteEndArray();
        json.WriteStartObject("print");
        WriteEstimates(json, [.. report.Parts.Select(part => part.Estimate)]);
        json.WriteString("assumptions", report.Housing is { } made ? PrintEstimate.AssumptionsOf(made.Board.Print.Printer) : "");
        json.WriteEndObject();
        WriteFindings(json, report.Findings);
        json.WriteStartArray("shopping");
        foreach (ShoppingItem item in report.Shopping)
        {
            json.WriteStartObject();
            json.WriteString("item", item.Item);
            json.WriteNumber("count", item.Count);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (report.Housing is { } housing)
        {
            PhysicsJson.Write(json, housing);
        }

        json.WriteStartObject("resolved");
        foreach (Decision decision in report.Resolved.OrderBy(decision => decision.Path, StringComparer.Ordinal))
        {
            json.WriteStartObject(decision.Path);
            json.WriteString("value", decision.Value);
            json.WriteString("from", decision.From);
            json.WriteString("why", decision.Why);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>The findings as a property of the object being written.</summary>
    public static void WriteFindings(Utf8JsonWriter json, IEnumerable<Finding> findings)
    {
        json.WriteStartArray("findings");
        foreach (Finding finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("severity", Word(finding.Severity));
            json.WriteString("subject", finding.Subject);
            json.WriteString("message", finding.Message);
            WriteNumber(json, "measured", finding.Measured);
            WriteNumber(json, "limit", finding.Limit);
            json.WriteString("unit", finding.Unit);
            if (finding.At is { } at)
            {
                WritePoint(json, "at", at);
            }
            else
            {
                json.WriteNull("at");
            }

            if (finding.InFile is { } place)
            {
                json.WriteStartObject("in_file");
                json.WriteString("file", place.File);
                json.WriteNumber("line", place.Line);
                json.WriteNumber("column", place.Column);
                json.WriteEndObject();
            }

            json.WriteString("remedy", finding.Remedy);
            if (finding.Accepted is not null)
            {
                json.WriteString("accepted", finding.Accepted);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>The word for a verdict.</summary>
    public static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Print => "print",
        Verdict.MindWarnings => "mind-warnings",
        _ => "do-not-print",
    };

    /// <summary>The word for a severity.</summary>
    public static string Word(Severity severity) => severity switch
    {
        Severity.Stop => "stop",
        Severity.Warn => "warn",
        _ => "note",
    };

    private static void WritePart(Utf8JsonWriter json, PartReport part)
    {
        json.WriteStartObject();
        json.WriteString("name", part.Name);
        json.WriteString("file", part.File);
        json.WriteString("plate", part.Plate);
        json.WriteString("filament", part.Filament);
        if (part.PrintedWith is not null)
        {
            json.WriteString("printed_with", part.PrintedWith);
        }

        json.WriteNumber("triangles", part.Triangles);
        json.WriteNumber("volume_mm3", Rounded(part.Volume));
        json.WriteNumber("area_mm2", Rounded(part.Area));
        json.WriteNumber("mass_g", Math.Round(part.MassGrams, 2));
        WritePoint(json, "size_mm", part.Size);
        json.WriteBoolean("closed", part.Closed);
        json.WriteNumber("shells", part.Shells);
        json.WriteNumber("genus", part.Genus);
        if (part.Thinnest is { } thinnest)
        {
            json.WriteNumber("thinnest_mm", Rounded(thinnest.Thickness));
            WritePoint(json, "thinnest_at", thinnest.At);
        }

        json.WriteStartObject("print");
        WriteEstimates(json, [part.Estimate]);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteEstimates(Utf8JsonWriter json, IReadOnlyList<PrintEstimate> prints)
    {
        json.WriteNumber("plastic_g", Math.Round(prints.Sum(print => print.Grams), 1));
        json.WriteNumber("filament_m", Math.Round(prints.Sum(print => print.FilamentMetres), 2));
        json.WriteNumber("minutes", Math.Round(prints.Sum(print => print.Minutes)));
        json.WriteNumber("waiting_minutes", Math.Round(prints.Sum(print => print.WaitingMinutes), 1));
        json.WriteNumber("filament_changes", prints.Sum(print => print.Changes));
    }

    private static void WritePoint(Utf8JsonWriter json, string name, Point3 point)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(Rounded(point.X));
        json.WriteNumberValue(Rounded(point.Y));
        json.WriteNumberValue(Rounded(point.Z));
        json.WriteEndArray();
    }

    // JSON has no infinities; a rule that divides by nothing found nothing.
    private static void WriteNumber(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumber(name, Rounded(number));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    // Adding zero makes a negative zero positive.
    private static double Rounded(double value) => Math.Round(value, 3) + 0;
}
