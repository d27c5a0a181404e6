using System.Diagnostics;
using System.Globalization;
using System.Text;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Board.Tests;

/// <summary>
/// One promise: whatever the text is, a diagnostic or a result, never an exception and never a hang. A fixed number of files here,
/// minutes of it on demand: see <see cref="FuzzRuns"/>.
/// </summary>
public class FuzzTests(ITestOutputHelper output)
{
    private const int Runs = 400;

    private static readonly string[] Valid =
    [
        BoardTexts.Sample("mooring-beacon"),
        BoardTexts.Sample("tide-lamp"),
        BoardTexts.Sample("dome-dial"),
        StarterBoard.Text("Fuzz"),
        .. Directory.GetFiles(BoardTexts.Folder("tests", "boards", "valid"), "*.yaml").Order(StringComparer.Ordinal)
            .Select(File.ReadAllText),
    ];

    private static readonly string[] Broken =
        [.. Directory.GetFiles(BoardTexts.Folder("tests", "boards", "broken"), "*.yaml").Order(StringComparer.Ordinal)
            .Select(File.ReadAllText)];

    private static readonly string[] Pieces =
    [
        "{", "}", "[", "]", ": ", "- ", "\n", "\n  ", "\t", "#", "&a ", "*a", "!!", "\"", "'", "|\n", ">\n", "? ", ", ", "---\n", "...\n",
        "%YAML 9\n",
        "null", "~", ".nan", "-.inf", "1e308", "-1e308", "1e-320", "0", "-1", "359", "1000000000", "0x10", "true", "\u0000", "\uFEFF",
        "\uD800", "\u2028", "\r",
        "unknown", "auto", "none", "5050", "disc: 360", "arcs: [[0, 0], [1, 0, 359]]", "polygon: [[0,0],[0,0],[0,0]]",
        "circle: 0.5, count: 1000", "<<: *a",
    ];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void A_changed_board_file_gives_a_result_or_a_diagnostic(int part)
    {
        Random random = FuzzRuns.Dice(part);
        int withResult = 0;
        int withError = 0;
        var time = new FuzzRuns(Runs);
        while (time.Next())
        {
            string[] seeds = time.Tried % 4 == 1 ? Broken : Valid;
            string text = Changed(seeds[random.Next(seeds.Length)], random);
            var watch = Stopwatch.StartNew();
            BoardReadResult read = BoardTexts.Read(text);
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(10), text);
            Assert.True(read.File is not null ^ read.Diagnostics.Any(d => d.IsError), text);
            Assert.All(read.Diagnostics, d => Assert.True(d.Message.Length > 0 && d.Line >= 0, text));
            withResult += read.File is null ? 0 : 1;
            withError += read.File is null ? 1 : 0;
        }

