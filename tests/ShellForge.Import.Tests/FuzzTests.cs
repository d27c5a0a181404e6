using System.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;
using ShellForge.Import.Writing;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Import.Tests;

/// <summary>
/// One promise for any bytes: a board or diagnostics, soon, never an exception. A fixed number of files here; minutes of it, with other
/// files each time, on demand: see <see cref="FuzzRuns"/>.
/// </summary>
public class FuzzTests(ITestOutputHelper output)
{
    // As many as a second and a half gave on the machine that was slowest.
    private const int Runs = 120;

    private static readonly string[] Tokens =
    [
        "NaN", "Infinity", "-1e308", "1e999", "99999999999999999999", "-0", "0", "0x10", "1,5", "..", "--", "G85", "G03", "G02", "G74*",
        "G75*", "G36*", "G37*",
        "R99999X1Y1", "M25", "M02X1Y1", "%SRX9999Y9999I1J1*%", "%FSLAX99Y99*%", "%FSTAX00Y00*%", "%MOIN*%", "D03*", "X9999999999999999D01*",
        "360", "-360", "720", "0 INSERT", "\n0\nINSERT\n2\nA\n",
        "\n0\nSPLINE\n71\n99\n", "\n70\n2147483647\n", "\n210\n1\n", "\n230\n-1\n", "\"", "\"\"\"", ";", "\t", "\0", "\u00e9", "\ufeff",
        "# ", ".END_PLACEMENT\n", ".BOARD_OUTLINE\n", "T1C0\n", "T99999\n", "METRIC,LZ,0000.0000\n",
        "INCH,TZ\n", "ICI,ON\n", "mm", "mil", "\"in", "{", "[[[[[[[[[[[[[[[[[[[[", "}", "\r", "\r\n", "\n\n\n",
    ];

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(2);

    public static TheoryData<string> Kinds => new("idf", "gerber", "drill", "placement", "dxf", "job", "mixed");

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Spoiled_files_end_in_a_board_or_in_diagnostics(string kind)
    {
        List<byte[]> seeds = Seeds(kind);
        Assert.NotEmpty(seeds);
        ProfileLibrary profiles = ProfileLibrary.Load([]).Library;
        var mutator = new Mutator(FuzzRuns.Dice(20_000), Tokens);
        var time = new FuzzRuns(Runs);
        int read = 0;
        while (time.Next())
        {
            List<EcadFile> files =
                [.. Enumerable.Range(0, kind == "mixed" ? 3 : 1).Select(i => new EcadFile($"spoiled-{i}", mutator.Next(seeds)))];
            TimeSpan took = TimeSpan.MaxValue;
            try
            {
                // The clock on the wall counts what other programs do, the processor's what other tests do: neither flatters.
                for (int attempt = 0; attempt < 4 && took >= Longest; attempt++)
                {
                    using Process here = Process.GetCurrentProcess();
                    TimeSpan before = here.TotalProcessorTime;
                    var one = Stopwatch.StartNew();
                    bool isBoard = Import(files, profiles);
                    here.Refresh();
                    TimeSpan busy = here.TotalProcessorTime - before;
                    took = busy < one.Elapsed ? busy : one.Elapsed;
                    read += attempt == 0 && isBoard ? 1 : 0;
                }
            }
            catch (Exception e)
            {
                throw new InvalidOperationException($"{kind}, run {time.Tried}: kept as {Keep(files)}", e);
            }

            // Not Assert.True: its message would be made, and the files kept, for every run.
            if (took >= Longest && !Debugger.IsAttached)
            {
                Assert.Fail($"{kind}, run {time.Tried}: {took} for {Keep(files)}");
            }
        }

        output.WriteLine($"{kind}: {time.Tried} files, {read} gave a board");

        // Spoiling so hard that nothing is ever read would test the recognition alone.
        Assert.True(read > 0, $"none of {time.Tried} spoiled files was read as a board");
    }

    private static bool Import(List<EcadFile> files, ProfileLibrary profiles)
    {
        ImportResult result = EcadImport.Run(files, new ImportOptions { Profiles = profiles });
        _ = ImportJson.Text(result);
        _ = BoardPicture.Svg(result);
        if (result.IsRefused)
        {
            Assert.NotEmpty(result.Diagnostics);
            return false;
        }

        string text = BoardFileWriter.Text(result);
        _ = BoardFileReader.Read("board.yaml", text, profiles, []);
        return true;
    }

    private static string Keep(List<EcadFile> files)
    {
        string folder = Directory.CreateTempSubdirectory("ecad-fuzz-").FullName;
        foreach (EcadFile f in files)
        {
            File.WriteAllBytes(Path.Combine(folder, f.Name), f.Bytes.ToArray());
        }

        return folder;
    }

    private static List<byte[]> Seeds(string kind)
    {
        IEnumerable<string> folders = Directory.EnumerateDirectories(SharedBoards.Own);
        if (SharedBoards.Folder is { } shared)
        {
            folders = folders.Concat(Directory.EnumerateDirectories(shared));
        }

        List<EcadFile> files = [.. folders.Order(StringComparer.Ordinal).SelectMany(f => EcadFileLoader.Load([f]).Files)];
        return [.. files.Where(f => Suits(kind, FileRecognition.Of(f).Kind)).Select(f => f.Bytes.ToArray())];
    }

    private static bool Suits(string kind, FileKind found) => kind switch
    {
        "idf" => found is FileKind.IdfBoard or FileKind.IdfLibrary or FileKind.IdfPanel,
        "gerber" => found is FileKind.Gerber,
        "drill" => found is FileKind.Drill,
        "placement" => found is FileKind.Placement,
        "dxf" => found is FileKind.Dxf,
        "job" => found is FileKind.JobFile,
        _ => found is not (FileKind.Unknown or FileKind.Accompanying),
    };
}
