using System.Security.Cryptography;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Remembering;

namespace ShellForge.Output.Files;

/// <summary>Files of meshes that are written once for all housings that have them in common.</summary>
/// <param name="memory">Knows what was written before.</param>
internal sealed class RememberedFiles(WorkMemory memory)
{
    /// <summary>A part as binary STL.</summary>
    /// <param name="part">The part.</param>
    /// <param name="title">What the file says of itself.</param>
    public byte[] Stl(SolidMesh part, string title) =>
        memory.OfMesh(part, new StlFile(title), () => OutputFile.Written("", stream => StlWriter.Write(stream, part.Mesh, title)).Content);

    /// <summary>A plate as 3MF.</summary>
    /// <param name="title">Title of the model.</param>
    /// <param name="plate">What lies on it.</param>
    /// <param name="thumbnail">Its picture.</param>
    public byte[] ThreeMf(string title, PrintPlate plate, byte[] thumbnail) => memory.Of(
        new PlateFile(
            title, Convert.ToHexStringLower(SHA256.HashData(thumbnail)), new(plate.Filaments),
            new(plate.Jobs.Select(placed => new Placed(placed.Job.Name, placed.Shift, new(placed.Job.Bodies.Select(body =>
                new Body(body.Name, body.Mesh.Digest, body.Filament))))))),
        () => OutputFile.Written("", stream => ThreeMfWriter.Write(stream, title, plate, thumbnail)).Content, bytes => bytes.Length);

    private sealed record StlFile(string Title);

    private sealed record PlateFile(string Title, string Thumbnail, Listed<PrintFilament> Filaments, Listed<Placed> Jobs);

    private sealed record Placed(string Name, Point3 Shift, Listed<Body> Bodies);

    private sealed record Body(string Name, string Mesh, PrintFilament Filament);
}
