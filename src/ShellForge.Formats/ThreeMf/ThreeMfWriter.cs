using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;

namespace ShellForge.Formats.ThreeMf;

/// <summary>
/// A 3MF package to the core specification and its materials extension: one named object of one mesh a job, filaments as colours of its
/// triangles, millimetres. Beside the model stands a part that says again which triangles are which body and of which filament
/// (<see cref="SlicerVolumes"/>). Entries carry a fixed date and fixed names, so the same input gives the same bytes.
/// </summary>
public static class ThreeMfWriter
{
    private const string ContentTypes =
        """<?xml version="1.0" encoding="UTF-8"?>""" + "\n"
        + """<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">"""
        + """<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>"""
        + """<Default Extension="png" ContentType="image/png"/>"""
        + """<Default Extension="config" ContentType="text/xml"/>"""
        + """<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>"""
        + "</Types>\n";

    private const string ThumbnailRelationship =
        """<Relationship Type="http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail" Target="/Metadata/thumbnail.png" Id="thumbnail"/>""";

    private const string RelationshipsHead =
        """<?xml version="1.0" encoding="UTF-8"?>""" + "\n"
        + """<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">"""
        + """<Relationship Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel" Target="/3D/3dmodel.model" Id="model"/>""";

    private const string RelationshipsFoot = "</Relationships>\n";

    // The earliest date a ZIP entry can carry.
    private static readonly DateTimeOffset FixedDate = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes a package.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="title">Title of the model.</param>
    /// <param name="plate">Jobs with their places, and the filaments.</param>
    /// <param name="thumbnail">A picture of it as PNG; null for none.</param>
    public static void Write(Stream stream, string title, PrintPlate plate, byte[]? thumbnail = null)
    {
        using var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true);
        WriteText(archive, "[Content_Types].xml", ContentTypes);
        WriteText(archive, "_rels/.rels", RelationshipsHead + (thumbnail is null ? "" : ThumbnailRelationship) + RelationshipsFoot);
        if (thumbnail is not null)
        {
            using Stream picture = Entry(archive, "Metadata/thumbnail.png");
            picture.Write(thumbnail);
        }

        ImmutableArray<JobMesh> meshes = [.. plate.Jobs.Select(placed => JobMesh.Of(placed.Job))];
        using (Stream volumes = Entry(archive, SlicerVolumes.PartName))
        {
            SlicerVolumes.Write(volumes, plate, meshes);
        }

        using Stream model = Entry(archive, "3D/3dmodel.model");
        ThreeMfModelXml.Write(model, title, plate, meshes);
    }

    private static void WriteText(ZipArchive archive, string name, string text)
    {
        using Stream entry = Entry(archive, name);
        entry.Write(Encoding.UTF8.GetBytes(text));
    }

    private static Stream Entry(ZipArchive archive, string name)
    {
        ZipArchiveEntry entry = archive.CreateEntry(name, CompressionLevel.Optimal);
        entry.LastWriteTime = FixedDate;
        return entry.Open();
    }
}
