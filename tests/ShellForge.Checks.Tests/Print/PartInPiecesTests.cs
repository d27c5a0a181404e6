using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Print;

public class PartInPiecesTests
{
    private static readonly HousingUnderCheck Sound = BuiltHousings.Of(new WrittenBoard().Read());

    [Fact]
    public void A_part_with_a_block_that_hangs_on_nothing_is_stopped()
    {
        Assert.Empty(new PartInPieces().Check(Sound));
        Solid box = Shapes.Box(new Point3(0, 0, 0), new Point3(4, 4, 4));
        MadePart apart = Sound.Parts[0] with { InPrint = SolidEvaluator.Evaluate(Solid.Union(box, box.Moved(Transform3.Shift(9, 0, 0)))) };
        Finding finding = Assert.Single(new PartInPieces().Check(Sound with { Parts = [apart, .. Sound.Parts.Skip(1)] }));
        Assert.Equal(Severity.Stop, finding.Severity);
        Assert.Equal("the tub comes out in 2 pieces instead of 1", finding.Message);
    }

    [Fact]
    public void A_clamp_ring_comes_in_the_pieces_that_its_plan_says_and_each_has_a_screw()
    {
        HousingUnderCheck housing = BuiltHousings.Of(
            WrittenBoard.At(Repository.At("tests", "boards", "any", "clamp-ring-in-pieces.yaml")));
        var clamp = Assert.IsType<ClampPlan>(housing.Plan.Hold.Holder);
        Assert.Equal(3, clamp.Outline.Parts.Length);
        Assert.All(clamp.Outline.Parts, piece => Assert.Contains(clamp.Screws, piece.Contains));
        Assert.Empty(new PartInPieces().Check(housing));
    }
}
