using System.IO.Compression;
using System.Text;
using System.Xml.Linq;
using FsCheck.Xunit;
using ShellForge.Formats.Soup;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Formats.Tests.ThreeMf;

public class ThreeMfTests
{
    private static readonly XNamespace Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
    private static readonly XNamespace Materials = "http://schemas.microsoft.com/3dmanufacturing/material/2015/02";

    private static PrintJob Job(string name, params Mesh[] meshes) =>
        new(name, [.. meshes.Select((mesh, i) => new PrintBody($"{name} {i}", mesh, new PrintFilament($"filament {i}", $"#10a0f{i}")))]);

    private static byte[] Written(params PrintJob[] jobs)
    {
        using var stream = new MemoryStream();
        ThreeMfWriter.Write(stream, "Harbour & <light>", Assert.Single(PlateLayout.Arrange([.. jobs], new PrintBed(210, 210, 5, 2))));
        return stream.ToArray();
    }

    private static string Text(byte[] package, string part)
    {
        using var archive = new ZipArchive(new MemoryStream(package));
        using var reader = new StreamReader(archive.GetEntry(part)!.Open());
        return reader.ReadToEnd();
    }

    private static XElement Model(byte[] package)
    {
        using var archive = new ZipArchive(new MemoryStream(package));
        using Stream model = archive.GetEntry("3D/3dmodel.model")!.Open();
        return XDocument.Load(model).Root!;
    }

    private static byte[] Package(string model, string? relationships = null) =>
        ModelPackage.Of(Encoding.UTF8.GetBytes(model), relationships);

    private static SoupFile Read(byte[] package) => ThreeMfReader.Read(new MemoryStream(package));

    private static string Tetrahedron(string id) =>
        $"<object id='{id}' name='body {id}'><mesh><vertices><vertex x='0' y='0' z='0'/><vertex x='1' y='0' z='0'/><vertex x='0' y='1' "
            + $"z='0'/>"
        + "<vertex x='0' y='0' z='1'/></vertices><triangles><triangle v1='0' v2='2' v3='1'/><triangle v1='0' v2='1' v3='3'/>"
        + "<triangle v1='0' v2='3' v3='2'/><triangle v1='1' v2='2' v3='3'/></triangles></mesh></object>";

    [Fact]
    public void The_model_is_in_millimetres_with_a_title_and_one_named_object_a_job()
    {
        XElement model = Model(Written(Job("tub", Bodies.Tetrahedron(10)), Job("cover", Bodies.Tetrahedron(20))));

        Assert.Equal("millimeter", model.Attribute("unit")!.Value);
        Assert.Equal("Harbour & <light>", model.Elements(Core + "metadata").Single(m => m.Attribute("name")!.Value == "Title").Value);
        Assert.Equal(["tub", "cover"], model.Descendants(Core + "object").Select(o => o.Attribute("name")!.Value));
        Assert.Equal(2, model.Descendants(Core + "item").Count());
    }

    [Fact]
    public void Bodies_printed_together_are_one_object_of_one_mesh_whose_triangles_say_their_filament()
    {
        XElement model = Model(Written(Job("cover", Bodies.Tetrahedron(10), Bodies.Tetrahedron(5))));

        XElement item = Assert.Single(model.Descendants(Core + "item"));
        XElement cover = Assert.Single(model.Descendants(Core + "object"));
        Assert.Equal(item.Attribute("objectid")!.Value, cover.Attribute("id")!.Value);
        Assert.Equal(("cover", "1", "0"),
            (cover.Attribute("name")!.Value, cover.Attribute("pid")!.Value, cover.Attribute("pindex")!.Value));
        Assert.Equal(8, cover.Descendants(Core + "vertex").Count());
        Assert.Equal([null, null, null, null, "2", "2", "2", "2"],
            cover.Descendants(Core + "triangle").Select(t => t.Attribute("pid")?.Value));
        Assert.Equal(["#10A0F0", "#10A0F1"], model.Descendants(Materials + "color").Select(c => c.Attribute("color")!.Value));
    }

    [Fact]
    public void The_part_for_slicers_says_which_triangles_are_which_body_and_of_which_filament()
    {
        byte[] package = Written(Job("tub", Bodies.Tetrahedron(20)), Job("cover", Bodies.Tetrahedron(10), Bodies.Tetrahedron(5)));

        XElement config = XDocument.Parse(Text(package, "Metadata/Slic3r_PE_model.config")).Root!;
        string[] told = [.. config.Descendants("volume").Select(volume => string.Join(
            ' ', volume.Parent!.Attribute("id")!.Value, volume.Attribute("firstid")!.Value, volume.Attribute("lastid")!.Value,
            Of(volume, "name"), Of(volume, "extruder")))];

        Assert.Equal(["3 0 3 tub 0 1", "4 0 3 cover 0 1", "4 4 7 cover 1 2"], told);
        Assert.Equal("1",
            Model(package).Elements(Core + "metadata").Single(m => m.Attribute("name")!.Value == "slic3rpe:Version3mf").Value);

        static string Of(XElement volume, string key) =>
            volume.Elements("metadata").Single(m => m.Attribute("key")!.Value == key).Attribute("value")!.Value;
    }

    [Fact]
    public void No_number_is_written_as_minus_nought()
    {
        byte[] package = Written(Job("tub", Bodies.Tetrahedron(10, -5)), Job("cover", Bodies.Tetrahedron(30)));

        Assert.DoesNotContain("-0\"", Text(package, "3D/3dmodel.model"), StringComparison.Ordinal);
        Assert.DoesNotContain("-0 ", Text(package, "3D/3dmodel.model"), StringComparison.Ordinal);
    }

