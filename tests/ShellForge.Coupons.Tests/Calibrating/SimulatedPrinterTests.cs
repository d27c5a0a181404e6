using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Coupons.Calibrating;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Coupons.Tests.Calibrating;

/// <summary>Printers with known faults are found from their coupons, and a board planned with what was found fits them.</summary>
public sealed class SimulatedPrinterTests
{
    private static readonly string[] Shell = ["size-bar", "lid-fit", "slot-fit", "insert-holes"];

    public static TheoryData<string, double, double, double, double, double> Printers() => new()
    {
        { "holes", 0, -0.2, -0.2, 0.0045, 1 },
        { "tight holes", 0, -0.4, -0.3, 0.0045, 1 },
        { "fat walls", 0.1, -0.2, -0.1, 0.0045, 1 },
        { "shrinks", 0, -0.2, -0.2, 0.006, 1 },
        { "dense", 0, -0.2, -0.2, 0.0045, 2 },
        { "mixed", 0.1, -0.35, -0.25, 0.006, 2 },
    };

    [Theory]
    [MemberData(nameof(Printers))]
    public void A_printers_faults_are_found_within_three_hundredths_or_a_tenth(
        string what, double outer, double hole, double slot, double shrinkage, double density)
    {
        for (int seed = 1; seed <= 5; seed++)
        {
            var printer = new SimulatedPrinter(outer, hole, slot, shrinkage, density) { Seed = seed };
            ProfileLibrary found = Calibrated(printer);
            PairingProfile pairing = found.PairingOf("fdm-0.4", "petg-black")!;
            Assert.Equal(-outer, pairing.OuterAllowance!.Value.Value, 0.03);
            Assert.Equal(-hole, pairing.HoleAllowance!.Value.Value, 0.03);
            Assert.Equal(-slot, pairing.SlotAllowance!.Value.Value, 0.03);
            Assert.Equal(shrinkage, pairing.Shrinkage!.Value.Value, 0.1 * shrinkage);
            Assert.Equal(SimulatedPrinter.WantedGap + ((outer - hole) / 2), pairing.LipFit!.Value.Value, 0.03);
            Assert.Equal(SimulatedPrinter.WantedGap + ((outer - slot) / 2), pairing.SlotFit!.Value.Value, 0.03);
            InsertProfile insert = Samples.Wish().Insert!;
            Assert.Equal(
                insert.HoleDiameter - SimulatedPrinter.ChartCloses - hole, pairing.InsertHoles.Single().Hole.Value, 0.03);
            double typical = WrittenBoard.Shipped.Filaments.Find("petg-white")!.TransmissionLength;
            Assert.Equal(typical / density, found.Filaments.Find("petg-white")!.TransmissionLength.Value, 0.1 * typical / density);
            Assert.Equal("measured 2026-11-30, coupon size-bar", pairing.HoleAllowance!.Value.Source);
            Assert.True(pairing.Readings.Length == 4 && what.Length > 0);
        }
    }

    [Theory]
    [InlineData(0, -0.4, -0.3, 0.0045, 1)]
    [InlineData(0.3, -0.2, -0.1, 0.0045, 1)]
    [InlineData(0, -0.2, -0.2, 0.012, 1)]
    [InlineData(0, -0.2, -0.2, 0.0045, 2)]
    [InlineData(0.1, -0.35, -0.25, 0.006, 2)]
    public void A_board_planned_with_what_was_found_fits_the_printer_where_the_typical_one_fails(
        double outer, double hole, double slot, double shrinkage, double density)
    {
        var printer = new SimulatedPrinter(outer, hole, slot, shrinkage, density);
        Assert.NotEmpty(Misfits(printer, WrittenBoard.Shipped));
        Assert.Empty(Misfits(printer, Calibrated(printer)));
    }

    [Fact]
    public void A_typical_printer_is_fitted_before_and_after()
    {
        var printer = new SimulatedPrinter(0, -0.2, -0.2, 0.0045);
        Assert.Empty(Misfits(printer, WrittenBoard.Shipped));
        Assert.Empty(Misfits(printer, Calibrated(printer)));
    }

    [Fact]
    public void Holes_out_of_reach_lead_to_the_next_coupon_and_that_one_settles_it()
    {
        var printer = new SimulatedPrinter(0, -0.7, -0.3, 0.0045);
        CouponKind kind = CouponKinds.Find("insert-holes")!;
        CouponWish wish = Samples.Wish();
        Calibration first = ThroughTheFile.Read(printer, ThroughTheFile.Drawn(wish, "insert-holes"), WrittenBoard.Shipped);
        Assert.Empty(first.Found);
        NextCoupon next = Assert.Single(first.Next);
        Assert.Same(kind, next.Kind);
        Calibration second = ThroughTheFile.Read(printer, ThroughTheFile.Drawn(next.Wish, "insert-holes"), WrittenBoard.Shipped);
        double best = wish.Insert!.HoleDiameter - SimulatedPrinter.ChartCloses + 0.7;
        Assert.Equal(best, second.Found.Single().Values.Single().Value, 0.03);
    }

    [Fact]
    public void What_was_measured_before_stays_when_something_else_is_measured()
    {
        var printer = new SimulatedPrinter(0.1, -0.35, -0.25, 0.006, 2);
        ProfileLibrary first = ThroughTheFile.Library(
            ThroughTheFile.Profiles(printer, ThroughTheFile.Drawn(Samples.Wish(), Shell), WrittenBoard.Shipped));
        (string Name, string Text)[] later = ThroughTheFile.Profiles(
            printer, ThroughTheFile.Drawn(Samples.Wish(insert: "m2x3-od3.0"), "insert-holes"), first);
        PairingProfile both = ThroughTheFile.Library(later).PairingOf("fdm-0.4", "petg-black")!;
        Assert.Equal(first.PairingOf("fdm-0.4", "petg-black")!.LipFit, both.LipFit);
        Assert.Equal(["m2.5x4-od4.6", "m2x3-od3.0"], both.InsertHoles.Select(each => each.Insert).Order(StringComparer.Ordinal));
        Assert.Equal(5, both.Readings.Length);
    }

