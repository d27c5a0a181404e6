using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using ShellForge.Cli;
using ShellForge.Formats.Stl;
using ShellForge.Geometry.Auditing;
using ShellForge.Output.Files;
using ShellForge.Output.Page;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// The shipped boards, made again and compared byte by byte with what lies beside them. <c>SHELLFORGE_ACCEPT=1</c> accepts what comes
/// out.
/// </summary>
public class SamplesTests
{
    public static TheoryData<string> Names =>
        [.. Repository.Samples.Select(folder => Path.GetFileName(folder)!)];

    [Fact]
    public void There_are_three_samples() => Assert.Equal(3, Names.Count);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_sample_is_what_its_board_makes_and_every_part_is_sound(string name)
    {
        using var fresh = new TemporaryFolder();
        string shipped = Repository.At("out-samples", name);

        (int exit, string told) = CommandRun.Run(shipped, "make", "board.yaml", "-o", fresh.Path);

        Assert.True(exit == (int)ExitCode.Done, told);

        // A place on an axis is at 0, not at -0.
        Assert.DoesNotMatch(@"[( ]-0(\.0+)?[,)]", told);
        Assert.DoesNotMatch(@"[xyz] -0\.0\b", File.ReadAllText(Path.Combine(fresh.Path, HousingFiles.PageFile)));
        if (Golden.Accepting)
        {
            Accept(fresh.Path, shipped);
        }

        Assert.Equal(Hashes(shipped), Hashes(fresh.Path));
        Assert.InRange(new FileInfo(Path.Combine(fresh.Path, HousingFiles.PageFile)).Length, 100_000, 1_500_000);
        Assert.Equal(Golden.Text($"samples/{name}.txt", Summary(fresh.Path)), Summary(fresh.Path));
        foreach (string path in Directory.EnumerateFiles(fresh.Path, "*.stl"))
        {
            LooseTriangles triangles = Assert.Single(StlReader.Read(File.ReadAllBytes(path)).Bodies).Triangles;
            AuditReport audit = MeshAudit.Run(triangles);
            Assert.True(audit.IsClean, $"{Path.GetFileName(path)}: {audit}");
        }
    }

    [Fact]
    public void Formats_are_written_as_asked_and_their_bytes_are_those_of_the_other_run()
    {
        using var fresh = new TemporaryFolder();
        string board = Repository.At("out-samples", "mooring-beacon");

        CommandRun.Run(board, "make", "board.yaml", "-o", fresh.Path, "--formats", "stl,glb");

        Assert.True(File.Exists(fresh.File("assembly.glb")));
        Assert.Empty(Directory.GetFiles(fresh.Path, "*.3mf"));
        string[] parts = [.. Directory.EnumerateFiles(board, "*.stl").Select(path => Path.GetFileName(path))];
        Assert.NotEmpty(parts);
        Assert.All(parts, part => Assert.Equal(File.ReadAllBytes(Path.Combine(board, part)), File.ReadAllBytes(fresh.File(part))));
    }

    // The board is written by hand; everything beside it is made. A tool built without Node writes a page without its script: that page
    // can't be the shipped one, so only then is it left out here. Its content is tested by itself.
    private static string Hashes(string folder)
    {
        var lines = new StringBuilder();
        foreach (string path in Made(folder)
            .Where(path => PageAssets.Embedded.Script is not null || Path.GetFileName(path) != HousingFiles.PageFile))
        {
            lines.Append(CultureInfo.InvariantCulture,
                $"{Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(path)))[..16]} {Path.GetFileName(path)}\n");
        }

        return lines.ToString();
    }

    // A readable line beside the bytes, so that a difference tells what changed.
    private static string Summary(string folder)
    {
        using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, "report.json")));
        var lines = new StringBuilder();
        foreach (JsonElement part in report.RootElement.GetProperty("parts").EnumerateArray())
        {
            lines.Append(
                CultureInfo.InvariantCulture,
                $"{part.GetProperty("name")}: {part.GetProperty("triangles")} triangles, {part.GetProperty("volume_mm3")} mm3, "
                    + $"{part.GetProperty("area_mm2")} mm2, {part.GetProperty("size_mm")} mm, shells {part.GetProperty("shells")}, genus "
                    + $"{part.GetProperty("genus")}\n");
        }

        foreach (JsonElement finding in report.RootElement.GetProperty("findings").EnumerateArray())
        {
            lines.Append(CultureInfo.InvariantCulture,
                $"{finding.GetProperty("severity")} {finding.GetProperty("rule")} {finding.GetProperty("subject")}\n");
        }

        return lines.ToString();
    }

    private static IEnumerable<string> Made(string folder) =>
        Directory.EnumerateFiles(folder).Where(path => Path.GetFileName(path) != "board.yaml").Order(StringComparer.Ordinal);

    private static void Accept(string fresh, string shipped)
    {
        Assert.True(PageAssets.Embedded.Script is not null,
            "samples are accepted from a build with Node, so that their pages have their script");
        foreach (string old in Made(shipped).ToArray())
        {
            File.Delete(old);
        }

        foreach (string path in Made(fresh))
        {
            File.Copy(path, Path.Combine(shipped, Path.GetFileName(path)));
        }
    }
}
