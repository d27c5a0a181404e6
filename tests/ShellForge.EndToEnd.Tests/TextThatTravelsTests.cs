using System.IO.Compression;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// Free texts of a board file in every kind of file that is written: each stays text there. What a browser makes of them, the browser's
/// tests say.
/// </summary>
public sealed class TextThatTravelsTests : IClassFixture<TextThatTravelsTests.Made>
{
    private readonly Made _made;

    public TextThatTravelsTests(Made made) => _made = made;

    [Fact]
    public void Pictures_and_models_are_well_formed_and_hold_no_element_of_a_text()
    {
        string[] foreign = ["img", "script", "b", "u", "iframe"];
        int looked = 0;
        foreach ((string name, string xml) in Xml())
        {
            XDocument document = XDocument.Parse(xml);
            Assert.DoesNotContain(
                document.Descendants(), element => foreign.Contains(element.Name.LocalName, StringComparer.OrdinalIgnoreCase));
            Assert.DoesNotContain(
                document.Descendants().Attributes(), each => each.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
            looked += name.Length > 0 ? 1 : 0;
        }

        Assert.True(looked > 10, $"only {looked} looked at");
    }

    [Fact]
    public void Documents_for_machines_hold_the_very_text()
    {
        foreach (string path in _made.Files(".json"))
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(path));
            Assert.Equal(JsonValueKind.Object, document.RootElement.ValueKind);
        }

        using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(_made.At("report.json")));
        Assert.Equal(HostileBoard.Name, report.RootElement.GetProperty("name").GetString());
        Assert.Contains(HostileBoard.Reason, _made.Findings(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_holds_no_tag_of_a_text()
    {
        string page = File.ReadAllText(_made.At("report.html"));

        Assert.All(
            (string[])["<img src=x", "<svg/onload", "<script>hurt", "<iframe", "<b>&"],
            tag => Assert.DoesNotContain(tag, page, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void The_header_for_firmware_compiles_and_files_for_cad_are_plain_letters()
    {
        string header = File.ReadAllText(_made.At("leds.h"));
        for (int at = header.IndexOf("/*", StringComparison.Ordinal); at >= 0; at = header.IndexOf("/*", at + 2, StringComparison.Ordinal))
        {
            int end = header.IndexOf("*/", at, StringComparison.Ordinal);
            Assert.Contains(header[end + 2], "\r\n \t");
        }

        Assert.DoesNotContain(
            header.Split('\n'), line => line.TrimStart().StartsWith("//", StringComparison.Ordinal) && line.TrimEnd().EndsWith('\\'));
        Assert.All(
            _made.Files(".step"),
            path => Assert.DoesNotContain(File.ReadAllBytes(path), sign => sign is not ((>= 32 and < 127) or 10 or 13)));
        Assert.All(_made.Files(".step"), path => Assert.Equal(0, File.ReadAllText(path).Count(sign => sign == '\'') % 2));
    }

    [Fact]
    public void What_the_terminal_shows_has_no_signs_that_steer_it()
    {
        Assert.DoesNotContain(_made.Told, sign => char.IsControl(sign) && sign != '\n');
        (int exit, string told) = CommandRun.Run(_made.Folder, "check", "\u001b[31mno\u0007.yaml");
        Assert.Equal(3, exit);
        Assert.DoesNotContain(told, sign => char.IsControl(sign) && sign != '\n');
    }

    private IEnumerable<(string Name, string Xml)> Xml()
    {
        foreach (string path in _made.Files(".svg"))
        {
            yield return (path, File.ReadAllText(path));
        }

        foreach (string path in _made.Files(".3mf"))
        {
            using ZipArchive package = ZipFile.OpenRead(path);
            foreach (ZipArchiveEntry entry in package.Entries.Where(e => !e.Name.EndsWith(".png", StringComparison.Ordinal)))
            {
                using var reader = new StreamReader(entry.Open(), Encoding.UTF8);
                yield return (entry.FullName, reader.ReadToEnd());
            }
        }
    }

    /// <summary>The board made once, in every format.</summary>
    public sealed class Made : IDisposable
    {
        private readonly TemporaryFolder _folder = new();

        public Made()
        {
            _folder.Write("board.yaml", HostileBoard.Text);
            (int exit, Told) = CommandRun.Run(_folder.Path, "make", "board.yaml", "-o", "out", "--details", "--formats",
                "stl,3mf,glb,csv,leds,step,paper");
            Assert.True(exit is 0 or 1, Told);
        }

        public string Folder => _folder.Path;

        public string Told { get; }

        public string At(string name) => _folder.File($"out/{name}");

        public string[] Files(string ending)
        {
            string[] found = Directory.GetFiles(_folder.File("out"), "*" + ending);
            Assert.NotEmpty(found);
            return found;
        }

        public string Findings()
        {
            using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(At("report.json")));
            return string.Join('\n', report.RootElement.GetProperty("findings").EnumerateArray()
                .Select(finding => finding.TryGetProperty("accepted", out JsonElement why) ? why.GetString() : ""));
        }

        public void Dispose() => _folder.Dispose();
    }
}
