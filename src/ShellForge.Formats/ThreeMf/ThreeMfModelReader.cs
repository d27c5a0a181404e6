using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using ShellForge.Formats.Soup;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.ThreeMf;

/// <summary>Reads the model part: objects first, then the build that places them.</summary>
/// <param name="xml">The model.</param>
/// <param name="mostKept">How many vertices, triangles, objects, components, items and colours are kept, all together.</param>
internal sealed class ThreeMfModelReader(XmlReader xml, int mostKept)
{
    private const int DeepestNodes = 32;
    private const int MostBodies = 10_000;
    private const int LongestId = 80;
    private const int NodesBetweenLooks = 4096;

    private const int DeepestComponents = 16;
    private const long MostPlacedTriangles = 5_000_000;
    private readonly Dictionary<string, ThreeMfObject> _objects = [];
    private readonly ImmutableArray<FileFault>.Builder _faults = ImmutableArray.CreateBuilder<FileFault>();
    private readonly List<SoupBuilder> _bodies = [];
    private readonly Dictionary<(string Group, int Index), string> _colours = [];
    private (string Id, int Count) _group = ("", 0);
    private double _unit = 1;
    private long _placed;
    private int _kept;

    /// <summary>
    /// How much of a model is kept. Packed, a triangle with its share of vertices takes some ten bytes; text that packs a hundred times
    /// better says the same over and over. A small file is allowed some of that.
    /// </summary>
    /// <param name="packed">Bytes that the model has in its package.</param>
    public static int MostKept(long packed)
    {
        const int always = 400_000;
        const int most = 8_000_000;
        return (int)Math.Min(most, always + (packed / 2));
    }

    /// <summary>Reads it all.</summary>
    public SoupFile Read(CancellationToken cancel)
    {
        ThreeMfObject? current = null;
        bool built = false;
        for (int node = 0; xml.Read(); node++)
        {
            if (node % NodesBetweenLooks == 0)
            {
                cancel.ThrowIfCancellationRequested();
            }

            if (xml.Depth > DeepestNodes)
            {
                Fault("too-deep", $"its elements are nested deeper than {DeepestNodes}");
                return Finished();
            }

            if (_kept > mostKept)
            {
                Fault("too-many", $"the model unpacks to more than {mostKept} vertices, triangles and other elements");
                return Finished();
            }

            if (xml.NodeType != XmlNodeType.Element)
            {
                continue;
            }

            switch (xml.LocalName)
            {
                case "model":
                    ReadUnit();
                    break;
                case "object":
                    current = ReadObject();
                    break;
                case "vertex":
                    _kept++;
                    current?.Vertices.Add(new Point3(Number("x"), Number("y"), Number("z")));
                    break;
                case "triangle":
                    _kept++;
                    current?.Triangles.Add((Index("v1"), Index("v2"), Index("v3"), Property(current.Property, "p1")));
                    break;
                case "colorgroup" or "basematerials":
                    _group = (Id("id"), 0);
                    break;
                case "color" or "base":
                    _kept++;
                    _colours.TryAdd((_group.Id, _group.Count), Name(xml.GetAttribute("name") ?? xml.GetAttribute("color") ?? ""));
                    _group.Count++;
                    break;
                case "component":
                    _kept++;
                    current?.Components.Add((Id("objectid"), Map()));
                    break;
                case "item":
                    _kept++;
                    built = true;
                    Build(Id("objectid"), Map());
                    break;
                default:
                    break;
            }
        }

        if (!built)
        {
            Fault("no-build", "the model builds nothing");
        }

        return Finished();
    }

    private SoupFile Finished() => SoupBuilder.Finish(ThreeMfReader.Kind, _bodies, _faults);

    private void ReadUnit()
    {
        string unit = xml.GetAttribute("unit") ?? "millimeter";
        double? size = unit switch
        {
            "micron" => 0.001,
            "millimeter" => 1,
            "centimeter" => 10,
            "inch" => 25.4,
            "foot" => 304.8,
            "meter" => 1000,
            _ => null,
        };
        if (size is null)
        {
            Fault("unknown-unit", $"the model's unit '{unit}' is none of the format; taken as millimeter");
        }

        _unit = size ?? 1;
    }

    private ThreeMfObject ReadObject()
    {
        _kept++;
        string id = Id("id");
        var read = new ThreeMfObject(Name(xml.GetAttribute("name") ?? $"object {id}"), Property(("", -1), "pindex"));
        if (!_objects.TryAdd(id, read))
        {
            Fault("duplicate-object", $"two objects have the id '{id}'");
        }

        return read;
    }

