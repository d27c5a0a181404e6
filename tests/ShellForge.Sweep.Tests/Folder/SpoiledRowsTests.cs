using System.Diagnostics;
using System.Globalization;
using System.Text;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Index;
using ShellForge.Sweep.Variants;
using ShellForge.Testing;

namespace ShellForge.Sweep.Tests.Folder;

/// <summary>What is kept of a sweep, edited by somebody or put there by another: what no sweep can have written is made again.</summary>
public class SpoiledRowsTests
{
    private const string Plan = "vary: {housing.walls: [2, 3, 4]}\nbest: {wish: {height: 1, plastic: 2}}";

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(20);

    private static readonly SweepOrder Order = Orders.Of(Plan);

    private static List<string> Run(TemporaryFolder folder) => [.. Orders.Run(Order, folder.Path).Select(row => row.Folder)];

    // Changes the JSON of the second row, in the joined rows and in the variant's own record.
    private static string Spoil(TemporaryFolder folder, string old, string now)
    {
        string path = folder.File("sweep-state/rows.jsonl");
        string[] lines = File.ReadAllLines(path);
        string[] words = lines[1].Split(' ', 3);
        string json = old.Length == 0 ? now : words[2].Replace(old, now, StringComparison.Ordinal);
        Assert.NotEqual(words[2], json);
        lines[1] = string.Create(CultureInfo.InvariantCulture, $"{words[0]} {Encoding.UTF8.GetByteCount(json)} {json}");
        File.WriteAllText(path, string.Join('\n', lines) + "\n");
        string spoiled = VariantList.Of(Order).ElementAt(1).Folder;
        File.WriteAllText(folder.File($"{spoiled}/variant.json"), json);
        return spoiled;
    }

    [Theory]
    [InlineData("", "null")]
    [InlineData("", "{}")]
    [InlineData("", "{\"key\":{\"key\":")]
    [InlineData("\"outcome\":\"made\"", "\"outcome\":\"maybe\"")]
    [InlineData("\"outcome\":\"made\"", "\"outcome\":\"failed\"")]
    [InlineData("\"verdict\":\"print\"", "\"verdict\":\"splendid\"")]
    [InlineData("\"grams\":12.5", "\"grams\":1e999")]
    [InlineData("\"size\":[10,20,", "\"size\":[10,")]
    [InlineData("\"size\":[10,20,", "\"size\":[1e999,20,")]
    [InlineData("\"size\":[10,20,30]", "\"size\":null")]
    [InlineData("\"at\":[0,0,0]", "\"at\":[]")]
    [InlineData("\"bed\":[210,210]", "\"bed\":[210]")]
    [InlineData("\"bed\":[210,210]", "\"bed\":[10,10]")]
    [InlineData("\"parts\":[{", "\"parts\":[null,{")]
    [InlineData("\"name\":\"tub\"", "\"name\":\"../tub\"")]
    [InlineData("\"name\":\"tub\"", "\"name\":\"\\ud800\"")]
    [InlineData("\"name\":\"tub\"", "\"name\":null")]
    [InlineData("\"colour\":\"#101010\"", "\"colour\":\"#1010100\"")]
    [InlineData("\"findings\":[]", "\"findings\":[null]")]
    [InlineData("\"findings\":[]", "\"findings\":null")]
    [InlineData("\"stops\":0", "\"stops\":1")]
    [InlineData("\"warnings\":0", "\"warnings\":2")]
    [InlineData("\"shopping\":[{", "\"shopping\":[null,{")]
    [InlineData("\"count\":4", "\"count\":-4")]
    [InlineData("\"count\":4", "\"count\":4e99")]
    [InlineData("\"resolved\":[{", "\"resolved\":[{\"name\":null,\"text\":\"x\"},{")]
    [InlineData("\"values\":[{", "\"values\":[null,{")]
    [InlineData("\"faults\":[]", "\"faults\":[null]")]
    [InlineData("\"board\":\"buoy.yaml\"", "\"board\":null")]
    [InlineData("\"folder\":\"", "\"folder\":\"javascript:alert(1)//")]
    [InlineData("\"folder\":\"", "\"folder\":\"../")]
    [InlineData("\"folder\":\"walls-3", "\"folder\":\"walls-9")]
    [InlineData("\"code\":\"", "\"code\":\"<b>")]
    [InlineData("\"key\":\"", "\"key\":\"0")]
    public async Task A_row_that_no_sweep_can_have_written_is_none_and_its_variant_is_made_again(string old, string now)
    {
        using var folder = new TemporaryFolder();
        await Task.Run(() => Run(folder)).WaitAsync(Longest);
        IReadOnlyDictionary<string, string> before = folder.Snapshot();
        string spoiled = Spoil(folder, old, now);

        using (SweepFolder joined = SweepFolder.OpenJoined(folder.Path)!)
        {
            SweepIndex.Write(joined, plates: false);
            Assert.Equal([spoiled], joined.Missing().Select(variant => variant.Folder));
            Assert.DoesNotContain("javascript:", await File.ReadAllTextAsync(folder.File("index.html")), StringComparison.Ordinal);
        }

        // A record that doesn't even say whose it is leaves the folder to whoever owns it.
        Directory.Delete(folder.File(spoiled), recursive: true);
        Assert.Equal([spoiled], Run(folder));
        Assert.Equal(before, folder.Snapshot());
    }

