using System.Text.Json;
using ShellForge.Formats.Stl;
using ShellForge.Geometry.Auditing;

namespace ShellForge.Cli.Tests.Verbs;

public class MakeVerbTests
{
    private static readonly string[] Broken =
    [
        "",
        "format: shellforge/9",
        "{",
        "- a\n- list",
        Bench.SmallBoard.Replace("disc: 40", "disc: 40 furlongs", StringComparison.Ordinal),
        Bench.SmallBoard.Replace("m2x3-od3.6", "m2x3-od3.7", StringComparison.Ordinal),
        Bench.SmallBoard.Replace("closure: snap", "closure: snpa", StringComparison.Ordinal),
        Bench.SmallBoard.Replace("count: 4", "count: 1000000000", StringComparison.Ordinal),
    ];

    public static TheoryData<string> BrokenBoards => [.. Broken];

    [Fact]
    public void A_board_becomes_a_folder_of_sound_parts_with_their_report()
    {
        using var bench = new Bench();
        bench.Folder.Write("buoy.yaml", Bench.SmallBoard);

        int exit = bench.Run("make", "buoy.yaml", "-o", "out", "--formats", "stl,3mf,glb");

        Assert.True(exit is 0 or 1, bench.Err);
        using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(bench.Folder.File("out/report.json")));
        JsonElement[] parts = [.. report.RootElement.GetProperty("parts").EnumerateArray()];
        Assert.Contains(parts, part => part.GetProperty("name").GetString() == "tub");
        foreach (JsonElement part in parts)
        {
            byte[] bytes = File.ReadAllBytes(bench.Folder.File("out/" + part.GetProperty("file").GetString()));
            LooseTriangles triangles = Assert.Single(StlReader.Read(bytes).Bodies).Triangles;
            AuditReport audit = MeshAudit.Run(triangles);
            Assert.True(audit.IsClean, $"{part.GetProperty("name")}: {audit}");
            Assert.Equal(part.GetProperty("triangles").GetInt32(), triangles.TriangleCount);

            // Print orientation: the lowest point lies on the bed.
            Assert.Equal(0, triangles.Coordinates.Where((_, i) => i % 3 == 2).Min());
        }

        string[] plates = [.. parts.Select(part => part.GetProperty("plate").GetString()!).Distinct()];
        Assert.Equal(plates.Order(), Directory.GetFiles(bench.Folder.File("out"), "*.3mf").Select(path => Path.GetFileName(path)!).Order());
        foreach (string plate in plates)
        {
            Assert.Equal(0, bench.Run("inspect", "out/" + plate));
        }

