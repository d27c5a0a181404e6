using System.Collections.Immutable;
using ShellForge.Benchmarks.Promises;
using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests;

/// <summary>The promises that drawn boards are held to are kept by sound housings and missed by housings with a fault.</summary>
public class PromiseTests
{
    private static readonly WrittenBoard Plugged = new()
    {
        Outline = "{disc: 60}",
        Holes = ["{circle: 50, count: 4, from: 45, diameter: 2.7}"],
        Pixels = "{package: \"2020\", circle: 30, count: 8, from: 90}",
        Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}"],
        Cable = "{part: J1}",
        Closure = "screws",
    };

    private static readonly Lazy<HousingUnderCheck> Screwed = new(() => BuiltHousings.Of(Plugged.Read()));

    private static readonly Lazy<HousingUnderCheck> Twisted = new(() => BuiltHousings.Of(new WrittenBoard { Closure = "twist" }.Read()));

    [Fact]
    public void A_housing_with_screws_and_a_plug_keeps_them() => Assert.Empty(HousingPromises.Broken(Screwed.Value));

    [Fact]
    public void A_housing_that_turns_shut_keeps_them() => Assert.Empty(HousingPromises.Broken(Twisted.Value));

    [Fact]
    public void A_housing_that_snaps_shut_keeps_them() =>
        Assert.Empty(HousingPromises.Broken(BuiltHousings.Of((Plugged with { Closure = "snap" }).Read())));

    [Fact]
    public void A_cover_that_has_to_turn_does_not_come_straight_off()
    {
        HousingPlan straight = Twisted.Value.Plan with { Closure = Screwed.Value.Plan.Closure };
        Assert.Contains("the cover does not come off",
            Assert.Single(HousingPromises.Shut(Twisted.Value with { Plan = straight })), StringComparison.Ordinal);
    }

    [Fact]
    public void An_LED_under_the_bezel_does_not_see_the_window()
    {
        BoardFile outside = (Plugged with { Pixels = "{package: \"2020\", circle: 44, count: 1, from: 0}" }).Read();
        HousingPlan plan = Screwed.Value.Plan with { Source = outside };
        Assert.Single(HousingPromises.LedsBehindPlastic(Screwed.Value with { Plan = plan }));
    }

    [Fact]
    public void A_plug_that_comes_higher_than_its_opening_is_stopped()
    {
        HousingPlan plan = Screwed.Value.Plan with
        {
            Openings = [.. Screwed.Value.Plan.Ports.Select(port => port with { AxisZ = port.AxisZ + 1.5 })],
        };
        Assert.Single(HousingPromises.PlugsStopped(Screwed.Value with { Plan = plan }));
    }

    [Fact]
    public void A_screw_beside_its_hole_meets_plastic()
    {
        ImmutableArray<ScrewJointPlan> screws = Screwed.Value.Plan.Screws;
        HousingPlan plan = Screwed.Value.Plan with
        {
            Screws = [screws[0] with { At = screws[0].At + new Point2(2, 0) }, .. screws.Skip(1)],
        };
        Assert.Contains(HousingPromises.ScrewsStopped(Screwed.Value with { Plan = plan }),
            told => told.StartsWith($"{screws[0].Name} meets", StringComparison.Ordinal));
    }

    [Fact]
    public void An_insert_without_a_boss_has_no_plastic_round_it()
    {
        ScrewJointPlan screw = Screwed.Value.Plan.Screws[0];
        HousingPlan plan = Screwed.Value.Plan with { Screws = [screw with { At = new Point2(0, 200) }] };
        Assert.Contains(HousingPromises.ScrewsStopped(Screwed.Value with { Plan = plan }),
            told => told.Contains("plastic round 0 of 12", StringComparison.Ordinal));
    }

    [Fact]
    public void A_part_in_two_bodies_or_without_any_is_unsound()
    {
        PartPlan tub = Screwed.Value.Parts.First(part => part.Name == PartNames.Tub).Plan;
        Solid box = Shapes.Box(new Point3(0, 0, 0), new Point3(4, 4, 4));
        MadePart Of(Solid solid) => new() { Plan = tub, InPrint = SolidEvaluator.Evaluate(solid) };
        Assert.Equal(2, HousingPromises.Unsound(
            [Of(Solid.Union(box, box.Moved(Transform3.Shift(9, 0, 0)))), Of(Solid.Empty)]).Count());
        Assert.Empty(HousingPromises.Unsound([Of(box)]));
    }

    [Fact]
    public void A_screw_that_is_driven_from_its_wrong_side_is_reached_by_no_driver()
    {
        HousingPlan plan = Screwed.Value.Plan with
        {
            Screws = [.. Screwed.Value.Plan.Screws.Select(screw => screw with { FromFront = !screw.FromFront })],
        };
        Assert.Contains(HousingPromises.ScrewsStopped(Screwed.Value with { Plan = plan }),
            told => told.StartsWith("no driver reaches", StringComparison.Ordinal));
    }

    [Fact]
    public void An_undercut_holds_and_a_step_does_not()
    {
        Mesh plate = Body(Region.Disc(Point2.Origin, Ring.Peg(10)), 0, 2);
        Mesh over = Body(Region.Rectangle(new Point2(9, -3), new Point2(14, 3)), 4, 6);
        Mesh under = Body(Region.Rectangle(new Point2(9, -3), new Point2(14, 3)), -4, 0);
        Assert.True(Caught(plate, over) is var (at, by) && at.X > 9 && Math.Abs(by - 6) < 1e-3);
        Assert.Null(Caught(plate, under));
    }

    private static (Point2 At, double By)? Caught(Mesh moves, Mesh stays)
    {
        var pictures = new LiftOff(new Point2(-20, -20), new Point2(20, 20), 0.6);
        pictures.Moves(moves, Angle.Zero);
        pictures.Stays(stays);
        return pictures.Caught();
    }

    private static Mesh Body(Region region, double from, double to) =>
        SolidEvaluator.Evaluate(Shapes.Extrude(region, from, to)).Require().Mesh;
}
