using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Tests.CoverSide;

/// <summary>A twist lock: it goes in, turns, holds, and comes out the same way.</summary>
public class TwistTests
{
    private static BuiltHousing Twisted() => BuiltHousing.Sample("mooring-beacon", "housing.closure=twist", "housing.cable=none");

    private static double SharedWhen(BuiltHousing housing, double share, double lifted)
    {
        var twist = Assert.IsType<TwistClosurePlan>(housing.Plan.Closure);
        Solid cover = housing.Solid("cover").AsOperand()
            .Moved(Transform3.TurnZ(share * twist.Turn).Then(Transform3.Shift(0, 0, lifted)));
        return BuiltHousing.Shared(cover, housing.Solid("tub").AsOperand());
    }

    [Fact]
    public void Closed_it_sits_free() => Assert.Equal(0, SharedWhen(Twisted(), 0, 0), 3);

    [Theory]
    [InlineData(3)]
    [InlineData(1)]
    [InlineData(0)]
    public void It_goes_straight_in_when_turned_to_the_entries(double lifted) => Assert.Equal(0, SharedWhen(Twisted(), 1, lifted), 3);

    [Fact]
    public void On_the_way_a_lug_rides_over_a_small_ridge_only() => Assert.InRange(SharedWhen(Twisted(), 0.3, 0), 0.01, 2);

    [Fact]
    public void Closed_it_can_not_be_pulled_off() => Assert.True(SharedWhen(Twisted(), 0, 0.6) > 1);

    [Fact]
    public void It_can_not_be_turned_past_its_stop() => Assert.True(SharedWhen(Twisted(), -0.3, 0) > 1);

    [Fact]
    public void The_odd_lug_lets_it_in_one_way_only()
    {
        BuiltHousing housing = Twisted();
        var twist = Assert.IsType<TwistClosurePlan>(housing.Plan.Closure);
        double spacing = 360.0 / twist.Lugs.Length;
        for (int i = 1; i < twist.Lugs.Length; i++)
        {
            Solid cover = housing.Solid("cover").AsOperand()
                .Moved(Transform3.TurnZ(twist.Turn + Angle.FromDegrees(i * spacing)));
            Assert.True(BuiltHousing.Shared(cover, housing.Solid("tub").AsOperand()) > 0.5);
        }
    }

    [Fact]
    public void The_baffle_turns_clear_of_everything_on_the_board()
    {
        BuiltHousing housing = Twisted();
        double tallest = PartEnvelope.OnTop(housing.Plan.Source.Board).Max(part => part.To!.Value);

        Assert.True(housing.Plan.Baffle!.Bottom >= housing.Plan.Stack.BoardTop + tallest + 0.3);
    }

    [Fact]
    public void A_tongue_in_a_slot_refuses_to_turn()
    {
        BuiltHousing housing = BuiltHousing.Sample("tide-lamp", "housing.closure=twist");

        Assert.Contains(housing.Plan.Refusals, refusal => refusal.Rule == "twist-cannot-turn");
        Assert.IsType<SnapClosurePlan>(housing.Plan.Closure);
    }
}
