using System.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Board.Tests;

/// <summary>Spoiled profile files: taken or told of with a place, soon; and a board can be read with what was taken.</summary>
public class SpoiledProfilesTests(ITestOutputHelper output)
{
    private const int Runs = 60;

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(5);

    [Fact]
    public void A_spoiled_profile_file_is_taken_or_told_of_soon()
    {
        string[] seeds =
        [
            .. Directory.GetFiles(BoardTexts.Folder("profiles"), "*.yaml").Order(StringComparer.Ordinal).Select(File.ReadAllText), Measured,
        ];
        string board = BoardTexts.Sample("tide-lamp");
        Random dice = FuzzRuns.Dice(37);
        var spoil = new SpoiledYaml(dice, SpoiledYaml.WordsOf(BoardSchema.ProfilesJson()));
        int taken = 0;
        int told = 0;
        var time = new FuzzRuns(Runs);
        while (time.Next())
        {
            string text = spoil.Of(seeds[dice.Next(seeds.Length)]);
            TimeSpan began = Environment.CpuUsage.TotalTime;
            var watch = Stopwatch.StartNew();
            ProfileLoadResult loaded;
            try
            {
                loaded = ProfileLibrary.Load([("mine.yaml", text)]);
                BoardReadResult read = BoardFileReader.Read("board.yaml", board, loaded.Library, []);
                Assert.True(read.File is not null ^ read.Diagnostics.Any(d => d.IsError), text);
            }
            catch (Exception e) when (e is not Xunit.Sdk.XunitException)
            {
                throw new InvalidOperationException($"this profile file:\n{text}", e);
            }

            TimeSpan busy = Environment.CpuUsage.TotalTime - began;
            Assert.True((busy < watch.Elapsed ? busy : watch.Elapsed) < Longest, $"{busy.TotalSeconds:0.0} s for\n{text}");
            Assert.All(loaded.Diagnostics, d => Assert.True(d.Message.Length > 0 && d.Line >= 0, text));
            taken += loaded.Diagnostics.Any(d => d.IsError) ? 0 : 1;
            told += loaded.Diagnostics.Any(d => d.IsError) ? 1 : 0;
        }

        output.WriteLine($"{taken} taken, {told} told of");
        Assert.True(taken > 0 && told > 0, $"{taken} taken, {told} told of");
    }

    private const string Measured =
        """
        format: shellforge-profiles/1
        pairings:
          mine:
            printer: fdm-0.4
            filament: petg-black
            outer-allowance: [-0.05, "measured 2026-11-30, coupon size-bar"]
            lip-fit: [0.3, "measured 2026-11-30, coupon lid-fit"]
            bridge-note: [12, "measured 2026-11-30, coupon bridges"]
            insert-holes:
              m2.5x4-od4.6: [4.1, "measured 2026-11-30, coupon insert-holes"]
            readings:
              lid-fit: "2026-11-30: tight 0.2, fits 0.3, loose 0.4"
        """;
}