        output.WriteLine($"{withResult} boards, {withError} refused");
        Assert.True(withResult > 8 && withError > 60, $"{withResult} results, {withError} refused");
    }

    [Fact]
    public void A_changed_profile_file_gives_profiles_or_a_diagnostic()
    {
        string[] seeds =
            [.. Directory.GetFiles(BoardTexts.Folder("profiles"), "*.yaml").Order(StringComparer.Ordinal).Select(File.ReadAllText)];
        var random = new Random(7);
        int taken = 0;
        int told = 0;
        for (int i = 0; i < 60; i++)
        {
            // Renamed, so that what is taken of the file can be told from what is shipped.
            string seed = seeds[random.Next(seeds.Length)];
            bool isShelf = seed.Contains("\ninserts:", StringComparison.Ordinal) || seed.Contains("\nfilaments:", StringComparison.Ordinal);
            string text = Changed(
                isShelf ? seed.Replace("petg-", "mine-", StringComparison.Ordinal).Replace("m2x", "mine-m2x", StringComparison.Ordinal)
                    : seed, random);
            ProfileLoadResult loaded = ProfileLibrary.Load([("user.yaml", text)]);
            bool isTaken = loaded.Library.Inserts.Names.Concat(loaded.Library.Filaments.Names)
                .Any(name => name.StartsWith("mine-", StringComparison.Ordinal));
            bool hasOwn = isShelf && text.Contains("mine-", StringComparison.Ordinal);
            bool isTold = loaded.Diagnostics.Any(d => d.IsError);
            Assert.True(isTaken || isTold || !hasOwn, "nothing was taken and nothing told of:\n" + text);
            taken += isTaken ? 1 : 0;
            told += isTold ? 1 : 0;
        }

        // Both ends are met, or the changes test nothing.
        Assert.True(taken > 0 && told > 0, $"{taken} taken, {told} told");
    }

    [Fact]
    public void A_changed_override_gives_a_result_or_a_diagnostic()
    {
        string ring = BoardTexts.Sample("tide-lamp");
        string[] seeds = ["housing.walls=4", "board.parts[J1].past-edge=1", "board.holes[0].diameter=2",
            "board.holes[+]={at: [40, 0], diameter: 1}", "board.pixels.with.at=[1, 2]"];
        var random = new Random(11);
        for (int i = 0; i < 200; i++)
        {
            string text = Changed(seeds[random.Next(seeds.Length)], random);
            BoardReadResult read = BoardTexts.Read(ring, text);
            Assert.True(read.File is not null ^ read.Diagnostics.Any(d => d.IsError), text);
        }
    }

    [Theory]
    [InlineData('[')]
    [InlineData('{')]
    [InlineData('-')]
    [InlineData('?')]
    [InlineData('"')]
    [InlineData('a')]
    [InlineData(' ')]
    [InlineData('\n')]
    [InlineData('*')]
    [InlineData(':')]
    public void A_megabyte_of_one_sign_is_answered_soon(char sign)
    {
        foreach (string unit in new[] { sign.ToString(), sign + " ", sign + "\n", sign + ": " })
        {
            string text = string.Concat(Enumerable.Repeat(unit, 900_000 / unit.Length));
            var watch = Stopwatch.StartNew();
            BoardReadResult read = BoardTexts.Read(text);
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(10), $"'{unit}' took {watch.Elapsed}");
            Assert.Null(read.File);
            Assert.NotEmpty(read.Diagnostics);
        }
    }

    private static string Changed(string text, Random random)
    {
        var changed = new StringBuilder(text);
        int edits = 1 + random.Next(3);
        for (int i = 0; i < edits && changed.Length > 2; i++)
        {
            int at = random.Next(changed.Length);
            switch (random.Next(6))
            {
                case 0:
                    changed.Remove(at, Math.Min(1 + random.Next(12), changed.Length - at));
                    break;
                case 1:
                    changed.Insert(at, Pieces[random.Next(Pieces.Length)]);
                    break;
                case 2:
                    changed[at] = (char)random.Next(1, 256);
                    break;
                case 3:
                    int length = Math.Min(1 + random.Next(60), changed.Length - at);
                    changed.Insert(random.Next(changed.Length), changed.ToString(at, length));
                    break;
                case 4:
                    ReplaceNumber(changed, at, random);
                    break;
                default:
                    ReplaceWord(changed, at, random);
                    break;
            }
        }

        return changed.ToString();
    }

    private static void ReplaceNumber(StringBuilder text, int from, Random random)
    {
        for (int i = from; i < text.Length; i++)
        {
            if (char.IsAsciiDigit(text[i]))
            {
                text.Remove(i, 1).Insert(i,
                    random.Next(8) switch
                    {
                        0 => "-",
                        1 => "9",
                        2 => "0",
                        3 => "1e",
                        _ => random.Next(1, 9).ToString(CultureInfo.InvariantCulture)
                    });
                return;
            }
        }
    }

    private static void ReplaceWord(StringBuilder text, int from, Random random)
    {
        string all = text.ToString();
        int start = all.IndexOf(": ", from, StringComparison.Ordinal);
        if (start > 0)
        {
            int end = all.IndexOfAny([',', '}', '\n'], start + 2);
            if (end > start)
            {
                text.Remove(start + 2, end - start - 2).Insert(start + 2, Pieces[random.Next(Pieces.Length)]);
            }
        }
    }
}