        Assert.All(
            new[] { "assembly.glb", "plan.svg", "section.svg", "report.html" },
            name => Assert.True(File.Exists(bench.Folder.File("out/" + name)), name));
        bool stopped =
            report.RootElement.GetProperty("findings").EnumerateArray().Any(f => f.GetProperty("severity").GetString() == "stop");
        Assert.Equal(stopped ? 1 : 0, exit);
    }

    [Fact]
    public void The_report_names_no_file_that_is_not_written_and_files_of_an_earlier_run_go()
    {
        using var bench = new Bench();
        bench.Folder.Write("buoy.yaml", Bench.SmallBoard);
        bench.Run("make", "buoy.yaml", "-o", "out", "--formats", "stl,3mf");
        Assert.NotEmpty(Directory.GetFiles(bench.Folder.File("out"), "*.3mf"));

        bench.Run("make", "buoy.yaml", "-o", "out", "--formats", "glb");

        using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(bench.Folder.File("out/report.json")));
        Assert.All(report.RootElement.GetProperty("parts").EnumerateArray(), part => Assert.Equal(
            (JsonValueKind.Null, JsonValueKind.Null), (part.GetProperty("file").ValueKind, part.GetProperty("plate").ValueKind)));
        Assert.DoesNotContain(Directory.GetFiles(bench.Folder.File("out")), path => Path.GetExtension(path) is ".stl" or ".3mf");
    }

    [Theory]
    [MemberData(nameof(BrokenBoards))]
    public void A_broken_board_is_told_with_status_2_and_old_outputs_stay(string board)
    {
        using var bench = new Bench();
        bench.Folder.Write("bad.yaml", board);
        bench.Folder.Write("out/tub.stl", "from an earlier run");
        bench.Folder.Write("out/report.json", """{"format": "shellforge-report/1", "parts": [{"file": "tub.stl"}]}""");
        IReadOnlyDictionary<string, string> before = bench.Folder.Snapshot();

        int exit = bench.Run("make", "bad.yaml", "-o", "out");

        Assert.Equal((int)ExitCode.BadInput, exit);
        Assert.Matches(@"(?m)^bad\.yaml(:\d+:\d+)?: ", bench.Err);
        Assert.DoesNotContain("   at ", bench.Err, StringComparison.Ordinal);
        Assert.Equal(before.OrderBy(e => e.Key), bench.Folder.Snapshot().OrderBy(e => e.Key));
    }

    [Fact]
    public void Broken_boards_are_told_to_machines_too()
    {
        using var bench = new Bench();
        bench.Folder.Write("bad.yaml", Broken[^2]);

        Assert.Equal(2, bench.Run("make", "bad.yaml", "--json"));

        JsonElement diagnostic = bench.Json().GetProperty("diagnostics")[0];
        Assert.Equal("error", diagnostic.GetProperty("severity").GetString());
        Assert.Equal("snap", diagnostic.GetProperty("nearest").GetString());
        Assert.Equal(12, diagnostic.GetProperty("line").GetInt32());
        Assert.False(Directory.Exists(bench.Folder.File("housing")));
    }

    [Fact]
    public void A_board_that_is_not_there_is_file_trouble()
    {
        using var bench = new Bench();

        Assert.Equal((int)ExitCode.FileTrouble, bench.Run("make", "nothing.yaml"));
        Assert.Equal("shellforge: nothing.yaml: there is no such file\n", bench.Err);
    }

    [Fact]
    public void A_file_that_is_no_text_is_file_trouble()
    {
        using var bench = new Bench();
        File.WriteAllBytes(bench.Folder.File("picture.yaml"), [0x89, 0x50, 0x4E, 0x47, 0xFF, 0xFE]);

        Assert.Equal((int)ExitCode.FileTrouble, bench.Run("make", "picture.yaml"));
        Assert.Contains("not UTF-8", bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_is_a_file_is_file_trouble()
    {
        using var bench = new Bench();
        bench.Folder.Write("buoy.yaml", Bench.SmallBoard);
        bench.Folder.Write("out", "a file");

        Assert.Equal((int)ExitCode.FileTrouble, bench.Run("make", "buoy.yaml", "-o", "out", "-q"));
        Assert.Equal("a file", File.ReadAllText(bench.Folder.File("out")));
    }

    [Fact]
    public void Stopped_work_writes_nothing()
    {
        using var bench = new Bench();
        bench.Folder.Write("buoy.yaml", Bench.SmallBoard);

        int exit = bench.RunUnder(new CancellationToken(canceled: true), "make", "buoy.yaml", "-o", "out");

        Assert.Equal(130, exit);
        Assert.False(Directory.Exists(bench.Folder.File("out")));
    }

    [Fact]
    public void Check_finds_the_same_and_writes_nothing()
    {
        using var bench = new Bench();
        bench.Folder.Write("buoy.yaml", Bench.SmallBoard);
        IReadOnlyDictionary<string, string> before = bench.Folder.Snapshot();

        int exit = bench.Run("check", "buoy.yaml", "--json");

        Assert.Equal(bench.Json().GetProperty("exit").GetInt32(), exit);
        Assert.Equal(before, bench.Folder.Snapshot());
    }

    [Fact]
    public void A_value_on_the_command_line_stands_in_place_of_the_files()
    {
        using var bench = new Bench();
        bench.Folder.Write("buoy.yaml", Bench.SmallBoard);

        Assert.Equal(2, bench.Run("check", "buoy.yaml", "--set", "housing.walls=oak"));
        Assert.StartsWith("--set 1:1:", bench.Err, StringComparison.Ordinal);
    }
}
