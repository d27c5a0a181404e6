using System.Globalization;
using System.IO.Compression;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace ShellForge.Formats.Tests.ThreeMf;

/// <summary>
/// Holds a 3MF package against the core specification (1.3), the colours of the materials extension (1.2) and the packaging rules under it,
/// line by line and without anything of the writer: whatever is not allowed there is a fault here, also what readers forgive.
/// </summary>
internal sealed partial class StrictPackage
{
    private const string ModelType = "application/vnd.ms-package.3dmanufacturing-3dmodel+xml";
    private const string ModelRelationship = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";
    private const string ThumbnailRelationship = "http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail";

    private static readonly XNamespace Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
    private static readonly XNamespace Colours = "http://schemas.microsoft.com/3dmanufacturing/material/2015/02";
    private static readonly XNamespace Types = "http://schemas.openxmlformats.org/package/2006/content-types";
    private static readonly XNamespace Relationships = "http://schemas.openxmlformats.org/package/2006/relationships";
    private static readonly string[] Units = ["micron", "millimeter", "centimeter", "inch", "foot", "meter"];

    private static readonly string[] MetadataNames =
        ["Title", "Designer", "Description", "Copyright", "LicenseTerms", "Rating", "CreationDate", "ModificationDate", "Application"];

    private static ReadOnlySpan<byte> Png => [0x89, (byte)'P', (byte)'N', (byte)'G'];

    private readonly Dictionary<string, byte[]> _parts = [];
    private readonly Dictionary<int, XElement> _objects = [];
    private readonly Dictionary<int, int> _materials = [];
    private readonly HashSet<int> _used = [];
    private readonly List<string> _faults = [];

    private StrictPackage()
    {
    }

    /// <summary>What is wrong with a package; nothing when it is right.</summary>
    public static IReadOnlyList<string> FaultsOf(byte[] package)
    {
        var strict = new StrictPackage();
        using (var archive = new ZipArchive(new MemoryStream(package)))
        {
            foreach (ZipArchiveEntry entry in archive.Entries)
            {
                using Stream stream = entry.Open();
                var bytes = new MemoryStream();
                stream.CopyTo(bytes);
                strict.Rule(strict._parts.TryAdd("/" + entry.FullName, bytes.ToArray()), $"two parts are named {entry.FullName}");
            }
        }

        strict.ReadContentTypes();
        if (strict.ReadRelationships() is { } model)
        {
            strict.ReadModel(XDocument.Load(new MemoryStream(strict._parts[model])).Root!);
        }

        return strict._faults;
    }

    private void Rule(bool holds, string fault)
    {
        if (!holds)
        {
            _faults.Add(fault);
        }
    }

    private void Attributes(XElement element, string[] required, string[] optional)
    {
        foreach (string name in required)
        {
            Rule(element.Attribute(name) is not null, $"{element.Name.LocalName} has no {name}");
        }

        foreach (XAttribute attribute in element.Attributes().Where(a => !a.IsNamespaceDeclaration && a.Name != XNamespace.Xml + "lang"))
        {
            Rule(
                attribute.Name.Namespace == XNamespace.None && required.Concat(optional).Contains(attribute.Name.LocalName),
                $"{element.Name.LocalName} has an attribute {attribute.Name}");
        }
    }

    private void Children(XElement element, params string[] allowed) => Rule(
        element.Elements().All(child => child.Name.Namespace == Core && allowed.Contains(child.Name.LocalName)),
        $"{element.Name.LocalName} holds {string.Join(", ", element.Elements().Select(child => child.Name).Distinct())}");

    private void ReadContentTypes()
    {
        if (!_parts.TryGetValue("/[Content_Types].xml", out byte[]? bytes))
        {
            _faults.Add("there are no content types");
            return;
        }

        XElement root = XDocument.Load(new MemoryStream(bytes)).Root!;
        Rule(root.Name == Types + "Types", "the content types have another root");
        Dictionary<string, string> byExtension = root.Elements(Types + "Default")
            .ToDictionary(e => e.Attribute("Extension")!.Value.ToLowerInvariant(), e => e.Attribute("ContentType")!.Value);
        foreach (string part in _parts.Keys.Where(name => name != "/[Content_Types].xml"))
        {
            string extension = part[(part.LastIndexOf('.') + 1)..].ToLowerInvariant();
            string expected = extension switch
            {
                "rels" => "application/vnd.openxmlformats-package.relationships+xml",
                "model" => ModelType,
                "png" => "image/png",
                "config" => "text/xml",
                _ => "nothing",
            };
            Rule(byExtension.GetValueOrDefault(extension) == expected, $"{part} is not of type {expected}");
        }
    }

