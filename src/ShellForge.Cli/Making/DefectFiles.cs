using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Output.Files;
using ShellForge.Output.Report;
using ShellForge.Planning.Plan;

namespace ShellForge.Cli.Making;

/// <summary>
/// What is saved when a part has no clean mesh: the operands on the lattice with the operation over them, and the board file, so that
/// the defect can be shown again without anything else.
/// </summary>
internal static class DefectFiles
{
    /// <summary>The files; none when every part is sound.</summary>
    public static ImmutableArray<OutputFile> Of(HousingUnderCheck housing, string boardText)
    {
        var files = ImmutableArray.CreateBuilder<OutputFile>();
        foreach (MadePart part in housing.Parts)
        {
            KernelDefect? defect = part.InPrint.Defect;
            if (defect is not null)
            {
                files.Add(new OutputFile($"defect-{part.Name}.json", Operands(defect)));
            }
        }

        if (files.Count > 0)
        {
            files.Add(new OutputFile("defect-board.yaml", Encoding.UTF8.GetBytes(boardText)));
        }

        return files.ToImmutable();
    }

    private static byte[] Operands(KernelDefect defect)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, ReportJson.Options with { Indented = false }))
        {
            json.WriteStartObject();
            json.WriteString("format", "shellforge-operands/1");
            json.WriteString("operation", defect.Operation);
            json.WriteString("reason", defect.Reason);
            json.WriteStartArray("place_mm");
            json.WriteNumberValue(defect.Place.X);
            json.WriteNumberValue(defect.Place.Y);
            json.WriteNumberValue(defect.Place.Z);
            json.WriteEndArray();
            json.WriteStartArray("operands");
            foreach (Mesh operand in defect.Operands)
            {
                WriteMesh(json, operand);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void WriteMesh(Utf8JsonWriter json, Mesh mesh)
    {
        json.WriteStartObject();
        json.WriteStartArray("vertices_lattice");
        foreach (LatticePoint3 vertex in mesh.Vertices)
        {
            json.WriteNumberValue(vertex.X);
            json.WriteNumberValue(vertex.Y);
            json.WriteNumberValue(vertex.Z);
        }

        json.WriteEndArray();
        json.WriteStartArray("triangles");
        foreach (int vertex in mesh.Triangles)
        {
            json.WriteNumberValue(vertex);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
