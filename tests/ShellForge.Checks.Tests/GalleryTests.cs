using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Light;
using ShellForge.Checks.Print;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests;

/// <summary>
/// Boards of every shape and arrangement get a housing: every LED is seen, every part is closed and one body. Among them are those whose
/// bead once had steps in the air (heart, star, ring with a tail), whose key slot cut a slanted wall to knife edges (half moon, ring with a
/// tail), whose seat left ridges (spiral), whose tooth left a bead on nothing (ring without holes) and whose notch took half a wall
/// (letter D).
/// </summary>
public class GalleryTests
{
    private static readonly string Folder = Repository.At("tests", "boards", "gallery");

    public static TheoryData<string> Boards =>
        [.. Directory.GetFiles(Folder, "*.yaml").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Boards))]
    public void A_board_of_any_shape_gets_a_lit_housing_of_whole_parts_and_prints_without_a_word_about_itself(string name)
    {
        HousingUnderCheck housing = BuiltHousings.Of(WrittenBoard.At(Path.Combine(Folder, name + ".yaml")));
        OwnGeometryTests.IsOfWholeParts(housing);
        Assert.Empty(new AuditFailed().Check(housing));
        Assert.Empty(new LedInTheDark().Check(housing));
        Assert.DoesNotContain(housing.Plan.Refusals, refusal => !refusal.IsReplaced);
        Assert.DoesNotContain(new DotsShow().Check(housing), finding => finding.Severity >= Severity.Warn);
        OwnGeometryTests.PrintsWithoutAWord(housing, name);
    }
}
