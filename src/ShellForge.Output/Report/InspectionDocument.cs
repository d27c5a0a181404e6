using System.Collections.Immutable;
using System.ComponentModel;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Inspection;

namespace ShellForge.Output.Report;

/// <summary>The inspection of mesh files, for machines.</summary>
internal sealed record InspectionDocument(
    string Format,
    [property: Description("The exit status: 0 when every file is sound, else 1.")] int Exit,
    ImmutableArray<InspectedFile> Files);

/// <summary>An inspected file.</summary>
internal sealed record InspectedFile(
    [property: Description("Its name as it was given.")] string File,
    [property: Description("What it was taken for.")] string Kind,
    [property: Description("Whether the file is whole and every body in it bounds a solid.")] bool Sound,
    [property: Description("What is wrong with it as a file.")] ImmutableArray<InspectedFileFault> Faults,
    ImmutableArray<InspectedBody> Bodies)
{
    public static InspectedFile Of(FileInspection file) => new(
        file.File, file.Kind, file.IsSound, [.. file.Faults.Select(fault => new InspectedFileFault(fault.Code, fault.Message))],
        [.. file.Bodies.Select(InspectedBody.Of)]);
}

/// <summary>A fault of a file.</summary>
internal sealed record InspectedFileFault(
    [property: Description("Stable name of the fault.")] string Code,
    string Message);

/// <summary>An inspected body.</summary>
internal sealed record InspectedBody(
    [property: Description("Its name in the file; empty when it has none.")] string Name,
    [property: Description("Whether it bounds a solid.")] bool Solid,
    int Triangles,
    [property: Description("Closed surfaces.")] int Shells,
    [property: Description("Extent along x, y and z.")] Point3 SizeMm,
    [property: Description("Surface.")] double AreaMm2,
    [property: Description("Volume; null where it bounds none.")] double? VolumeMm3,
    [property: Description("Surface that leans outward by more than 45 degrees and does not lie on the bed.")] double OverhangMm2,
    ImmutableArray<InspectedBodyFault> Faults)
{
    public static InspectedBody Of(BodyInspection body) => new(
        body.Name, body.IsSolid, body.Audit.TriangleCount, body.Audit.ShellCount, body.Size, body.Area, body.Volume, body.OverhangArea,
        [.. body.Audit.Faults.Select(InspectedBodyFault.Of)]);
}

/// <summary>A fault of a body.</summary>
internal sealed record InspectedBodyFault(
    [property: Description("Stable name of the fault.")] string Code,
    [property: Description("The triangle, from 1 as it stands in the file; 0 for none.")] int Triangle,
    [property: Description("The other triangle; 0 for none.")] int Other,
    [property: Description("Place in the body's own coordinates, mm.")] Point3 At)
{
    public static InspectedBodyFault Of(MeshFault fault) =>
        new(FaultText.Code(fault.Kind), fault.Triangle + 1, fault.Other + 1, fault.Place);
}
