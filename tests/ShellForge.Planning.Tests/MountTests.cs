using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Mounts;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class MountTests
{
    public static TheoryData<MountKind> Kinds => [.. Enum.GetValues<MountKind>().Where(kind => kind != MountKind.None)];

    private static MountPlan? On(WrittenBoard board, params string[] overrides) => HousingPlanner.Plan(board.Read(overrides)).Mount;

    private static string Word(MountKind kind) => kind.ToString().ToLowerInvariant();

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_kind_of_mount_has_a_form(MountKind kind) => Assert.Single(MountForm.All, form => form.Kind == kind);

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_mount_tells_the_hands_what_to_do_and_names_its_faces(MountKind kind)
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Mount = Word(kind) }.Read());
        MountPlan mount = Assert.IsAssignableFrom<MountPlan>(plan.Mount);
        HandStep[] steps = [.. mount.HandSteps(plan)];
        Assert.NotEmpty(steps);
        Assert.All(steps, step => Assert.True(step.Text.Length > 20 && step.Check.Length > 10 && !step.Shown.IsEmpty));
        Assert.NotEmpty(mount.NameOf(0));
        Assert.Equal(mount.Drilling is not null, steps.Any(step => step.Cautions.Contains(HandCaution.Drilling)));
        Assert.True(mount.Parts.All(part => plan.Parts.Any(each => each.Name == part.Name && !each.IsOfHousing)));
    }

    [Fact]
    public void Inserts_and_magnets_go_in_before_the_board_and_with_their_cautions()
    {
        foreach ((string word, HandCaution caution) in new[] { ("tripod", HandCaution.Iron), ("magnets", HandCaution.Adhesive) })
        {
            HousingPlan plan = HousingPlanner.Plan(new WrittenBoard { Mount = word }.Read());
            HandStep step = Assert.Single(plan.Mount!.HandSteps(plan), each => each.Phase == HandPhase.Tub);
            Assert.Contains(caution, step.Cautions);
            Assert.NotEmpty(step.Things);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    [InlineData(205)]
    public void Magnets_are_mirror_images_about_the_line_that_points_up(int up)
    {
        WrittenBoard board = new()
        {
            Mount = "magnets",
            Parts = ["{ref: U1, size: [20, 18, 3], side: bottom, at: [12, 14]}",
                "{ref: C1, size: [8, 8, 5], side: bottom, at: [-14, -12]}"],
        };
        var magnets = Assert.IsType<MagnetMountPlan>(On(board, FormattableString.Invariant($"up={up}")));
        Assert.InRange(magnets.At.Length, 2, 4);
        Angle upright = Angle.FromDegrees(90 - up);
        Point2[] seen = [.. magnets.At.Select(at => at.Turned(upright))];
        Assert.All(seen, at => Assert.Contains(seen, other => Point2.Distance(other, new Point2(-at.X, at.Y)) < 0.01));
    }

    [Fact]
    public void A_tripod_insert_stands_in_the_middle_or_on_the_vertical_line()
    {
        var middle = Assert.IsType<TripodMountPlan>(On(new WrittenBoard { Mount = "tripod" }));
        Assert.Equal(Point2.Origin, middle.At);
        var aside =
            Assert.IsType<TripodMountPlan>(
                On(new WrittenBoard { Mount = "tripod", Parts = ["{ref: U1, size: [20, 18, 3], side: bottom, at: [0, 0]}"] }));
        Assert.Equal(0, aside.At.X, 6);
        Assert.NotEqual(0, aside.At.Y, 6);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(12)]
    [InlineData(18)]
    [InlineData(25)]
    [InlineData(40)]
    [InlineData(90)]
    [InlineData(160)]
    [InlineData(230)]
    public void A_stand_fits_discs_of_all_sizes_or_says_why_not(int diameter)
    {
        WrittenBoard board = new()
        {
            Outline = $"{{disc: {diameter}}}",
            Holes = [],
            Pixels = FormattableString.Invariant(
                $"{{package: \"2020\", circle: {diameter * 0.5}, count: {Math.Max(1, diameter / 8)}, from: 90, direction: cw}}"),
            Mount = "stand",
        };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        if (plan.Mount is not StandMountPlan stand)
        {
            Assert.Contains(plan.Refusals, refusal => refusal is { Rule: "mount-without-place", Subject: "stand" });
            return;
        }

        Assert.InRange(diameter, 10, 240);
        Assert.Single(stand.LeftSide.Parts);
        Assert.Single(stand.RightSide.Parts);
        Assert.True(stand.Height < 256 && stand.Depth < 256);

        // The housing's middle, set on the stand, lies over the foot with room to tip.
        Point3 centre = stand.ToHousing.Inverse().Apply(new Point3(0, 0, plan.Stack.Front / 2));
        double room = Math.Min(stand.HalfWidth, (stand.Depth / 2) - Math.Abs(centre.Y));
        Assert.True(room >= 0.2 * centre.Z, $"{room} beside {centre}");
    }

    [Theory]
    [InlineData("housing.clearance.below-parts=50", "housing.floor=20")]
    [InlineData("housing.diffuser.distance=60", "housing.floor=20")]
    public void A_tall_housing_on_a_stand_does_not_fail(params string[] overrides) =>
        Assert.True(HousingPlanner.Plan(new WrittenBoard { Mount = "stand" }.Read(overrides)) is { } plan
            && (plan.Mount is not null || plan.Refusals.Any(refusal => refusal.Subject == "stand")));

    [Fact]
    public void A_plug_that_points_down_hangs_between_the_cheeks()
    {
        HousingPlan plan = HousingPlanner.Plan(WrittenBoard.Sample("tide-lamp", "housing.mount=stand"));
        var stand = Assert.IsType<StandMountPlan>(plan.Mount);
        PortPlan port = Assert.Single(plan.Ports);
        Assert.True(stand.HalfWidth - stand.Wall > (port.Mouth.PlugWidth / 2) + 1);
        Assert.NotNull(stand.CableSlot);

        // Its end stands over the table.
        Point2 end = port.Face + Point2.Polar(port.Mouth.PlugLength, port.Faces);
        Assert.True(stand.ToHousing.Inverse().Apply(new Point3(end.X, end.Y, port.AxisZ - (port.Mouth.PlugHeight / 2))).Z > 5);
    }

    [Fact]
    public void Feet_are_level_and_their_recesses_leave_a_floor()
    {
        var feet = Assert.IsType<FeetMountPlan>(On(new WrittenBoard { Mount = "feet" }));
        Assert.InRange(feet.At.Length, 3, 4);
        Assert.True(feet.OffSurface > 1);
        Assert.All(feet.At, at => Assert.True(at.Length > 20));
        Assert.True(HousingPlanner.Plan(new WrittenBoard { Mount = "feet" }.Read("housing.floor=0.8")).Stack.FloorTop >= feet.Recess + 1);
    }

    [Fact]
    public void A_bore_under_a_part_is_closed_and_said_so()
    {
        WrittenBoard ring = new()
        {
            Outline = "{ring: {outer: 60, bore: 30}}",
            Holes = ["{circle: 52, count: 4, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 40, count: 12, from: 90, direction: cw}",
            Parts = ["{ref: U1, size: [51, 21, 3], side: bottom, at: [0, 0]}"],
        };
        HousingPlan plan = HousingPlanner.Plan(ring.Read());
        Assert.False(plan.Shell.Round!.HasBore);
        Assert.Contains(plan.Decisions, decision => decision.Path == "shell.bore" && decision.Why.Contains("U1", StringComparison.Ordinal));
        Assert.Contains(HousingPlanner.Plan(ring.Read("housing.bore=open")).Refusals, refusal => refusal.Rule == "part-over-bore");
        Assert.True(HousingPlanner.Plan((ring with { Parts = [] }).Read()).Shell.Round!.HasBore);
    }

    [Fact]
    public void A_cable_s_plug_is_told_in_the_plan()
    {
        WrittenBoard board = new()
        {
            Cable = "{round: 4, angle: 270, plug: [12, 5]}",
            Wires = ["{name: cable, at: [0, -20], conductors: 2, gauge: 24, to: out}"]
        };
        Assert.Contains(HousingPlanner.Plan(board.Read()).Decisions,
            decision => decision.Path == "cable.plug" && decision.Value == "12 x 5");
    }
}
