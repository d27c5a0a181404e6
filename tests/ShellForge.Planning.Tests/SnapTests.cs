using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class SnapTests
{
    [Fact]
    public void A_bead_that_a_hand_closes_goes_all_round_but_for_the_key()
    {
        SnapClosurePlan snap = Snap(HousingPlanner.Plan(new WrittenBoard().Read()));
        Assert.Single(snap.Interruptions);
    }

    [Theory]
    [InlineData("{disc: 62}", "pla-black", 5)]
    [InlineData("{disc: 36}", "petg-black", 4)]
    public void A_bead_too_stiff_for_a_hand_is_planned_in_pieces_that_hold_on_every_side(string outline, string shell, int walls)
    {
        HousingPlan plan = HousingPlanner.Plan(Stiff(outline, shell, walls).Read());
        SnapClosurePlan snap = Snap(plan);
        double radius = plan.Shell.Round!.Inner;
        Assert.InRange(snap.ClosingForce, 0.5 * SnapForce.Hand, 0.9 * SnapForce.Hand);
        Assert.Contains(plan.Decisions, d => d.Path == "closure.bead.pieces");

        // Walked round in steps of a degree: pieces are no burrs, and no side of the cover is without one.
        bool[] bead = [.. Enumerable.Range(0, 360).Select(d => !snap.Interruptions.Any(gap =>
            (Angle.FromDegrees(d) - gap.From).Normalized.Degrees < gap.Sweep.Degrees))];
        for (int quarter = 0; quarter < 360; quarter += 90)
        {
            Assert.True(bead.Skip(quarter).Take(90).Count(b => b) > 45);
        }

        int start = Array.IndexOf(bead, false);
        int run = 0;
        for (int i = 1; i <= 360; i++)
        {
            if (bead[(start + i) % 360])
            {
                run++;
                continue;
            }

            Assert.True(run == 0 || (run + 1) * Math.PI / 180 * radius >= 6, $"a piece of {run} degrees");
            run = 0;
        }
    }

    [Fact]
    public void The_reason_states_what_is_left_to_catch_and_the_strain_at_the_same_spread()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard().Read());
        SnapClosurePlan snap = Snap(plan);

        // fdm-0.4 strays by 0.2: 0.4 - 0.2 is left; 0.4 + 0.2 strains a ring of 2 x (40.5 - 0.24).
        Assert.Equal(0.2, snap.CatchAfterTolerance, 9);
        Assert.Equal(2 * 0.6 / (2 * (40.5 - plan.Cover.LipGap)), snap.Strain, 9);
        string why = plan.Decisions.First(d => d.Path == "closure.bead.interference").Why;
        Assert.Contains("a catch of 0.2 is left, 0.15 is needed", why);
        Assert.Contains("strained by 1.49%", why);
        Assert.Equal("1.17", plan.Decisions.First(d => d.Path == "closure.groove.wall-left").Value);
    }

    [Fact]
    public void Where_strain_leaves_too_little_a_bead_still_catches_and_its_strain_is_what_is_told()
    {
        SnapClosurePlan snap = Snap(HousingPlanner.Plan(Stiff("{disc: 36}", "petg-black", 4).Read()));
        Assert.Equal(0.35, snap.Interference, 9);
        Assert.Null(snap.LostCatch);
        Assert.True(snap.Strain > 0.02, $"{snap.Strain}");
    }

    [Fact]
    public void Nobody_who_does_not_ask_for_a_snap_gets_one_that_breaks()
    {
        WrittenBoard brittle = Stiff("{disc: 62}", "pla-black", 4);
        Assert.True(Snap(HousingPlanner.Plan(brittle.Read())).Strain > 0.01);
        static HousingPlan Unasked(WrittenBoard board) => HousingPlanner.Plan(Board.Yaml.BoardFileReader.Read(
            "board.yaml", board.Text.Replace("  closure: snap\n", "", StringComparison.Ordinal), WrittenBoard.Shipped, []).File!);
        HousingPlan plan = Unasked(brittle);
        Assert.IsType<ScrewClosurePlan>(plan.Closure);
        Assert.Contains("a bead would strain the ring by 1.", plan.Decisions.Single(d => d.Path == "closure").Why);
        Snap(Unasked(Stiff("{disc: 62}", "petg-black", 4)));
    }

    private static WrittenBoard Stiff(string outline, string shell, int walls)
    {
        double disc = double.Parse(outline[7..^1], System.Globalization.CultureInfo.InvariantCulture);
        return new WrittenBoard
        {
            Outline = outline,
            Walls = walls,
            Holes = [FormattableString.Invariant($"{{circle: {disc - 9}, count: 3, from: 45, diameter: 2.7}}")],
            Pixels = FormattableString.Invariant($"{{package: \"2020\", circle: {disc / 2}, count: 8, from: 90, direction: cw}}"),
            Print = $"{{printer: fdm-0.4, shell: {shell}, diffuser: {shell.Replace("black", "white", StringComparison.Ordinal)}}}",
        };
    }

    private static SnapClosurePlan Snap(HousingPlan plan) => Assert.IsType<SnapClosurePlan>(plan.Closure);
}
