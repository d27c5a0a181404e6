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
    [InlineData(80, "pla-black")]
    [InlineData(44, "petg-black")]
    public void A_bead_too_stiff_for_a_hand_is_planned_in_pieces_that_hold_on_every_side(double disc, string shell)
    {
        HousingPlan plan = HousingPlanner.Plan(Stiff(disc, shell).Read());
        SnapClosurePlan snap = Snap(plan);
        double radius = plan.Shell.Round!.Inner;
        double modulus = shell.StartsWith("pla", StringComparison.Ordinal) ? 2600 : 1900;
        double Force(IEnumerable<(Angle, Angle)> gaps) => SnapForce.Closing(snap.Interference, radius, plan.Cover.LipThickness, plan.Shell.Wall, modulus, gaps);
        Assert.True(Force([]) > SnapForce.Hand, $"{Force([])}");
        Assert.InRange(Force(snap.Interruptions), 0.7 * SnapForce.Hand, 0.9 * SnapForce.Hand);
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
    public void Sectors_without_bead_count_once_where_they_overlap()
    {
        double Force(params (double From, double Sweep)[] gaps) =>
            SnapForce.Closing(0.4, 40, 1.26, 1.67, 1900, gaps.Select(g => (Angle.FromDegrees(g.From), Angle.FromDegrees(g.Sweep))));
        Assert.Equal(0.75 * Force(), Force((350, 40), (20, 60)), 6);
        Assert.Equal(0.5 * Force(), Force((300, 120), (0, 30), (50, 70)), 6);
    }

    private static WrittenBoard Stiff(double disc, string shell) => new()
    {
        Outline = FormattableString.Invariant($"{{disc: {disc}}}"),
        Holes = [FormattableString.Invariant($"{{circle: {disc - 9}, count: 3, from: 45, diameter: 2.7}}")],
        Pixels = FormattableString.Invariant($"{{package: \"2020\", circle: {disc / 2}, count: 8, from: 90, direction: cw}}"),
        Print = $"{{printer: fdm-0.4, shell: {shell}, diffuser: {shell.Replace("black", "white", StringComparison.Ordinal)}}}",
    };

    private static SnapClosurePlan Snap(HousingPlan plan) => Assert.IsType<SnapClosurePlan>(plan.Closure);
}
