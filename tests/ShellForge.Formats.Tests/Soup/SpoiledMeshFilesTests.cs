using System.Diagnostics;
using System.Text;
using ShellForge.Formats.Soup;
using ShellForge.Formats.Stl;
using ShellForge.Formats.Tests.ThreeMf;
using ShellForge.Formats.ThreeMf;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Formats.Tests.Soup;

/// <summary>
/// Mesh files spoiled in what they say rather than in their bytes: a result or faults in words, soon, in bounded memory. A fixed number
/// here, minutes of it on demand: see <see cref="FuzzRuns"/>.
/// </summary>
public class SpoiledMeshFilesTests(ITestOutputHelper output)
{
    private const int Runs = 400;
    private const long MostMemory = 600L << 20;

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(5);

    private const string Model = """
        <?xml version="1.0" encoding="UTF-8"?>
        <model unit="millimeter" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
        <resources>
        <object id="1" type="model" name="tub"><mesh><vertices>
        <vertex x="0" y="0" z="0"/><vertex x="1" y="0" z="0"/><vertex x="0" y="1" z="0"/><vertex x="0" y="0" z="1"/>
        </vertices><triangles>
        <triangle v1="0" v2="2" v3="1"/><triangle v1="0" v2="1" v3="3"/><triangle v1="0" v2="3" v3="2"/><triangle v1="1" v2="2" v3="3"/>
        </triangles></mesh></object>
        <object id="2"><components>
        <component objectid="1" transform="1 0 0 0 1 0 0 0 1 5 5 0"/><component objectid="1"/>
        </components></object>
        </resources>
        <build><item objectid="2"/><item objectid="1" transform="1 0 0 0 1 0 0 0 1 20 0 0"/></build>
        </model>
        """;

    private const string Text = """
        solid tub
        facet normal 0 0 1
        outer loop
        vertex 0 0 0
        vertex 1 0 0
        vertex 0 1 0
        endloop
        endfacet
        endsolid tub
        """;

    private static readonly string[] Pieces =
    [
        "NaN", "Infinity", "1e999", "-0", "99999999999999999999", "-1", "4294967296", "", " ", "\0", "\u0007", "\ufeff", "&amp;", "&#0;",
        "&lol;", "&#x41;", "<!DOCTYPE m [<!ENTITY lol SYSTEM \"file:///etc/passwd\">]>", "<!--", "-->", "<![CDATA[", "]]>", "<?x", "?>",
        "<", ">", "/>", "\"", "'", "=", ":",
        "objectid=\"2\"", "id=\"1\"", "unit=\"micron\"", "unit=\"league\"", "<component objectid=\"2\"/>", "<item objectid=\"9\"/>",
        "transform=\"1 0 0 0 1 0 0 0 1 1e300 0 0\"", "transform=\"0 0 0 0 0 0 0 0 0 0 0 0\"", "transform=\"1 2 3\"", "v1=\"7\"",
        "<a:b xmlns:a='x'>", "xmlns:m=\"http://schemas.microsoft.com/3dmanufacturing/material/2015/02\"", "requiredextensions=\"q\"",
        "<vertices>", "</vertices>", "<mesh>", "</mesh>", "<triangles>", "</model>", "solid", "endsolid", "facet", "vertex", "endloop",
        "\r", "\n\n",
    ];

    [Theory]
    [InlineData("3mf")]
    [InlineData("stl")]
    public void Any_spoiled_text_gives_a_result_or_faults_soon_and_in_little_memory(string kind)
    {
        var mutator = new Mutator(FuzzRuns.Dice(17), Pieces);
        byte[][] seeds = [Encoding.UTF8.GetBytes(kind == "3mf" ? Model : Text)];
        var time = new FuzzRuns(Runs);
        int read = 0;
        int refused = 0;
        while (time.Next())
        {
            byte[] bytes = mutator.Next(seeds);
            string text = Encoding.UTF8.GetString(bytes);
            long before = GC.GetAllocatedBytesForCurrentThread();
            TimeSpan began = Environment.CpuUsage.TotalTime;
            var one = Stopwatch.StartNew();
            SoupFile file = kind == "3mf" ? ThreeMfReader.Read(new MemoryStream(ModelPackage.Of(bytes))) : StlReader.Read(bytes);
            TimeSpan busy = Environment.CpuUsage.TotalTime - began;

            Assert.True(file.Bodies.Length > 0 || file.Faults.Length > 0, text);
            Assert.True((busy < one.Elapsed ? busy : one.Elapsed) < Longest, $"{busy.TotalSeconds:0.0} s for {text}");
            Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < MostMemory, text);
            Assert.All(file.Bodies, body => Assert.DoesNotContain(body.Name, char.IsControl));
            Assert.All(file.Faults, fault => Assert.DoesNotContain("root:", fault.Message, StringComparison.Ordinal));
            read += file.Faults.Length == 0 ? 1 : 0;
            refused += file.Faults.Length == 0 ? 0 : 1;
        }

        output.WriteLine($"{kind}: {time.Tried} files, {read} without a fault");
        Assert.True(read > 0 && refused > time.Tried / 4, $"{read} without a fault, {refused} with one");
    }
}
