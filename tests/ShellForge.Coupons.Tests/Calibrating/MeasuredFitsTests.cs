using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Planning;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Coupons.Tests.Calibrating;

/// <summary>
/// For each further value that coupons give: a printer on which a board planned with typical values fails, and on which the same board fits
/// once it was measured. What comes out of the printer is worked out from its faults alone.
/// </summary>
public sealed class MeasuredFitsTests
{
    // What the plan's own rounding, and steps of coupons, leave beside what a hand asks for, mm.
    private const double Rounding = 0.03;

    [Fact]
    public void A_cell_drops_into_its_bay()
    {
        var printer = new SimulatedPrinter(0.1, -0.3, -0.6, 0.0045);
        var board = new WrittenBoard { Outline = "{disc: 90}", Housing = ["battery: 14500"] };
        FailsThenFits(printer, ["size-bar", "battery-bays"], board, plan =>
            plan.Bay!.Size.PocketWidth + printer.Slot - plan.Bay.Size.Battery.Width,
            SimulatedPrinter.CellTight - Rounding, SimulatedPrinter.CellLoose + Rounding);
    }

    [Fact]
    public void The_covers_rib_goes_into_its_slot()
    {
        var printer = new SimulatedPrinter(0.25, -0.3, -0.4, 0.0045);
        FailsThenFits(printer, ["size-bar", "slot-fit"], new WrittenBoard(), plan => printer.GapInHand(plan.Key.Rib!.Gap, printer.Slot),
            SimulatedPrinter.TightGap - Rounding, SimulatedPrinter.LooseGap + Rounding);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(0.5)]
    public void A_snap_takes_the_force_that_is_told(double stiffness)
    {
        var printer = new SimulatedPrinter(0, -0.2, -0.2, 0.0045) { Stiffness = stiffness };
        FailsThenFits(printer, ["size-bar", "snap-rings"], new WrittenBoard(), plan =>
        {
            var snap = Assert.IsType<SnapClosurePlan>(plan.Closure);
            double real = stiffness * snap.ClosingForce / plan.Source.Print.Printer.SnapForce;
            return Math.Max(Math.Abs((snap.ClosingForce / real) - 1) / 0.1, real / (1.1 * SnapForce.Hand));
        }, 0, 1);
    }

    [Fact]
    public void Lugs_slide_under_the_rim_where_roofs_sag()
    {
        var printer = new SimulatedPrinter(0, -0.2, -0.2, 0.0045) { Sag = 0.42 };
        FailsThenFits(printer, ["layer-fit"], new WrittenBoard { Closure = "twist" },
            plan => Assert.IsType<TwistClosurePlan>(plan.Closure).AxialGap - printer.Sag,
            SimulatedPrinter.UnderRoof - 0.005, SimulatedPrinter.Tips);
    }

    [Fact]
    public void A_clamp_ring_lies_free_in_the_tub()
    {
        var printer = new SimulatedPrinter(0.4, -0.35, -0.3, 0.0045);
        var board = new WrittenBoard { Outline = "{disc: 90}", Holes = [], Housing = ["hold: clamp"] };
        FailsThenFits(printer, ["size-bar", "lid-fit"], board, plan =>
        {
            var clamp = Assert.IsType<ClampPlan>(plan.Hold.Holder);
            double gap = clamp.Outline.Loops[0].Min(corner => plan.Shell.Cavity.Filled().And(clamp.Pockets).DistanceToOutline(corner));
            return printer.GapInHand(gap, printer.Hole);
        }, SimulatedPrinter.TurningGap - Rounding, 0.6);
    }

    private static void FailsThenFits(
        SimulatedPrinter printer, string[] kinds, WrittenBoard board, Func<HousingPlan, double> inHand, double least, double most)
    {
        double typical = inHand(Planned(board, WrittenBoard.Shipped));
        Assert.False(typical >= least && typical <= most, $"fits without any coupon: {typical:0.000}");
        ProfileLibrary measured = ThroughTheFile.Library(
            ThroughTheFile.Profiles(printer, ThroughTheFile.Drawn(Samples.Wish(), kinds), WrittenBoard.Shipped));
        Assert.InRange(inHand(Planned(board, measured)), least, most);
    }

    private static HousingPlan Planned(WrittenBoard board, ProfileLibrary library)
    {
        BoardReadResult read = BoardFileReader.Read("board.yaml", board.Text, library, []);
        return HousingPlanner.Plan(read.File ?? throw new InvalidOperationException(string.Join("\n", read.Diagnostics)));
    }
}
