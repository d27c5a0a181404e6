using System.Globalization;
using System.Text.Json;
using ShellForge.Formats.Soup;
using ShellForge.Geometry.Auditing;
using ShellForge.Output.Inspection;

namespace ShellForge.Cli.Inspecting;

/// <summary>Inspections for people and for machines.</summary>
internal static class InspectionText
{
    private const int PlacesShown = 5;

    /// <summary>A paragraph a body, with the first places of every kind of fault.</summary>
    public static void Write(TextWriter writer, IEnumerable<FileInspection> files)
    {
        foreach (FileInspection file in files)
        {
            writer.Write($"{file.File}: {file.Kind}, {(file.IsSound ? "sound" : "NOT SOUND")}\n");
            foreach (FileFault fault in file.Faults)
            {
                writer.Write($"  {fault.Code}: {fault.Message}\n");
            }

            foreach (BodyInspection body in file.Bodies)
            {
                WriteBody(writer, body);
            }
        }
    }

    /// <summary>An array property of the object being written.</summary>
    public static void WriteJson(Utf8JsonWriter json, IEnumerable<FileInspection> files)
    {
        json.WriteStartArray("files");
        foreach (FileInspection file in files)
        {
            json.WriteStartObject();
            json.WriteString("file", file.File);
            json.WriteString("kind", file.Kind);
            json.WriteBoolean("sound", file.IsSound);
            json.WriteStartArray("faults");
            foreach (FileFault fault in file.Faults)
            {
                json.WriteStartObject();
                json.WriteString("code", fault.Code);
                json.WriteString("message", fault.Message);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("bodies");
            foreach (BodyInspection body in file.Bodies)
            {
                WriteJson(json, body);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteBody(TextWriter writer, BodyInspection body)
    {
        string name = body.Name.Length == 0 ? "" : $"{body.Name}: ";
        string volume = body.Volume is { } value
            ? string.Create(CultureInfo.InvariantCulture, $"{value:0.##} mm\u00B3")
            : "bounds no volume";
        writer.Write(string.Create(
            CultureInfo.InvariantCulture,
            $"  {name}{body.Audit.TriangleCount} triangles, {body.Size.X:0.###} x {body.Size.Y:0.###} x {body.Size.Z:0.###} mm, {volume}, surface {body.Area:0.##} mm\u00B2, overhang {body.OverhangArea:0.##} mm\u00B2\n"));
        foreach (IGrouping<MeshFaultKind, MeshFault> kind in body.Audit.Faults.GroupBy(fault => fault.Kind))
        {
            int count = body.Audit.Count(kind.Key);
            writer.Write($"  {FaultText.Code(kind.Key)} ({count}): {FaultText.Meaning(kind.Key)}\n");
            foreach (MeshFault fault in kind.Take(PlacesShown))
            {
                writer.Write($"    {FaultText.Where(fault)}\n");
            }

            if (count > PlacesShown)
            {
                writer.Write($"    and {count - PlacesShown} more\n");
            }
        }
    }

    private static void WriteJson(Utf8JsonWriter json, BodyInspection body)
    {
        json.WriteStartObject();
        json.WriteString("name", body.Name);
        json.WriteBoolean("solid", body.IsSolid);
        json.WriteNumber("triangles", body.Audit.TriangleCount);
        json.WriteNumber("shells", body.Audit.ShellCount);
        json.WriteStartArray("size_mm");
        json.WriteNumberValue(body.Size.X);
        json.WriteNumberValue(body.Size.Y);
        json.WriteNumberValue(body.Size.Z);
        json.WriteEndArray();
        json.WriteNumber("area_mm2", Math.Round(body.Area, 3));
        if (body.Volume is { } volume)
        {
            json.WriteNumber("volume_mm3", Math.Round(volume, 3));
        }
        else
        {
            json.WriteNull("volume_mm3");
        }

        json.WriteNumber("overhang_mm2", Math.Round(body.OverhangArea, 3));
        json.WriteStartArray("faults");
        foreach (MeshFault fault in body.Audit.Faults)
        {
            json.WriteStartObject();
            json.WriteString("code", FaultText.Code(fault.Kind));
            json.WriteNumber("triangle", fault.Triangle + 1);
            json.WriteNumber("other", fault.Other + 1);
            json.WriteStartArray("at");
            json.WriteNumberValue(fault.Place.X);
            json.WriteNumberValue(fault.Place.Y);
            json.WriteNumberValue(fault.Place.Z);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
