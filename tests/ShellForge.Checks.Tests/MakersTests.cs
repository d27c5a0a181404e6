using System.Collections.Immutable;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests;

/// <summary>
/// Boards as their makers would write them: a badge, a coaster, lights for a binnacle, a dice tower, a drum, a bicycle, a name strip, an
/// air sensor, the top of a tree. Each gets sound parts that say nothing about themselves, and the verdict that it deserves.
/// </summary>
public class MakersTests
{
    private static readonly string Folder = Repository.At("tests", "boards", "makers");

    // What each is warned of, besides notes: white cells let light through; a cable through the floor needs room below.
    private static readonly Dictionary<string, string[]> Warned = new(StringComparer.Ordinal)
    {
        ["badge"] = ["cells-bleed"],
        ["topper"] = ["cable-behind-housing"],
    };

    public static TheoryData<string> Boards =>
        [.. Directory.GetFiles(Folder, "*.yaml").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Boards))]
    public void A_board_as_makers_write_it_gets_sound_parts_that_say_nothing_of_themselves_and_its_verdict(string name)
    {
        HousingUnderCheck housing = BuiltHousings.Of(WrittenBoard.At(Path.Combine(Folder, name + ".yaml")));
        OwnGeometryTests.IsOfWholeParts(housing);
        ImmutableArray<Finding> found = CheckRun.Run(housing, RuleList.All);
        string told = string.Join('\n', found.Select(finding => finding.ToString()));
        Assert.True(found.All(finding => finding.Severity < Severity.Stop), told);
        Assert.True(
            found.Where(finding => finding.Severity == Severity.Warn).Select(finding => finding.Rule).Distinct()
                .SequenceEqual(Warned.GetValueOrDefault(name, [])), told);
        OwnGeometryTests.PrintsWithoutAWord(housing, name);
        Assert.DoesNotContain(found, finding => finding.Rule == new GapCloses().Name);
        Assert.DoesNotContain(found, finding => finding.Rule == new PoorFooting().Name && finding.Severity > Severity.Note);
    }
}