    // A bare sensor sees the LED straight before it and a window's light from the side unlike; under a bit of white paper, nearly alike.
    [Theory]
    [InlineData(0.55, 1, true)]
    [InlineData(0.6, 1, true)]
    [InlineData(0.6, 0.5, true)]
    [InlineData(0.95, 1, false)]
    [InlineData(1.03, 2, false)]
    [InlineData(1, 0.3, false)]
    [InlineData(1, 2, false)]
    public void A_meter_that_sees_bare_light_and_a_windows_unlike_is_told(double sideways, double density, bool told)
    {
        for (int seed = 1; seed <= 20; seed++)
        {
            var printer = new SimulatedPrinter(0, -0.2, -0.2, 0.0045, density) { Seed = seed, Sideways = sideways };
            CouponWish wish = Samples.Wish(filament: "petg-white");
            Calibration read = ThroughTheFile.Read(printer, ThroughTheFile.Drawn(wish, "diffuser-steps"), WrittenBoard.Shipped);
            if (told)
            {
                Assert.StartsWith("diffuser-steps, open: ", Assert.Single(read.Faults).Message, StringComparison.Ordinal);
                Assert.Contains("white paper", read.Faults[0].Message, StringComparison.Ordinal);
                Assert.InRange(read.Faults[0].Message.Length, 1, 160);
                Assert.Empty(read.Found);
            }
            else
            {
                Assert.Empty(read.Faults);
                double real = wish.Filament.TransmissionLength / density;
                Assert.Equal(real, read.Found.Single().Values.Single().Value, 0.1 * real);
            }
        }
    }

    // What would not fit in the hand; the board is printed by the simulated printer.
    private static ImmutableArray<string> Misfits(SimulatedPrinter printer, ProfileLibrary library)
    {
        BoardReadResult read = BoardFileReader.Read("board.yaml", Board, library, []);
        Assert.True(read.File is not null, string.Join("\n", read.Diagnostics));
        BoardFile board = read.File!;
        HousingPlan plan = HousingPlanner.Plan(board);
        double scale = plan.Parts.Single(part => part.Name == PartNames.Tub).ShrinkScale;
        double inHand = scale * (1 - printer.Shrinkage);
        var misfits = ImmutableArray.CreateBuilder<string>();
        void Within(string what, double value, double low, double high)
        {
            if (value < low || value > high)
            {
                misfits.Add(FormattableString.Invariant($"{what}: {value:0.000} outside {low:0.000} to {high:0.000}"));
            }
        }

        double diameterShare = 0.0005 * 2 * board.Board.Outline.OuterRadius;
        Within("lid on tub", printer.GapInHand(plan.Cover.LipGap, printer.Hole), SimulatedPrinter.TightGap,
            SimulatedPrinter.LooseGap + diameterShare);
        BossPlan[] bosses = [.. plan.Bosses.Where(boss => boss.Hole is not null)];
        Assert.NotEmpty(bosses);
        foreach (BossPlan boss in bosses)
        {
            double best = SimulatedPrinter.BestInsertHole(WrittenBoard.Shipped.Inserts.Find(boss.Hole!.Insert.Name)!);
            Within("insert", printer.InsertHoleInHand(boss.Hole.Diameter, scale), best - SimulatedPrinter.InsertReach,
                best + SimulatedPrinter.InsertReach);

            // Half of what a screw M2.5 leaves in a hole of 2.7 is the boss's; the rest is the board's own spread.
            Within("boss beside hole", Math.Abs(boss.At.Length * (inHand - 1)), 0, 0.1);
        }

        foreach (ScrewJointPlan joint in plan.Screws.Where(joint => joint.Use == ScrewUse.Closure))
        {
            Within("closure screw's hole", (joint.PassDiameter * inHand) + printer.Hole, joint.Screw.ThreadDiameter + 0.15,
                joint.Screw.ThreadDiameter + 0.8);
        }

        FilamentProfile real = WrittenBoard.Shipped.Filaments.Find(plan.Diffuser.Filament.Name)!;
        double thickness = plan.Diffuser.Thickness;
        double counted = 1 / (1 + (thickness / plan.Diffuser.Filament.TransmissionLength));
        Within("light counted on", counted / printer.Through(thickness, real), 0.9, 1.1);
        return misfits.ToImmutable();
    }

    // The shell's coupons and the diffuser's lie in one file of answers, each with its filament.
    private static ProfileLibrary Calibrated(SimulatedPrinter printer) => ThroughTheFile.Library(ThroughTheFile.Profiles(
        printer,
        [
            .. ThroughTheFile.Drawn(Samples.Wish(), Shell),
            .. ThroughTheFile.Drawn(Samples.Wish(filament: "petg-white"), "diffuser-steps"),
        ], WrittenBoard.Shipped));

    private const string Board =
        """
        format: shellforge/1
        name: Pier light
        board:
          outline: {disc: 90}
          thickness: 1.6
          holes:
            - {circle: 82, count: 4, from: 45, diameter: 2.7}
          pixels: {package: "5050", circle: 60, count: 24, from: 90, direction: cw}
        housing:
          insert: m2.5x4-od4.6
          cable: {round: 3.5, angle: 270, relief: tie}
          closure: screws
          diffuser: {thickness: 0.8}
        print: {printer: fdm-0.4, shell: petg-black, diffuser: petg-white}
        """;
}
