using System.Globalization;
using ShellForge.Formats.Soup;
using ShellForge.Geometry.Auditing;
using ShellForge.Output.Inspection;

namespace ShellForge.Cli.Inspecting;

/// <summary>Inspections for people.</summary>
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

    private static void WriteBody(TextWriter writer, BodyInspection body)
    {
        string name = body.Name.Length == 0 ? "" : $"{body.Name}: ";
        string volume = body.Volume is { } value
            ? string.Create(CultureInfo.InvariantCulture, $"{value:0.##} mm\u00B3")
            : "bounds no volume";
        writer.Write(string.Create(
            CultureInfo.InvariantCulture,
            $"  {name}{body.Audit.TriangleCount} triangles, {body.Size.X:0.###} x {body.Size.Y:0.###} x {body.Size.Z:0.###} mm, {volume}, "
                + $"surface {body.Area:0.##} mm\u00B2, overhang {body.OverhangArea:0.##} mm\u00B2\n"));
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
}
