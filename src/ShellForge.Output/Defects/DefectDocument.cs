using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Solids;

namespace ShellForge.Output.Defects;

/// <summary>A defect of the kernel as it is saved: the operands on the lattice with the operation over them.</summary>
internal sealed record DefectDocument(
    string Format, string Operation, string Reason, ImmutableArray<double> PlaceMm, ImmutableArray<OperandDocument> Operands)
{
    private const string FormatName = "shellforge-operands/1";

    public static byte[] Bytes(KernelDefect defect) => JsonText.Packed(
        new DefectDocument(
            FormatName, defect.Operation, defect.Reason, [defect.Place.X, defect.Place.Y, defect.Place.Z],
            [.. defect.Operands.Select(OperandDocument.Of)]),
        DefectContext.Default.DefectDocument);
}

/// <summary>A mesh in whole lattice steps.</summary>
internal sealed record OperandDocument(ImmutableArray<int> VerticesLattice, ImmutableArray<int> Triangles)
{
    public static OperandDocument Of(Mesh mesh) =>
        new([.. mesh.Vertices.SelectMany(vertex => new[] { vertex.X, vertex.Y, vertex.Z })], [.. mesh.Triangles]);
}

/// <summary>How it is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(DefectDocument))]
internal sealed partial class DefectContext : JsonSerializerContext;