    // The name of the model's part.
    private string? ReadRelationships()
    {
        if (!_parts.TryGetValue("/_rels/.rels", out byte[]? bytes))
        {
            _faults.Add("there are no relationships");
            return null;
        }

        XElement root = XDocument.Load(new MemoryStream(bytes)).Root!;
        Rule(root.Name == Relationships + "Relationships", "the relationships have another root");
        XElement[] all = [.. root.Elements()];
        Rule(all.All(e => e.Name == Relationships + "Relationship"), "something else stands among the relationships");
        Rule(all.Select(e => e.Attribute("Id")?.Value).Distinct().Count() == all.Length, "two relationships share an id");
        foreach (XElement relationship in all)
        {
            string target = relationship.Attribute("Target")?.Value ?? "";
            Rule(target.StartsWith('/') && _parts.ContainsKey(target), $"a relationship leads to {target}");
            string type = relationship.Attribute("Type")?.Value ?? "";
            Rule(type is ModelRelationship or ThumbnailRelationship, $"a relationship is of type {type}");
            Rule(type != ThumbnailRelationship || _parts.GetValueOrDefault(target)?.AsSpan().StartsWith(Png) != false,
                "the thumbnail is no picture");
        }

        XElement[] models = [.. all.Where(e => e.Attribute("Type")?.Value == ModelRelationship)];
        Rule(models.Length == 1, $"{models.Length} models are the first part");
        string? model = models.FirstOrDefault()?.Attribute("Target")?.Value;
        return model is not null && _parts.ContainsKey(model) ? model : null;
    }

    private void ReadModel(XElement model)
    {
        Rule(model.Name == Core + "model", "the model has another root");
        Attributes(model, [], ["unit", "requiredextensions", "recommendedextensions"]);
        Rule(Units.Contains(model.Attribute("unit")?.Value ?? "millimeter"), "the unit is unknown");
        Rule(model.Attribute("requiredextensions") is null, "an extension is required");
        string order = string.Join(' ', model.Elements().Select(child => child.Name.LocalName));
        Rule(ModelOrder().IsMatch(order), $"the model holds {order}");
        foreach (XElement metadata in model.Elements(Core + "metadata"))
        {
            Attributes(metadata, ["name"], ["preserve", "type"]);
            string name = metadata.Attribute("name")?.Value ?? "";
            Rule(MetadataNames.Contains(name) || OfNamespace(metadata, name), $"metadata of the name {name}");
            Rule(!metadata.HasElements, "metadata holds elements");
        }

        Rule(
            model.Elements(Core + "metadata").Select(m => m.Attribute("name")?.Value).Distinct()
                .Count() == model.Elements(Core + "metadata").Count(),
            "two metadata share a name");
        foreach (XElement resource in model.Element(Core + "resources")?.Elements() ?? [])
        {
            ReadResource(resource);
        }

        XElement[] items = [.. model.Element(Core + "build")?.Elements() ?? []];
        Rule(items.Length > 0, "nothing is built");
        foreach (XElement item in items)
        {
            Rule(item.Name == Core + "item", $"the build holds {item.Name}");
            ReadPlace(item, ["objectid"], ["transform", "partnumber"], built: true);
        }

        foreach (int id in _objects.Keys.Where(id => !_used.Contains(id)))
        {
            _faults.Add($"nobody uses object {id}");
        }
    }

    // Other names are those of a namespace that the model declares.
    private static bool OfNamespace(XElement metadata, string name) =>
        name.Split(':') is [{ Length: > 0 } prefix, { Length: > 0 }] && metadata.GetNamespaceOfPrefix(prefix) is not null;

