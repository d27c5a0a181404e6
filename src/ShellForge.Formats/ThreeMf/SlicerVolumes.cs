using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml;

namespace ShellForge.Formats.ThreeMf;

/// <summary>
/// A part beside the model that says which triangles of an object are which body, and which filament prints it. The colours of triangles
/// say the same in the open standard, but a whole family of slicers reads no colour there: without this part it takes a cover and the
/// diffuser in it as one body of one filament, and from components it makes two objects, lays them apart and drops one to the bed.
/// </summary>
internal static class SlicerVolumes
{
    /// <summary>Name of the part in the package.</summary>
    public const string PartName = "Metadata/Slic3r_PE_model.config";

    /// <summary>Namespace of <see cref="VersionMetadata"/>.</summary>
    public const string Namespace = "http://schemas.slic3r.org/3mf/2017/06";

    /// <summary>
    /// Metadata of the model that says by which rules the part is written. Without it a reader moves the first body of an object to its
    /// place on the plate, and forgets the others.
    /// </summary>
    public const string VersionMetadata = "slic3rpe:Version3mf";

    /// <summary>Value of <see cref="VersionMetadata"/>: the first of them, since nothing of a later one is used.</summary>
    public const string Version = "1";

    public static void Write(Stream stream, PrintPlate plate, ImmutableArray<JobMesh> meshes)
    {
        using var xml = XmlWriter.Create(stream, new XmlWriterSettings
        {
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            NewLineChars = "\n",
            Indent = true,
            IndentChars = " ",
        });
        xml.WriteStartDocument();
        xml.WriteStartElement("config");
        for (int j = 0; j < plate.Jobs.Length; j++)
        {
            PrintJob job = plate.Jobs[j].Job;
            xml.WriteStartElement("object");
            xml.WriteAttributeString("id", Text(ThreeMfModelXml.ObjectId(plate, j)));
            xml.WriteAttributeString("instances_count", "1");
            Metadata(xml, "object", "name", job.Name);
            int first = 0;
            foreach ((PrintBody body, ImmutableArray<(int A, int B, int C)> triangles) in job.Bodies.Zip(meshes[j].Bodies))
            {
                xml.WriteStartElement("volume");
                xml.WriteAttributeString("firstid", Text(first));
                xml.WriteAttributeString("lastid", Text(first + triangles.Length - 1));
                Metadata(xml, "volume", "name", body.Name);
                Metadata(xml, "volume", "volume_type", "ModelPart");
                Metadata(xml, "volume", "extruder", Text(plate.Filaments.IndexOf(body.Filament) + 1));
                xml.WriteEndElement();
                first += triangles.Length;
            }

            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteEndDocument();
    }

    private static void Metadata(XmlWriter xml, string type, string key, string value)
    {
        xml.WriteStartElement("metadata");
        xml.WriteAttributeString("type", type);
        xml.WriteAttributeString("key", key);
        xml.WriteAttributeString("value", XmlText.Clean(value));
        xml.WriteEndElement();
    }

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}
