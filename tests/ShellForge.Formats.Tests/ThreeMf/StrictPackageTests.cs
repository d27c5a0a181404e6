using System.IO.Compression;
using System.Text;
using ShellForge.Formats.ThreeMf;
using ShellForge.Testing;

namespace ShellForge.Formats.Tests.ThreeMf;

/// <summary>Packages held against the specification by a reader that knows nothing of the writer.</summary>
public class StrictPackageTests
{
    private static readonly byte[] Picture = [0x89, 0x50, 0x4E, 0x47, 13, 10, 26, 10];

    private static byte[] Written()
    {
        using var stream = new MemoryStream();
        PrintFilament black = new("black", "#10a0ff");
        PrintFilament white = new("white", "#fafafa");
        PrintJob tub = new("tub", [new PrintBody("tub", Bodies.Tetrahedron(10), black)]);
        PrintJob cover = new("cover",
            [new PrintBody("cover", Bodies.Tetrahedron(30, -7), black), new PrintBody("diffuser", Bodies.Tetrahedron(5), white)]);
        ThreeMfWriter.Write(stream, "Harbour & <light>", Assert.Single(PlateLayout.Arrange([tub, cover], new PrintBed(200, 200, 0, 2))),
            Picture);
        return stream.ToArray();
    }

    // The package with a part's text changed; every change must find its place.
    private static byte[] Changed(string part, string from, string to)
    {
        using var stream = new MemoryStream();
        stream.Write(Written());
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            ZipArchiveEntry entry = archive.GetEntry(part)!;
            string text;
            using (var reader = new StreamReader(entry.Open()))
            {
                text = reader.ReadToEnd();
            }

            Assert.Contains(from, text, StringComparison.Ordinal);
            int at = text.IndexOf(from, StringComparison.Ordinal);
            entry.Delete();
            using Stream changed = archive.CreateEntry(part).Open();
            changed.Write(Encoding.UTF8.GetBytes(text[..at] + to + text[(at + from.Length)..]));
        }

        return stream.ToArray();
    }

    [Fact]
    public void What_is_written_follows_the_specification() => Assert.Empty(StrictPackage.FaultsOf(Written()));

    [Theory]
    [InlineData("mooring-beacon")]
    [InlineData("tide-lamp")]
    [InlineData("dome-dial")]
    public void The_samples_follow_the_specification(string sample) =>
        Assert.All(Packages(sample), package => Assert.Empty(StrictPackage.FaultsOf(File.ReadAllBytes(package))));

    private static string[] Packages(string sample)
    {
        string[] packages = Directory.GetFiles(Repository.At("out-samples", sample), "*.3mf");
        Assert.NotEmpty(packages);
        return packages;
    }

    [Theory]
    [InlineData("[Content_Types].xml", "Extension=\"png\"", "Extension=\"jpg\"", "not of type image/png")]
    [InlineData("[Content_Types].xml", "3dmanufacturing-3dmodel+xml", "3dmanufacturing", "not of type application")]
    [InlineData("_rels/.rels", "/3D/3dmodel.model", "/3D/other.model", "a relationship leads to")]
    [InlineData("_rels/.rels", "Id=\"thumbnail\"", "Id=\"model\"", "share an id")]
    [InlineData("_rels/.rels", "2013/01/3dmodel", "2013/01/model", "0 models")]
    [InlineData("3D/3dmodel.model", "millimeter", "furlong", "unit")]
    [InlineData("3D/3dmodel.model", "name=\"Title\"", "name=\"Heading\"", "metadata of the name")]
    [InlineData("3D/3dmodel.model", "name=\"Description\"", "name=\"Title\"", "share a name")]
    [InlineData("3D/3dmodel.model", "#10A0FF", "blue", "colour")]
    [InlineData("3D/3dmodel.model", "<object id=\"4\"", "<object id=\"3\"", "the id 3 is taken")]
    [InlineData("3D/3dmodel.model", "pindex=\"0\"", "pindex=\"2\"", "no such material")]
    [InlineData("3D/3dmodel.model", "pid=\"1\"", "pid=\"9\"", "is of material 9")]
    [InlineData("3D/3dmodel.model", "type=\"model\"", "type=\"part\"", "another type")]
    [InlineData("3D/3dmodel.model", "type=\"model\"", "type=\"model\" weight=\"2\"", "an attribute weight")]
    [InlineData("3D/3dmodel.model", "v1=\"0\"", "v1=\"7\"", "triangle of the vertices")]
    [InlineData("3D/3dmodel.model", "v1=\"0\"", "v1=\"1\"", "object 3")]
    [InlineData("3D/3dmodel.model", "v1=\"0\"", "v1=\"-1\"", "has the v1")]
    [InlineData("3D/3dmodel.model", " x=\"0\"", " x=\"1,5\"", "are no numbers")]
    [InlineData("3D/3dmodel.model", "<item objectid=\"3\"", "<item objectid=\"8\"", "which does not come before it")]
    [InlineData("3D/3dmodel.model", "transform=\"1 0 0 0", "transform=\"-1 0 0 0", "mirrors")]
    [InlineData("3D/3dmodel.model", "transform=\"1 0 0 0 1 0 0 0 1 ", "transform=\"1 0 0 0 1 0 0 0 1 -9", "positive octant")]
    [InlineData("3D/3dmodel.model", "<item objectid=\"4\"", "<item objectid=\"3\"", "nobody uses object 4")]
    [InlineData("3D/3dmodel.model", "pid=\"2\" p1=\"0\"", "pid=\"2\" p1=\"1\"", "has no such material")]
    [InlineData("3D/3dmodel.model", "pid=\"2\" p1", "pid=\"5\" p1", "is of material 5")]
    [InlineData("3D/3dmodel.model", "slic3rpe:Version3mf", "other:Version3mf", "metadata of the name")]
    [InlineData("3D/3dmodel.model", "<build>", "<plate /><build>", "the model holds")]
    public void What_breaks_the_specification_is_found(string part, string from, string to, string fault) =>
        Assert.Contains(StrictPackage.FaultsOf(Changed(part, from, to)), told => told.Contains(fault, StringComparison.Ordinal));

    [Fact]
    public void A_mesh_that_is_open_or_inside_out_is_found()
    {
        byte[] twisted = Changed("3D/3dmodel.model", "v2=\"1\" v3=\"2\"", "v2=\"2\" v3=\"1\"");
        Assert.Contains(StrictPackage.FaultsOf(twisted),
            told => told.Contains("edge twice", StringComparison.Ordinal) || told.Contains("is open", StringComparison.Ordinal));
    }
}