    private void ReadResource(XElement resource)
    {
        int id = Number(resource, "id");
        Rule(id > 0 && !_objects.ContainsKey(id) && !_materials.ContainsKey(id), $"the id {id} is taken or no id");
        if (resource.Name == Core + "basematerials")
        {
            Attributes(resource, ["id"], []);
            Children(resource, "base");
            _materials[id] = resource.Elements().Count();
            Rule(_materials[id] > 0, "a group of materials is empty");
            foreach (XElement material in resource.Elements())
            {
                Attributes(material, ["name", "displaycolor"], []);
                Rule(Colour().IsMatch(material.Attribute("displaycolor")?.Value ?? ""), "a colour is no sRGB colour");
            }

            return;
        }

        if (resource.Name == Colours + "colorgroup")
        {
            Attributes(resource, ["id"], []);
            _materials[id] = resource.Elements().Count();
            Rule(_materials[id] > 0, "a group of colours is empty");
            foreach (XElement colour in resource.Elements())
            {
                Rule(colour.Name == Colours + "color", $"a group of colours holds {colour.Name}");
                Attributes(colour, ["color"], []);
                Rule(Colour().IsMatch(colour.Attribute("color")?.Value ?? ""), "a colour is no sRGB colour");
            }

            return;
        }

        Rule(resource.Name == Core + "object", $"a resource is {resource.Name}");
        Attributes(resource, ["id"], ["type", "thumbnail", "partnumber", "name", "pid", "pindex"]);
        Rule(resource.Attribute("type")?.Value is null or "model" or "support" or "other", "an object is of another type");
        Children(resource, "mesh", "components");
        Rule(resource.Elements().Count() == 1, "an object is not one mesh or one list of components");
        if (resource.Attribute("pid") is not null || resource.Attribute("pindex") is not null)
        {
            int material = Number(resource, "pid");
            Rule(_materials.ContainsKey(material), $"object {id} is of material {material}, which does not come before it");
            Rule(Number(resource, "pindex") is int index && index >= 0 && index < _materials.GetValueOrDefault(material),
                $"object {id} has no such material");
        }

        foreach (XElement mesh in resource.Elements(Core + "mesh"))
        {
            ReadMesh(mesh, id);
        }

        foreach (XElement components in resource.Elements(Core + "components"))
        {
            Children(components, "component");
            Rule(components.HasElements, $"object {id} has no components");
            Rule(resource.Attribute("pid") is null, "an object of components has a material");
            foreach (XElement component in components.Elements())
            {
                ReadPlace(component, ["objectid"], ["transform"], built: false);
            }
        }

        _objects[id] = resource;
    }

    private void ReadPlace(XElement element, string[] required, string[] optional, bool built)
    {
        Attributes(element, required, optional);
        int id = Number(element, "objectid");
        Rule(_objects.ContainsKey(id), $"{element.Name.LocalName} means object {id}, which does not come before it");
        _used.Add(id);
        double[] move = Decimals(element.Attribute("transform")?.Value ?? "1 0 0 0 1 0 0 0 1 0 0 0");
        Rule(move.Length == 12, "a transform is not of twelve numbers");
        if (move.Length == 12)
        {
            double size = (move[0] * ((move[4] * move[8]) - (move[5] * move[7]))) - (move[1] * ((move[3] * move[8]) - (move[5] * move[6])))
                + (move[2] * ((move[3] * move[7]) - (move[4] * move[6])));
            Rule(size > 0, "a transform mirrors or flattens");
            Rule(!built || Corners(id).All(p => p.X + move[9] > -1e-4 && p.Y + move[10] > -1e-4 && p.Z + move[11] > -1e-4),
                $"object {id} is built outside of the positive octant");
        }
    }

    private IEnumerable<(double X, double Y, double Z)> Corners(int id) => !_objects.TryGetValue(id, out XElement? found) ? [] :
        found.Descendants(Core + "component").SelectMany(c => Corners(Number(c, "objectid")))
            .Concat(found.Descendants(Core + "vertex").Select(Place));