    private void Build(string id, Transform3 map)
    {
        // Counted before anything is placed: a dozen nested components can multiply to more than any memory holds.
        _placed += TrianglesOf(id, 0);
        if (_placed > MostPlacedTriangles)
        {
            Fault("too-many", $"components multiply to more than {MostPlacedTriangles} triangles");
        }
        else
        {
            Place(id, map, 0);
        }
    }

    private long TrianglesOf(string id, int depth)
    {
        if (!_objects.TryGetValue(id, out ThreeMfObject? found))
        {
            Fault("missing-object", $"object '{id}' is placed but not there");
            return 0;
        }

        if (depth > DeepestComponents)
        {
            Fault("too-deep", $"components are nested deeper than {DeepestComponents}, perhaps in a circle");
            return 0;
        }

        if (found.Total is null)
        {
            // An object counts at least one, so that empty objects can't multiply without end either.
            long total = found.Triangles.Count + 1;
            foreach ((string child, _) in found.Components)
            {
                total = Math.Min(total + TrianglesOf(child, depth + 1), MostPlacedTriangles + 1);
            }

            found.Total = total;
        }

        return found.Total.Value;
    }

    private void Place(string id, Transform3 map, int depth)
    {
        if (depth > DeepestComponents || !_objects.TryGetValue(id, out ThreeMfObject? found))
        {
            return;
        }

        if (found.Triangles.Count > 0)
        {
            PlaceMesh(found, map);
        }

        foreach ((string child, Transform3 childMap) in found.Components)
        {
            Place(child, childMap.Then(map), depth + 1);
        }
    }

    // Bodies stay in their own coordinates: what a transform adds to them is for doubles, not for the single precision of the audit.
    private void PlaceMesh(ThreeMfObject found, Transform3 map)
    {
        if (!(map.Determinant > 0))
        {
            Fault("mirrored", $"'{found.Name}' is placed by a transform that mirrors or flattens it");
        }

        // The shift is in the model's unit, as the vertices are.
        Transform3 place = map with { Tx = _unit * map.Tx, Ty = _unit * map.Ty, Tz = _unit * map.Tz };
        int outside = 0;
        bool isFirst = found.Built is null;
        foreach (SoupBuilder body in found.Built ??= found.Bodies(_unit, _colours, out outside))
        {
            if (_bodies.Count == MostBodies)
            {
                Fault("too-many", $"it builds more than {MostBodies} bodies");
                return;
            }

            SoupBuilder placed = isFirst ? body : body.Again();
            placed.Place = place;
            _bodies.Add(placed);
            if (outside > 0)
            {
                Fault("vertex-number", $"{outside} triangles of '{found.Name}' name vertices that are not there");
            }
        }
    }

    // Nine numbers of a matrix for row vectors, then the shift.
    private Transform3 Map()
    {
        string? text = xml.GetAttribute("transform");
        if (text is null)
        {
            return Transform3.Identity;
        }

        string[] words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        double[] m = [.. words.Take(13).Select(Parse)];
        if (m.Length != 12)
        {
            Fault("transform", "a transform has other than twelve numbers");
            return Transform3.Identity;
        }

        if (!m.All(double.IsFinite))
        {
            Fault("transform", "a transform has something that is no finite number");
            return Transform3.Identity;
        }

        return new Transform3(m[0], m[3], m[6], m[9], m[1], m[4], m[7], m[10], m[2], m[5], m[8], m[11]);
    }

    // A triangle without a group of its own has the object's property as a whole.
    private (string Group, int Index) Property((string Group, int Index) otherwise, string place) =>
        xml.GetAttribute("pid") is not null ? (Id("pid"), Index(place)) : otherwise;

    // Equal names are kept once.
    private string Id(string attribute) => xml.NameTable.Add(Name(xml.GetAttribute(attribute) ?? ""));

    private static string Name(string text) => text.Length <= LongestId ? text : text[..LongestId];

    private double Number(string attribute) => Parse(xml.GetAttribute(attribute) ?? "");

    // What is no number becomes NaN, which is told with its triangle.
    private static double Parse(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;

    private int Index(string attribute) =>
        int.TryParse(xml.GetAttribute(attribute), NumberStyles.None, CultureInfo.InvariantCulture, out int value) ? value : -1;

    private void Fault(string code, string message)
    {
        // The same fault a thousand times says no more than once.
        var fault = new FileFault(code, message);
        if (!_faults.Contains(fault) && _faults.Count < 100)
        {
            _faults.Add(fault);
        }
    }
}