    [Fact]
    public void A_sound_row_is_found_behind_a_spoiled_one_of_its_key()
    {
        using var folder = new TemporaryFolder();
        Run(folder);
        IReadOnlyDictionary<string, string> before = folder.Snapshot();
        string path = folder.File("sweep-state/rows.jsonl");
        string[] lines = File.ReadAllLines(path);
        string[] words = lines[1].Split(' ', 3);
        File.WriteAllText(path, $"{words[0]} {words[1]} {words[2].Replace("\"made\"", "\"mode\"", StringComparison.Ordinal)}\n"
            + string.Join('\n', lines) + "\n");

        Assert.Empty(Run(folder));
        Assert.Equal(before, folder.Snapshot());
    }

    [Theory]
    [InlineData("2,walls-3", "2,..")]
    [InlineData("2,walls-3", "2,javascript:alert(1)//walls-3")]
    [InlineData("2,walls-3", "2,walls-3\u001b]0;x\u0007")]
    [InlineData("2,walls-3", "7,walls-3")]
    [InlineData("2,walls-3", "2,Walls-3")]
    [InlineData("2,walls-3", "2,walls-9")]
    [InlineData("\n3,", "\n3,3,")]
    [InlineData(",3,", ",30000,")]
    public void A_list_that_no_sweep_can_have_written_is_told_and_the_next_run_writes_it_anew(string old, string now)
    {
        using var folder = new TemporaryFolder();
        Run(folder);
        IReadOnlyDictionary<string, string> before = folder.Snapshot();
        string path = folder.File("sweep-state/variants.csv");
        string list = File.ReadAllText(path);
        int at = list.IndexOf(old, StringComparison.Ordinal);
        File.WriteAllText(path, list[..at] + now + list[(at + old.Length)..]);

        if (!now.EndsWith("walls-9", StringComparison.Ordinal))
        {
            IOException told = Assert.Throws<IOException>(() => SweepFolder.OpenJoined(folder.Path));
            Assert.Contains("run the sweep again", told.Message, StringComparison.Ordinal);
            Assert.DoesNotContain("\u001b", told.Message, StringComparison.Ordinal);
        }

        Assert.Empty(Run(folder));
        Assert.Equal(before, folder.Snapshot());
    }

    [Theory]
    [InlineData(0, "shellforge-variants/9")]
    [InlineData(1, "00")]
    [InlineData(2, "-3")]
    [InlineData(3, "NaN")]
    [InlineData(5, "plan\u001b[2J")]
    public void A_list_with_another_first_line_is_none(int word, string now)
    {
        using var folder = new TemporaryFolder();
        Run(folder);
        string path = folder.File("sweep-state/variants.csv");
        string[] lines = File.ReadAllLines(path);
        string[] words = lines[0].Split(',');
        words[word] = now;
        File.WriteAllLines(path, [string.Join(',', words), .. lines[1..]]);

        Assert.Null(SweepFolder.OpenJoined(folder.Path));
        Assert.Empty(Run(folder));
    }

    [Fact]
    public void A_list_of_one_endless_line_is_given_up_early()
    {
        using var folder = new TemporaryFolder();
        Run(folder);
        string path = folder.File("sweep-state/variants.csv");
        File.WriteAllText(path, File.ReadLines(path).First() + "\n" + new string('1', 8 << 20));
        long before = GC.GetAllocatedBytesForCurrentThread();

        Assert.Throws<IOException>(() => SweepFolder.OpenJoined(folder.Path));

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4 << 20);
    }

    [SkippableTheory]
    [InlineData("sweep-state/variants.csv")]
    [InlineData("sweep-state/rows.jsonl")]
    [InlineData("sweep-state/writer-0001/rows.jsonl")]
    [InlineData("index.html")]
    [InlineData("VARIANT/variant.json")]
    public async Task A_pipe_or_a_device_in_the_place_of_a_file_holds_nothing_up(string name)
    {
        Skip.If(OperatingSystem.IsWindows(), "pipes lie in no folder there");
        foreach (bool pipe in new[] { true, false })
        {
            using var folder = new TemporaryFolder();
            Run(folder);
            string path = folder.File(name.Replace("VARIANT", VariantList.Of(Order).First().Folder, StringComparison.Ordinal));
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.Delete(path);
            if (pipe)
            {
                using Process made = Process.Start("mkfifo", [path]);
                await made.WaitForExitAsync();
            }
            else
            {
                File.CreateSymbolicLink(path, "/dev/zero");
            }

            await Task.Run(() =>
            {
                // Told, or made anew: in either case soon.
                Exception? told = Record.Exception(() => Run(folder));
                bool mayTell = name.StartsWith("VARIANT", StringComparison.Ordinal);
                Assert.True(told is null || (mayTell && told is IOException), told?.ToString());
                SweepFolder.OpenJoined(folder.Path)?.Dispose();
            }).WaitAsync(Longest);
        }
    }
}
