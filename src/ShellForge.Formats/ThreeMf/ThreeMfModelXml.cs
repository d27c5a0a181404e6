using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.ThreeMf;

/// <summary>The model part of a 3MF package.</summary>
internal static class ThreeMfModelXml
{
    private const string Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
    private const string Materials = "http://schemas.microsoft.com/3dmanufacturing/material/2015/02";

    /// <summary>Id of a plate's object; the ids before it are those of the filaments' colours.</summary>
    public static int ObjectId(PrintPlate plate, int job) => plate.Filaments.Length + 1 + job;

    public static void Write(Stream stream, string title, PrintPlate plate, ImmutableArray<JobMesh> meshes)
    {
        using var xml = XmlWriter.Create(stream, new XmlWriterSettings
        {
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            NewLineChars = "\n",
            Indent = true,
            IndentChars = "",
        });
        xml.WriteStartDocument();
        xml.WriteStartElement("model", Core);
        xml.WriteAttributeString("xmlns", "m", null, Materials);
        xml.WriteAttributeString("xmlns", "slic3rpe", null, SlicerVolumes.Namespace);
        xml.WriteAttributeString("unit", "millimeter");
        xml.WriteAttributeString("xml", "lang", null, "en-US");
        Metadata(xml, "Title", title);
        Metadata(xml, "Description", Description(plate));
        Metadata(xml, "Application", "ShellForge");
        Metadata(xml, SlicerVolumes.VersionMetadata, SlicerVolumes.Version);

        xml.WriteStartElement("resources", Core);
        WriteFilaments(xml, plate);
        for (int job = 0; job < plate.Jobs.Length; job++)
        {
            WriteJob(xml, plate, job, meshes[job]);
        }

        xml.WriteEndElement();
        xml.WriteStartElement("build", Core);
        for (int job = 0; job < plate.Jobs.Length; job++)
        {
            xml.WriteStartElement("item", Core);
            xml.WriteAttributeString("objectid", Text(ObjectId(plate, job)));
            xml.WriteAttributeString("transform", Shifted(plate.Jobs[job].Shift));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndDocument();
    }

    private static string Description(PrintPlate plate)
    {
        IEnumerable<string> loaded = plate.Filaments.Select((filament, i) => $"{Text(i + 1)} {filament.Name}");
        return $"Parts of a housing as they lie on the bed. Print without support. Filament: {string.Join(", ", loaded)}.";
    }

    // A group a filament, with one colour in it, named by the object as a whole: what readers of colours have in common.
    private static void WriteFilaments(XmlWriter xml, PrintPlate plate)
    {
        for (int i = 0; i < plate.Filaments.Length; i++)
        {
            xml.WriteStartElement("m", "colorgroup", Materials);
            xml.WriteAttributeString("id", Text(i + 1));
            xml.WriteStartElement("m", "color", Materials);
            xml.WriteAttributeString("color", plate.Filaments[i].Colour.ToUpperInvariant());
            xml.WriteEndElement();
            xml.WriteEndElement();
        }
    }

    private static void WriteJob(XmlWriter xml, PrintPlate plate, int number, JobMesh mesh)
    {
        PrintJob job = plate.Jobs[number].Job;
        int own = plate.Filaments.IndexOf(job.Bodies[0].Filament) + 1;
        xml.WriteStartElement("object", Core);
        xml.WriteAttributeString("id", Text(ObjectId(plate, number)));
        xml.WriteAttributeString("type", "model");
        xml.WriteAttributeString("name", XmlText.Clean(job.Name));
        xml.WriteAttributeString("pid", Text(own));
        xml.WriteAttributeString("pindex", "0");
        xml.WriteStartElement("mesh", Core);
        xml.WriteStartElement("vertices", Core);
        foreach (LatticePoint3 vertex in mesh.Vertices)
        {
            Point3 p = vertex.ToMillimetres();
            xml.WriteStartElement("vertex", Core);
            xml.WriteAttributeString("x", Text(p.X));
            xml.WriteAttributeString("y", Text(p.Y));
            xml.WriteAttributeString("z", Text(p.Z));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteStartElement("triangles", Core);
        foreach ((PrintBody body, ImmutableArray<(int A, int B, int C)> triangles) in job.Bodies.Zip(mesh.Bodies))
        {
            int filament = plate.Filaments.IndexOf(body.Filament) + 1;
            foreach ((int a, int b, int c) in triangles)
            {
                xml.WriteStartElement("triangle", Core);
                xml.WriteAttributeString("v1", Text(a));
                xml.WriteAttributeString("v2", Text(b));
                xml.WriteAttributeString("v3", Text(c));
                if (filament != own)
                {
                    xml.WriteAttributeString("pid", Text(filament));
                    xml.WriteAttributeString("p1", "0");
                }

                xml.WriteEndElement();
            }
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void Metadata(XmlWriter xml, string name, string value)
    {
        xml.WriteStartElement("metadata", Core);
        xml.WriteAttributeString("name", name);
        xml.WriteString(XmlText.Clean(value));
        xml.WriteEndElement();
    }

    private static string Shifted(Point3 shift) => $"1 0 0 0 1 0 0 0 1 {Text(shift.X)} {Text(shift.Y)} {Text(shift.Z)}";

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);

    // Lattice values are exact in float32, so the shortest decimals that give that float back are exact too. Readers that expect digits
    // after a minus and then a point take '-0' for no number.
    private static string Text(double value) => value == 0 ? "0" : ((float)value).ToString("R", CultureInfo.InvariantCulture);
}
