using System.Globalization;
using System.Text;
using ShellForge.Formats.Soup;
using ShellForge.Formats.ThreeMf;

namespace ShellForge.Formats.Tests.ThreeMf;

/// <summary>Small packages that unpack to more than a reader should keep, each of another thing.</summary>
public class HugeModelTests
{
    private const string Mesh = "<object id='1'><mesh><vertices><vertex x='0' y='0' z='0'/></vertices><triangles><triangle v1='0' v2='0' "
        + "v3='0'/></triangles></mesh></object>";

    [Theory]
    [InlineData("<object id='1'><mesh><vertices>", "<vertex/>", 500_000, "too-many")]
    [InlineData("<object id='1'><mesh><triangles>", "<triangle/>", 500_000, "too-many")]
    [InlineData("<object id='1'><components>", "<component/>", 500_000, "too-many")]
    [InlineData("<colorgroup id='1'>", "<color/>", 500_000, "too-many")]
    [InlineData("", "<object/>", 500_000, "too-many")]
    [InlineData(Mesh + "</resources><build>", "<item objectid='1'/>", 20_000, "too-many")]
    [InlineData("", "<a>", 100_000, "too-deep")]
    [InlineData("<object id='1' name='", "aaaaaaaaaa", 500_000, "not-a-package")]
    [InlineData("<object id='1'>", "aaaaaaaaaa", 500_000, "not-a-package")]
    [InlineData("<object id='1'><![CDATA[", "<aaaaaaaaa", 500_000, "not-a-package")]
    [InlineData("<object id='1'><![CDATA[", "]]<]>--><![CDATA[", 300_000, "not-a-package")]
    [InlineData("<!-- <![CDATA[ --><object id='1'><![CDATA[", "<aaaaaaaaa", 500_000, "not-a-package")]
    [InlineData("<?x <!-- ?><object id='1'><![CDATA[", "<aaaaaaaaa", 500_000, "not-a-package")]
    public void A_package_that_grows_is_told_and_not_kept(string start, string piece, int times, string code)
    {
        byte[] package = ModelPackage.Of(Encoding.UTF8.GetBytes(
            $"<model xmlns='x'><resources>{start}{new StringBuilder().Insert(0, piece, times)}</build></model>"));

        SoupFile read = ThreeMfReader.Read(new MemoryStream(package));

        Assert.Contains(read.Faults, fault => fault.Code == code);
    }

    [Theory]
    [InlineData("<metadata><![CDATA[a < b ]] > c]]></metadata>")]
    [InlineData("<![CDATA[]]]>")]
    [InlineData("<!-- <![CDATA[ -->")]
    [InlineData("<?x <![CDATA[ <!-- ?>")]
    [InlineData("<!---->")]
    public void Sections_comments_and_instructions_end_where_they_do(string between)
    {
        string items = string.Concat(Enumerable.Repeat("<item objectid='1'/>", 8_000));
        byte[] package = ModelPackage.Of(Encoding.UTF8.GetBytes(
            $"<model><resources>{Mesh}</resources>{between}<build>{items}{new StringBuilder().Insert(0, "<x/>", 300_000)}</build></model>"));

        SoupFile read = ThreeMfReader.Read(new MemoryStream(package));

        Assert.Equal(8_000, read.Bodies.Length);
        Assert.DoesNotContain(read.Faults, fault => fault.Code is "not-a-package" or "syntax");
    }

    [Fact]
    public void What_is_kept_of_a_package_is_bounded_by_its_size()
    {
        const int count = 900_000;
        var vertices = new StringBuilder();
        for (int i = 0; i < count; i++)
        {
            vertices.Append(CultureInfo.InvariantCulture, $"<vertex x='{i}' y='{i * 7919 % 100_003}' z='{i * 31 % 1009}'/>");
        }

        byte[] package = ModelPackage.Of(Encoding.UTF8.GetBytes(
            $"<model unit='millimeter'><resources><object id='1'><mesh><vertices>{vertices}</vertices><triangles>"
            + $"<triangle v1='0' v2='1' v3='{count - 1}'/></triangles></mesh></object></resources>"
            + "<build><item objectid='1'/></build></model>"));

        SoupFile read = ThreeMfReader.Read(new MemoryStream(package));

        // A triangle on the last vertex is read, so all before it were kept.
        Assert.Empty(read.Faults);
        Assert.Equal(1, Assert.Single(read.Bodies).Triangles.TriangleCount);
    }

    [Fact]
    public void A_body_that_is_placed_many_times_is_kept_once()
    {
        string triangles = string.Concat(Enumerable.Repeat("<triangle v1='0' v2='0' v3='0'/>", 1000));
        string items = string.Concat(Enumerable.Repeat("<item objectid='1'/>", 4000));
        byte[] package = ModelPackage.Of(Encoding.UTF8.GetBytes(
            $"<model><resources><object id='1'><mesh><vertices><vertex x='1' y='0' z='0'/></vertices><triangles>{triangles}</triangles>"
            + $"</mesh></object></resources><build><item objectid='1' transform='1 0 0 0 1 0 0 0 1 5 0 0'/>{items}</build></model>"));
        long before = GC.GetAllocatedBytesForCurrentThread();

        SoupFile read = ThreeMfReader.Read(new MemoryStream(package));

        Assert.Equal(4001, read.Bodies.Length);
        Assert.All(read.Bodies, body => Assert.Same(read.Bodies[0].Triangles, body.Triangles));
        Assert.Equal(1000, read.Bodies[0].Triangles.TriangleCount);
        Assert.Equal((5, 0), (read.Bodies[0].Place.Tx, read.Bodies[4000].Place.Tx));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, 40L << 20);
    }

    [Fact]
    public void Reading_a_package_can_be_stopped()
    {
        byte[] package = ModelPackage.Of(Encoding.UTF8.GetBytes($"<model><resources>{Mesh}</resources><build/></model>"));

        Assert.Throws<OperationCanceledException>(() =>
            ThreeMfReader.Read(new MemoryStream(package), new CancellationToken(canceled: true)));
    }
}
