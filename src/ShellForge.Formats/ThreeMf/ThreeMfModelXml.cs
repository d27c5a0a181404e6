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
    private const int MaterialsId = 1;

    public static void Write(Stream stream, string title, ImmutableArray<PlacedJob> jobs)
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
        xml.WriteAttributeString("unit", "millimeter");
        xml.WriteAttributeString("xml", "lang", null, "en-US");
        Metadata(xml, "Title", title);
        Metadata(xml, "Description", "Parts of a housing as they lie on the bed, side by side. Print without support.");
        Metadata(xml, "Application", "ShellForge");

        var materials = Materials(jobs);
        xml.WriteStartElement("resources", Core);
        WriteMaterials(xml, materials);
        int nextId = MaterialsId + 1;
        var builds = new List<(int Id, PlacedJob Placed)>();
        foreach (PlacedJob placed in jobs)
        {
            builds.Add((WriteJob(xml, placed.Job, materials, ref nextId), placed));
        }

        xml.WriteEndElement();
        xml.WriteStartElement("build", Core);
        foreach ((int id, PlacedJob placed) in builds)
        {
            xml.WriteStartElement("item", Core);
            xml.WriteAttributeString("objectid", Text(id));
            xml.WriteAttributeString("transform", Shifted(placed.Shift));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndDocument();
    }

    private static int WriteJob(XmlWriter xml, PrintJob job, List<(string Name, string Colour)> materials, ref int nextId)
    {
        var bodyIds = new List<int>();
        foreach (PrintBody body in job.Bodies)
        {
            bodyIds.Add(nextId);
            WriteBody(xml, body, nextId++, materials.IndexOf((body.Material, body.Colour)));
        }

        if (bodyIds.Count == 1)
        {
            return bodyIds[0];
        }

        int jobId = nextId++;
        StartObject(xml, jobId, job.Name);
        xml.WriteStartElement("components", Core);
        foreach (int id in bodyIds)
        {
            xml.WriteStartElement("component", Core);
            xml.WriteAttributeString("objectid", Text(id));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
        return jobId;
    }

    private static void WriteBody(XmlWriter xml, PrintBody body, int id, int material)
    {
        CanonicalTriangle[] triangles = CanonicalTriangle.InOrder(body.Mesh);
        LatticePoint3[] vertices = [.. triangles.SelectMany(t => new[] { t.A, t.B, t.C }).Distinct().Order()];
        var numbers = new Dictionary<LatticePoint3, int>(vertices.Length);
        for (int v = 0; v < vertices.Length; v++)
        {
            numbers.Add(vertices[v], v);
        }

        StartObject(xml, id, body.Name);
        xml.WriteAttributeString("pid", Text(MaterialsId));
        xml.WriteAttributeString("pindex", Text(material));
        xml.WriteStartElement("mesh", Core);
        xml.WriteStartElement("vertices", Core);
        foreach (LatticePoint3 vertex in vertices)
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
        foreach (CanonicalTriangle triangle in triangles)
        {
            xml.WriteStartElement("triangle", Core);
            xml.WriteAttributeString("v1", Text(numbers[triangle.A]));
            xml.WriteAttributeString("v2", Text(numbers[triangle.B]));
            xml.WriteAttributeString("v3", Text(numbers[triangle.C]));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void StartObject(XmlWriter xml, int id, string name)
    {
        xml.WriteStartElement("object", Core);
        xml.WriteAttributeString("id", Text(id));
        xml.WriteAttributeString("type", "model");
        xml.WriteAttributeString("name", XmlText.Clean(name));
    }

    private static List<(string Name, string Colour)> Materials(ImmutableArray<PlacedJob> jobs)
    {
        var all = new List<(string, string)>();
        foreach (PrintBody body in jobs.SelectMany(placed => placed.Job.Bodies))
        {
            if (!all.Contains((body.Material, body.Colour)))
            {
                all.Add((body.Material, body.Colour));
            }
        }

        return all;
    }

    private static void WriteMaterials(XmlWriter xml, List<(string Name, string Colour)> materials)
    {
        xml.WriteStartElement("basematerials", Core);
        xml.WriteAttributeString("id", Text(MaterialsId));
        foreach ((string name, string colour) in materials)
        {
            xml.WriteStartElement("base", Core);
            xml.WriteAttributeString("name", XmlText.Clean(name));
            xml.WriteAttributeString("displaycolor", colour.ToUpperInvariant());
            xml.WriteEndElement();
        }

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

    // Lattice values are exact in float32, so the shortest decimals that give that float back are exact too.
    private static string Text(double value) => ((float)value).ToString("R", CultureInfo.InvariantCulture);
}
