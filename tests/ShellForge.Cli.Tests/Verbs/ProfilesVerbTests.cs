using System.Text.Json;

namespace ShellForge.Cli.Tests.Verbs;

public class ProfilesVerbTests
{
    [Fact]
    public void All_kinds_are_listed()
    {
        using var bench = new Bench();

        Assert.Equal(0, bench.Run("profiles"));
        Assert.All(
            new[] { "inserts", "screws", "packages", "leds", "filaments", "printers", "supplies", "m2.5x4-od4.6" },
            word => Assert.Contains(word, bench.Out, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_number_of_a_profile_has_its_source()
    {
        using var bench = new Bench();

        bench.Run("profiles", "--json");

        foreach (JsonElement profile in bench.Json().GetProperty("profiles").EnumerateArray())
        {
            foreach (JsonProperty line in profile.GetProperty("values").EnumerateObject())
            {
                bool number = line.Name != "thread" && char.IsAsciiDigit(line.Value.GetProperty("value").GetString()![0]);
                Assert.True(
                    !number || line.Value.GetProperty("source").GetString()!.Length > 0,
                    $"{profile.GetProperty("name")} {line.Name} has no source");
            }
        }
    }

    [Fact]
    public void An_unknown_name_is_bad_input()
    {
        using var bench = new Bench();

        Assert.Equal((int)ExitCode.BadInput, bench.Run("profiles", "m99"));
        Assert.Contains("m99", bench.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_profile_of_the_user_is_told_with_its_place()
    {
        using var bench = new Bench();
        bench.Folder.Write("profiles/mine.yaml", "format: shellforge-profiles/1\ninserts:\n  mine: {thread: M2, lenght: 3}\n");

        Assert.Equal((int)ExitCode.BadInput, bench.Run("profiles"));
        Assert.Contains("mine.yaml:3:", bench.Err, StringComparison.Ordinal);
    }
}
