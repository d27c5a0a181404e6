using System.IO.Compression;
using System.Text;

namespace ShellForge.Formats.Tests.ThreeMf;

/// <summary>A 3MF package of a model as somebody else may write it.</summary>
internal static class ModelPackage
{
    private const string Usual =
        "<Relationships><Relationship Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\" Target=\"/m\"/></Relationships>";

    /// <summary>The bytes of the package.</summary>
    /// <param name="model">The model's text, sound or not.</param>
    /// <param name="relationships">What leads to the model; null for the usual.</param>
    public static byte[] Of(byte[] model, string? relationships = null)
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Put(archive, "_rels/.rels", Encoding.UTF8.GetBytes(relationships ?? Usual));
            Put(archive, "m", model);
        }

        return stream.ToArray();
    }

    private static void Put(ZipArchive archive, string name, byte[] content)
    {
        using Stream entry = archive.CreateEntry(name).Open();
        entry.Write(content);
    }
}
