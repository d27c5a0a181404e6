using System.Globalization;
using System.IO.Compression;
using System.Xml;
using ShellForge.Formats.Soup;

namespace ShellForge.Formats.ThreeMf;

/// <summary>
/// Reads the meshes of a 3MF package that anyone may have written, placed as the build says, in mm. What is unpacked is bounded, and
/// so is what is kept of it, and what components multiply.
/// </summary>
public static class ThreeMfReader
{
    internal const string Kind = "3MF";
    private const long LongestModel = 512L << 20;

    /// <summary>Reads a whole package.</summary>
    /// <param name="stream">The package.</param>
    /// <param name="cancel">Stops the reading.</param>
    /// <returns>All bodies that are there, and everything that is wrong; never throws on content.</returns>
    public static SoupFile Read(Stream stream, CancellationToken cancel = default)
    {
        try
        {
            using var archive = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
            string? path = ModelPath(archive);
            ZipArchiveEntry? entry = path is null ? null : archive.GetEntry(path);
            if (entry is null)
            {
                return Failed("no-model", path is null
                    ? "the package names no 3D model in its relationships"
                    : $"the package has no part '{path}', which its relationships name");
            }

            using var model = new BoundedText(new BoundedStream(entry.Open(), LongestModel));
            using XmlReader xml = XmlReader.Create(model, SafeSettings());
            return new ThreeMfModelReader(xml, ThreeMfModelReader.MostKept(entry.CompressedLength)).Read(cancel);
        }
        catch (InvalidDataException e)
        {
            return Failed("not-a-package", $"the package can't be unpacked: {e.Message}");
        }
        catch (XmlException e)
        {
            return Failed("syntax", string.Create(
                CultureInfo.InvariantCulture, $"the model is not well-formed XML at line {e.LineNumber}, column {e.LinePosition}"));
        }
    }

    internal static XmlReaderSettings SafeSettings() => new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        IgnoreComments = true,
        IgnoreWhitespace = true,
        IgnoreProcessingInstructions = true,
    };

    private static string? ModelPath(ZipArchive archive)
    {
        const string modelType = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";
        const long longestRelationships = 1L << 20;
        ZipArchiveEntry? relationships = archive.GetEntry("_rels/.rels");
        if (relationships is null)
        {
            return null;
        }

        using var stream = new BoundedText(new BoundedStream(relationships.Open(), longestRelationships));
        using XmlReader xml = XmlReader.Create(stream, SafeSettings());
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "Relationship" && xml.GetAttribute("Type") == modelType)
            {
                return xml.GetAttribute("Target")?.TrimStart('/');
            }
        }

        return null;
    }

    private static SoupFile Failed(string code, string message) => new(Kind, [], [new FileFault(code, message)]);
}
