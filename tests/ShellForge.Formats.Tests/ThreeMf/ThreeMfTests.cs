using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;
using System.Xml.Linq;
using FsCheck.Xunit;
using ShellForge.Formats.Soup;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Tests.ThreeMf;

public class ThreeMfTests
{
    private static readonly XNamespace Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

    private static PrintJob Job(string name, params Mesh[] meshes) =>
        new(name, [.. meshes.Select((mesh, i) => new PrintBody($"{name} {i}", mesh, $"filament {i}", "#10a0ff"))]);

    private static byte[] Written(params PrintJob[] jobs)
    {
        using var stream = new MemoryStream();
        ThreeMfWriter.Write(stream, "Harbour & <light>", PlateLayout.Place([.. jobs], 200, 10));
        return stream.ToArray();
    }

    private static XElement Model(byte[] package)
    {
        using var archive = new ZipArchive(new MemoryStream(package));
        using Stream model = archive.GetEntry("3D/3dmodel.model")!.Open();
        return XDocument.Load(model).Root!;
    }

    private static byte[] Package(string model, string? relationships = null)
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Put(archive, "_rels/.rels", relationships
                ?? "<Relationships><Relationship Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\" Target=\"/m\"/></Relationships>");
            Put(archive, "m", model);
        }

        return stream.ToArray();
    }

    private static void Put(ZipArchive archive, string name, string text)
    {
        using Stream entry = archive.CreateEntry(name).Open();
        entry.Write(Encoding.UTF8.GetBytes(text));
    }

    private static SoupFile Read(byte[] package) => ThreeMfReader.Read(new MemoryStream(package));

    private static string Tetrahedron(string id) =>
        $"<object id='{id}' name='body {id}'><mesh><vertices><vertex x='0' y='0' z='0'/><vertex x='1' y='0' z='0'/><vertex x='0' y='1' z='0'/>"
        + "<vertex x='0' y='0' z='1'/></vertices><triangles><triangle v1='0' v2='2' v3='1'/><triangle v1='0' v2='1' v3='3'/>"
        + "<triangle v1='0' v2='3' v3='2'/><triangle v1='1' v2='2' v3='3'/></triangles></mesh></object>";

    [Fact]
    public void The_model_is_in_millimetres_with_a_title_and_one_named_object_a_body()
    {
        XElement model = Model(Written(Job("tub", Bodies.Tetrahedron(10)), Job("cover", Bodies.Tetrahedron(20))));

        Assert.Equal("millimeter", model.Attribute("unit")!.Value);
        Assert.Equal("Harbour & <light>", model.Elements(Core + "metadata").Single(m => m.Attribute("name")!.Value == "Title").Value);
        Assert.Equal(["tub 0", "cover 0"], model.Descendants(Core + "object").Select(o => o.Attribute("name")!.Value));
        Assert.Equal(2, model.Descendants(Core + "item").Count());
    }

    [Fact]
    public void Bodies_printed_together_are_components_of_one_object()
    {
        XElement model = Model(Written(Job("cover", Bodies.Tetrahedron(10), Bodies.Tetrahedron(5))));

        string item = Assert.Single(model.Descendants(Core + "item")).Attribute("objectid")!.Value;
        XElement joined = model.Descendants(Core + "object").Single(o => o.Attribute("id")!.Value == item);
        Assert.Equal("cover", joined.Attribute("name")!.Value);
        Assert.Equal(2, joined.Descendants(Core + "component").Count());
        Assert.Equal(["filament 0", "filament 1"], model.Descendants(Core + "base").Select(b => b.Attribute("name")!.Value));
    }

    [Fact]
    public void The_same_input_gives_the_same_bytes() =>
        Assert.Equal(Written(Job("tub", Bodies.Tetrahedron(10))), Written(Job("tub", Bodies.Shuffled(Bodies.Tetrahedron(10), 5))));

    [Property]
    public void Every_lattice_coordinate_comes_back_to_the_bit_where_it_is_not_moved(int seed)
    {
        Mesh mesh = Bodies.Random(seed, 10);
        using var stream = new MemoryStream();
        ThreeMfWriter.Write(stream, "t", [new PlacedJob(Job("tub", mesh), default)]);

        LooseTriangles body = Assert.Single(Read(stream.ToArray()).Bodies).Triangles;

        Point3[] expected = [.. mesh.Triangles.Select(v => mesh.Vertices[v].ToMillimetres()).OrderBy(p => (p.X, p.Y, p.Z))];
        Point3[] actual = [.. body.Coordinates.Chunk(3).Select(c => new Point3(c[0], c[1], c[2])).OrderBy(p => (p.X, p.Y, p.Z))];
        Assert.Equal(expected, actual);
    }

    [Fact]
    public void Jobs_lie_side_by_side_in_the_positive_octant()
    {
        ImmutableArray<PlacedJob> placed = PlateLayout.Place(
            [Job("a", Bodies.Tetrahedron(90, -40)), Job("b", Bodies.Tetrahedron(90)), Job("c", Bodies.Tetrahedron(30, 7))], 200, 10);

        Assert.Equal([new Point3(40, 40, 40), new Point3(100, 0, 0), new Point3(-7, 100 - 7, -7)], placed.Select(p => p.Shift));
    }

    [Fact]
    public void Units_transforms_and_components_are_applied()
    {
        SoupFile file = Read(Package(
            $"<model unit='inch'><resources>{Tetrahedron("1")}<object id='2'><components><component objectid='1' transform='0 1 0 -1 0 0 0 0 1 10 0 0'/>"
            + "</components></object></resources><build><item objectid='2' transform='1 0 0 0 1 0 0 0 1 0 0 2'/></build></model>"));

        Assert.Empty(file.Faults);
        SoupBody body = Assert.Single(file.Bodies);
        Assert.Equal("body 1", body.Name);

        // Vertex 2, (0, 1, 0): a quarter turn takes it to (-1, 0, 0), then 10 along x and 2 up, in inches.
        Assert.Equal([(float)(9 * 25.4), 0, (float)(2 * 25.4)], body.Triangles.Coordinates[3..6].ToArray());
    }

    [Theory]
    [InlineData("<model><resources/><build><item objectid='9'/></build></model>", "missing-object")]
    [InlineData("<model><resources/></model>", "no-build")]
    [InlineData("<model unit='furlong'><build/></model>", "unknown-unit")]
    [InlineData("<model><resources><object id='1'><components><component objectid='1'/></components></object></resources><build><item objectid='1'/></build></model>", "too-deep")]
    [InlineData("<model><resources><object id='1'><mesh><vertices><vertex x='0' y='0' z='0'/></vertices><triangles><triangle v1='0' v2='0' v3='7'/></triangles></mesh></object></resources><build><item objectid='1'/></build></model>", "vertex-number")]
    [InlineData("<model><resources><object id='1'><mesh><vertices><vertex x='nan' y='0' z='0'/></vertices><triangles><triangle v1='0' v2='0' v3='0'/></triangles></mesh></object></resources><build><item objectid='1'/></build></model>", "not-a-number")]
    [InlineData("<model", "syntax")]
    [InlineData("<!DOCTYPE m [<!ENTITY a 'aaaaaaaa'>]><model>&a;</model>", "syntax")]
    public void What_is_wrong_with_a_model_is_told(string model, string code) =>
        Assert.Contains(Read(Package(model)).Faults, fault => fault.Code == code);

    [Fact]
    public void Components_that_multiply_are_bounded()
    {
        var model = new StringBuilder($"<model><resources>{Tetrahedron("0")}");
        for (int level = 1; level <= 12; level++)
        {
            string children = string.Concat(Enumerable.Repeat($"<component objectid='{level - 1}'/>", 10));
            model.Append($"<object id='{level}'><components>{children}</components></object>");
        }

        model.Append("</resources><build><item objectid='12'/></build></model>");

        Assert.Contains(Read(Package(model.ToString())).Faults, fault => fault.Code == "too-many");
    }

    [Fact]
    public void What_is_no_archive_is_told() =>
        Assert.Equal("not-a-package", Assert.Single(Read([1, 2, 3, 4, 5]).Faults).Code);

    [Fact]
    public void A_package_without_a_model_is_told() =>
        Assert.Equal("no-model", Assert.Single(Read(Package("<model/>", "<Relationships/>")).Faults).Code);

    [Property(MaxTest = 200)]
    public void Any_damage_gives_a_result_and_never_an_exception(int seed)
    {
        var random = new Random(seed);
        byte[] bytes = Written(Job("tub", Bodies.Tetrahedron(10)));
        for (int i = random.Next(1, 6); i > 0; i--)
        {
            bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        }

        SoupFile file = Read(bytes[..random.Next(bytes.Length + 1)]);

        Assert.True(file.Bodies.Length > 0 || file.Faults.Length > 0);
    }
}