    [Fact]
    public void Bodies_of_one_mesh_are_read_apart_by_their_colours_where_each_closes_by_itself()
    {
        SoupFile file = Read(Written(Job("cover", Bodies.Tetrahedron(10), Bodies.Tetrahedron(10))));

        Assert.Empty(file.Faults);
        Assert.Equal(["cover, #10A0F0", "cover, #10A0F1"], file.Bodies.Select(body => body.Name));
        Assert.All(file.Bodies, body => Assert.True(MeshAudit.Run(body.Triangles).IsClean));
    }

    [Fact]
    public void Colours_that_only_paint_a_body_do_not_take_it_apart()
    {
        string painted = Tetrahedron("1").Replace("<triangle v1='0' v2='2'", "<triangle pid='7' p1='0' v1='0' v2='2'",
            StringComparison.Ordinal);

        SoupBody body =
            Assert.Single(Read(Package($"<model><resources>{painted}</resources><build><item objectid='1'/></build></model>")).Bodies);

        Assert.Equal("body 1", body.Name);
        Assert.Equal(4, body.Triangles.TriangleCount);
    }

    [Fact]
    public void The_same_input_gives_the_same_bytes() =>
        Assert.Equal(
            Written(Job("tub", Bodies.Tetrahedron(10))),
            Written(Job("tub", Bodies.Shuffled(Bodies.Tetrahedron(10), new Draws([50000, 30000, 60000, 20000, 40000])))));

    [Property(Arbitrary = [typeof(Draws.Rows)])]
    public void Every_lattice_coordinate_comes_back_to_the_bit_wherever_it_is_placed(Draws draws)
    {
        Mesh mesh = Bodies.Drawn(draws, 10);
        using var stream = new MemoryStream();
        PrintJob job = Job("tub", mesh);
        ThreeMfWriter.Write(stream, "t", new PrintPlate([new PlacedJob(job, new Point3(130.125, 77, 3))], [job.Bodies[0].Filament]));

        LooseTriangles body = Assert.Single(Read(stream.ToArray()).Bodies).Triangles;

        Point3[] expected = [.. mesh.Triangles.Select(v => mesh.Vertices[v].ToMillimetres()).OrderBy(p => (p.X, p.Y, p.Z))];
        Point3[] actual = [.. body.Coordinates.Chunk(3).Select(c => new Point3(c[0], c[1], c[2])).OrderBy(p => (p.X, p.Y, p.Z))];
        Assert.Equal(expected, actual);
    }

    [Fact]
    public void Units_transforms_and_components_are_applied()
    {
        SoupFile file = Read(Package(
            $"<model unit='inch'><resources>{Tetrahedron("1")}<object id='2'><components><component objectid='1' transform='0 1 0 -1 0 0 "
                + $"0 0 1 10 0 0'/>"
            + "</components></object></resources><build><item objectid='2' transform='1 0 0 0 1 0 0 0 1 0 0 2'/></build></model>"));

        Assert.Empty(file.Faults);
        SoupBody body = Assert.Single(file.Bodies);
        Assert.Equal("body 1", body.Name);

        // Vertex 2, (0, 1, 0): a quarter turn takes it to (-1, 0, 0), then 10 along x and 2 up, in inches.
        Assert.Equal([0, 25.4f, 0], body.Triangles.Coordinates[3..6].ToArray());
        Assert.Equal(new Point3(9 * 25.4, 0, 2 * 25.4), body.Place.Apply(new Point3(0, 25.4, 0)));
    }

    [Theory]
    [InlineData("<model><resources/><build><item objectid='9'/></build></model>", "missing-object")]
    [InlineData("<model><resources/></model>", "no-build")]
    [InlineData("<model unit='furlong'><build/></model>", "unknown-unit")]
    [InlineData("<model><resources><object id='1'><components><component objectid='1'/></components></object></resources><build><item "
        + "objectid='1'/></build></model>", "too-deep")]
    [InlineData("<model><resources><object id='1'><mesh><vertices><vertex x='0' y='0' z='0'/></vertices><triangles><triangle v1='0' "
        + "v2='0' v3='7'/></triangles></mesh></object></resources><build><item objectid='1'/></build></model>", "vertex-number")]
    [InlineData("<model><resources><object id='1'><mesh><vertices><vertex x='nan' y='0' z='0'/></vertices><triangles><triangle v1='0' "
        + "v2='0' v3='0'/></triangles></mesh></object></resources><build><item objectid='1'/></build></model>", "not-a-number")]
    [InlineData("<model><resources><object id='1'><mesh><vertices><vertex x='0' y='0' z='0'/></vertices><triangles><triangle v1='0' "
        + "v2='0' v3='0'/></triangles></mesh></object></resources><build><item objectid='1' transform='-1 0 0 0 1 0 0 0 1 0 0 "
        + "0'/></build></model>", "mirrored")]
    [InlineData("<model><build><item objectid='1' transform='nan 0 0 0 1 0 0 0 1 0 0 0'/></build></model>", "transform")]
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

    [Property(MaxTest = 200, Arbitrary = [typeof(Draws.Rows)])]
    public void Any_damage_gives_a_result_and_never_an_exception(Draws draws)
    {
        byte[] bytes = Written(Job("tub", Bodies.Tetrahedron(10)));
        for (int i = draws.Next(1, 6); i > 0; i--)
        {
            bytes[draws.Next(bytes.Length)] = (byte)draws.Next(256);
        }

        SoupFile file = Read(bytes[..draws.Next(bytes.Length + 1)]);

        Assert.True(file.Bodies.Length > 0 || file.Faults.Length > 0);
    }
}