    private void ReadMesh(XElement mesh, int id)
    {
        Children(mesh, "vertices", "triangles");
        XElement[] vertices = [.. mesh.Element(Core + "vertices")?.Elements() ?? []];
        XElement[] triangles = [.. mesh.Element(Core + "triangles")?.Elements() ?? []];
        Rule(vertices.Length >= 3 && triangles.Length >= 4, $"object {id} bounds no volume");
        Rule(vertices.All(v => v.Name == Core + "vertex") && triangles.All(t => t.Name == Core + "triangle"),
            $"object {id} holds something else");
        foreach (XElement vertex in vertices)
        {
            Attributes(vertex, ["x", "y", "z"], []);
        }

        (double X, double Y, double Z)[] places = [.. vertices.Select(Place)];
        Rule(places.Distinct().Count() == places.Length || JoinedIsNonManifold(places, triangles), $"object {id} has one place twice");
        var edges = new HashSet<(int, int)>();
        double volume = 0;
        foreach (XElement triangle in triangles)
        {
            Attributes(triangle, ["v1", "v2", "v3"], ["p1", "p2", "p3", "pid"]);
            int[] corners = [Number(triangle, "v1"), Number(triangle, "v2"), Number(triangle, "v3")];
            if (corners.Any(corner => corner < 0 || corner >= places.Length) || corners.Distinct().Count() < 3)
            {
                _faults.Add($"object {id} has a triangle of the vertices {string.Join(", ", corners)}");
                return;
            }

            if (triangle.Attribute("pid") is not null)
            {
                int group = Number(triangle, "pid");
                Rule(_materials.ContainsKey(group), $"a triangle of object {id} is of material {group}, which does not come before it");
                Rule(Number(triangle, "p1") is int place && place >= 0 && place < _materials.GetValueOrDefault(group),
                    $"a triangle of object {id} has no such material");
            }

            for (int i = 0; i < 3; i++)
            {
                Rule(edges.Add((corners[i], corners[(i + 1) % 3])), $"object {id} runs along an edge twice the same way");
            }

            ((double X, double Y, double Z) a, (double X, double Y, double Z) b, (double X, double Y, double Z) c) =
                (places[corners[0]], places[corners[1]], places[corners[2]]);
            volume += (a.X * ((b.Y * c.Z) - (b.Z * c.Y))) + (a.Y * ((b.Z * c.X) - (b.X * c.Z))) + (a.Z * ((b.X * c.Y) - (b.Y * c.X)));
        }

        Rule(edges.All(edge => edges.Contains((edge.Item2, edge.Item1))), $"object {id} is open");
        Rule(volume > 0, $"object {id} is inside out");
    }

    // Vertices may share a place only where one vertex there would make edges of more than two triangles.
    private static bool JoinedIsNonManifold((double X, double Y, double Z)[] places, XElement[] triangles)
    {
        var edges = new HashSet<((double, double, double), (double, double, double))>();
        foreach (XElement triangle in triangles)
        {
            var corners =
                new[] { "v1", "v2", "v3" }.Select(name => places[int.Parse(triangle.Attribute(name)!.Value, CultureInfo.InvariantCulture)])
                    .ToArray();
            for (int i = 0; i < 3; i++)
            {
                if (!edges.Add((corners[i], corners[(i + 1) % 3])))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private int Number(XElement element, string name)
    {
        string? text = element.Attribute(name)?.Value;
        bool whole = text is not null && Whole().IsMatch(text)
            && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out _);
        Rule(whole, $"{element.Name.LocalName} has the {name} '{text}'");
        return whole ? int.Parse(text!, CultureInfo.InvariantCulture) : -1;
    }

    private (double X, double Y, double Z) Place(XElement vertex)
    {
        double[] place = Decimals($"{vertex.Attribute("x")?.Value} {vertex.Attribute("y")?.Value} {vertex.Attribute("z")?.Value}");
        return place.Length == 3 ? (place[0], place[1], place[2]) : default;
    }

    private double[] Decimals(string text)
    {
        string[] words = text.Split(' ');
        Rule(words.All(word => Decimal().IsMatch(word)), $"'{text}' are no numbers");
        return [.. words.Select(word => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            ? value : 0)];
    }

    [GeneratedRegex("^(metadata )*resources build$")]
    private static partial Regex ModelOrder();

    [GeneratedRegex("^#[0-9A-F]{6}([0-9A-F]{2})?$")]
    private static partial Regex Colour();

    [GeneratedRegex("^[0-9]{1,10}$")]
    private static partial Regex Whole();

    [GeneratedRegex(@"^[+-]?([0-9]+(\.[0-9]+)?|\.[0-9]+)([eE][+-]?[0-9]+)?$")]
    private static partial Regex Decimal();
}
