using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Answers;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Calibrating;
using ShellForge.Coupons.Files;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Coupons.Tests.Calibrating;

/// <summary>
/// What is tried by hand and looked at: printers with known faults are found from their coupons, a board planned with what was found fits
/// them, and answers of two coupons that can't be true together are told.
/// </summary>
public sealed class SimulatedHandsTests
{
    private static readonly string[] All =
    [
        "size-bar", "lid-fit", "slot-fit", "inlay-fit", "layer-fit", "magnet-pockets", "battery-bays", "plug-openings", "snap-rings",
        "thin-walls",
        "bridges", "overhangs",
    ];

    public static TheoryData<double, double, double, double> Printers() => new()
    {
        { 0, -0.2, -0.2, 1 },
        { 0.1, -0.2, -0.1, 1 },
        { 0, -0.2, -0.35, 1.6 },
        { 0.1, -0.35, -0.25, 0.6 },
    };

    [Theory]
    [MemberData(nameof(Printers))]
    public void Faults_of_openings_and_snaps_are_found_within_three_hundredths_or_a_tenth(
        double outer, double hole, double slot, double stiffness)
    {
        for (int seed = 1; seed <= 20; seed++)
        {
            var printer = new SimulatedPrinter(outer, hole, slot, 0.006) { Seed = seed, Stiffness = stiffness, Sag = 0.25 };
            PairingProfile found = Calibrated(printer).PairingOf("fdm-0.4", "petg-black")!;
            Assert.Equal(SimulatedPrinter.InlayWanted + ((outer - slot) / 2), found.InlayFit!.Value.Value, 0.03);
            Assert.Equal(SimulatedPrinter.MagnetWanted - hole, found.MagnetAllowance!.Value.Value, 0.03);
            Assert.Equal(stiffness, found.SnapForce!.Value.Value, 0.1 * stiffness);

            double bay = SimulatedPrinter.CellWanted - slot;
            Assert.Equal(bay, found.BatteryFit!.Value.Value, Math.Max(0.03, 0.1 * bay));
            Assert.Equal(SimulatedPrinter.PlugWanted - slot, found.PlugAllowance!.Value.Value, 0.03);

            // Roofs are tried in layers: the next that slides.
            Assert.Equal(0.4, found.LayerFit!.Value.Value, 0.001);
            Assert.Equal("measured 2026-11-30, coupon snap-rings", found.SnapForce!.Value.Source);
        }
    }

    [Theory]
    [InlineData(0.42, 47, 11, 21, 38)]
    [InlineData(0.62, 38, 7, 13, 20)]
    [InlineData(0.3, 66, 16, 34, 45)]
    public void What_is_looked_at_is_found_to_the_step_below_its_limit(double wall, double lean, double clean, double level, double closed)
    {
        var printer = new SimulatedPrinter(0, -0.2, -0.2, 0.0045) { ThinnestWall = wall, Lean = lean, Bridge = (clean, level, closed) };
        PairingProfile found = Calibrated(printer).PairingOf("fdm-0.4", "petg-black")!;
        Assert.InRange(found.ThinnestWall!.Value, wall, wall + 0.05);
        Assert.InRange(found.Overhang!.Value, lean - 5, lean);
        Assert.InRange(found.BridgeNote!.Value, clean / 1.34, clean);
        Assert.InRange(found.BridgeWarn!.Value, level / 1.34, level);
        Assert.InRange(found.BridgeStop!.Value, closed / 1.34, closed);
    }

    [Theory]
    [InlineData(0.4, -0.2, -0.2)]
    [InlineData(0, -0.2, -0.5)]
    [InlineData(0.1, -0.45, -0.35)]
    public void A_board_with_magnets_seat_and_plug_fits_the_printer_where_the_typical_one_fails(double outer, double hole, double slot)
    {
        var printer = new SimulatedPrinter(outer, hole, slot, 0.0045);
        Assert.NotEmpty(Misfits(printer, WrittenBoard.Shipped));
        Assert.Empty(Misfits(printer, Calibrated(printer)));
    }

    [Fact]
    public void A_lid_that_is_tight_where_the_bar_says_loose_is_told_and_nothing_is_set()
    {
        // The bar of one printer, the rings of another.
        var bar = new SimulatedPrinter(0, -0.2, -0.2, 0.0045);
        var rings = new SimulatedPrinter(0.4, -0.4, -0.2, 0.0045);
        Calibration mixed = Mixed(("size-bar", bar), ("lid-fit", rings));
        CalibrationFault fault = Assert.Single(mixed.Faults);
        Assert.Contains("lid-fit, fits: a lid drawn with 0.50 mm per side has ", fault.Message, StringComparison.Ordinal);
        Assert.Contains(" of air in its ring by the bar, and can't have held", fault.Message, StringComparison.Ordinal);
        Assert.Contains("try both this and size-bar again", fault.Message, StringComparison.Ordinal);
        Assert.Empty(mixed.Found);
    }

    public static TheoryData<string, string, string> Pairs() => new()
    {
        { "size-bar", "slot-fit", "slot-fit, fits: a tongue drawn with" },
        { "size-bar", "magnet-pockets", "magnet-pockets, fits: a pocket drawn" },
        { "size-bar", "battery-bays", "battery-bays, fits: a bay drawn" },
        { "size-bar", "insert-holes", "insert-holes, fits: a hole drawn" },
        { "size-bar", "snap-rings", "snap-rings, push-0.08: forces say" },
        { "size-bar", "thin-walls", "thin-walls, four-lines: four lines come out" },
        { "size-bar", "plug-openings", "plug-openings, fits: openings can't lose" },
        { "lid-fit", "inlay-fit", "inlay-fit, fits: a tile can't drop into" },
    };

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Two_coupons_that_can_not_be_of_one_printer_are_told(string first, string second, string told)
    {
        var loose = new SimulatedPrinter(-0.05, -0.15, -0.1, 0.0045);
        var tight = new SimulatedPrinter(0.3, -0.45, -0.55, 0.0045);

        // A lid that needs much room beside a tile that needs none, and the other way about for the rest.
        Calibration mixed = first == "lid-fit" ? Mixed((first, tight), (second, loose)) : Mixed((first, loose), (second, tight));
        Assert.Contains(mixed.Faults, fault => fault.Message.StartsWith(told, StringComparison.Ordinal));
        Assert.Empty(mixed.Found);

        var sound = new SimulatedPrinter(0.05, -0.2, -0.2, 0.0045);
        Assert.Empty(Mixed((first, sound), (second, sound)).Faults);
    }

    [Fact]
    public void What_was_measured_before_counts_too()
    {
        ProfileLibrary before = Calibrated(new SimulatedPrinter(0, -0.2, -0.2, 0.0045));
        Calibration later = ThroughTheFile.Read(
            new SimulatedPrinter(0.4, -0.4, -0.2, 0.0045), ThroughTheFile.Drawn(Samples.Wish(), "lid-fit"), before);
        CalibrationFault fault = Assert.Single(later.Faults);
        Assert.Contains("measured 2026-11-30, coupon size-bar): try this again, or print that coupon again", fault.Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("magnet-pockets", "tight 0.45, fits none, loose none", "0.675")]
    [InlineData("plug-openings", "tight 0.45, fits none, loose none", "0.675")]
    [InlineData("thin-walls", "broken 0.65, whole none, four-lines 1.67", "0.85")]
    [InlineData("bridges", "clean none, level none, closed 6", "6")]
    [InlineData("overhangs", "clean none, droops 30", "32.5")]
    [InlineData("lid-fit", "tight 0.6, fits none, loose none, turns none", "0.875")]
    [InlineData("slot-fit", "tight 0.6, fits none, loose none", "0.875")]
    [InlineData("inlay-fit", "tight 0.6, fits none, loose none", "0.875")]
    [InlineData("layer-fit", "tight 0.8, fits none, loose none", "1.1")]
    public void None_fits_leads_to_a_next_coupon_whose_steps_are_shifted(string kind, string answers, string around)
    {
        CouponWish wish = Samples.Wish();
        CouponKind form = CouponKinds.Find(kind)!;
        Reading reading = form.Read(wish, Sheet(answers));
        Assert.Empty(reading.Faults);
        Assert.Empty(reading.Values);
        Assert.Equal(around, reading.NextAround!.Value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture));
        double[] Values(Coupon coupon) => [.. coupon.Pieces[0].Steps.Where(step => step.Mark != "L4").Select(step => step.Value)];
        double[] first = Values(Samples.Drawn(kind, wish));
        double[] next = Values(Samples.Drawn(kind, wish with { Around = reading.NextAround }));
        bool up = kind is not ("bridges" or "overhangs");
        Assert.True(up ? next.Max() > first.Max() : next.Min() < first.Min(), string.Join(' ', next));

        // Both reach over one step at least, so that nothing lies between them.
        Assert.True(up ? next.Min() <= first.Max() : next.Max() >= first.Min(), string.Join(' ', next));
    }

    [Theory]
    [InlineData("bridges", "clean 12, level 10, closed 22", "level")]
    [InlineData("bridges", "clean 8, level 22, closed 10", "closed")]
    [InlineData("overhangs", "clean 50, droops 45", "droops")]
    [InlineData("thin-walls", "broken 0.5, whole 0.45, four-lines 1.67", "whole")]
    [InlineData("thin-walls", "broken 0.3, whole 0.45, four-lines 1.67", "whole")]
    [InlineData("snap-rings", "push-0.08 9, push-0.15 4, push-0.22 12", "push-0.15")]
    [InlineData("snap-rings", "push-0.08 0.1, push-0.15 0.2, push-0.22 0.3", "push-0.22")]
    [InlineData("layer-fit", "tight 0.6, fits 0.4, loose none", "fits")]
    [InlineData("inlay-fit", "tight 0.3, fits none, loose 0.4", "fits")]
    [InlineData("plug-openings", "tight 0.4, fits none, loose 0.3", "loose")]
    public void Answers_that_can_not_be_true_are_told_and_set_nothing(string kind, string answers, string key)
    {
        Reading reading = CouponKinds.Find(kind)!.Read(Samples.Wish(), Sheet(answers));
        Assert.Equal(key, Assert.Single(reading.Faults).Key);
        Assert.Empty(reading.Values);
    }

    // Where no other steps of the same coupon can help, another kind tells why.
    [Theory]
    [InlineData("lid-fit", "tight none, fits none, loose 0.05, turns 0.05", null, "size-bar")]
    [InlineData("lid-fit", "tight 1.05, fits none, loose none, turns none", 0.875, "size-bar")]
    [InlineData("slot-fit", "tight none, fits none, loose 0.05", null, "size-bar")]
    [InlineData("slot-fit", "tight 1.05, fits none, loose none", 0.875, "size-bar")]
    [InlineData("inlay-fit", "tight none, fits none, loose 0.05", null, "size-bar")]
    [InlineData("inlay-fit", "tight 1.05, fits none, loose none", 0.875, "size-bar")]
    [InlineData("layer-fit", "tight 1.4, fits none, loose none", 1.1, "bridges")]
    public void None_fits_at_the_end_of_what_a_fit_can_be_leads_to_the_coupon_that_tells_why(
        string kind, string answers, double? around, string next)
    {
        Reading reading = CouponKinds.Find(kind)!.Read(Samples.Wish() with { Around = around }, Sheet(answers));
        Assert.Empty(reading.Faults);
        Assert.Empty(reading.Values);
        Assert.NotEmpty(reading.Notes);
        Assert.Null(reading.NextAround);
        Assert.Equal(next, reading.NextKind);
        Assert.NotNull(CouponKinds.Find(next));
    }

    [Fact]
    public void Farther_gaps_that_are_all_too_loose_lead_back_to_the_usual_ones()
    {
        CouponWish farther = Samples.Wish() with { Around = 0.875 };
        Reading reading = CouponKinds.Find("slot-fit")!.Read(farther, Sheet("tight none, fits none, loose 0.6"));
        Assert.Equal(0.375, reading.NextAround!.Value, 0.001);
        Coupon again = CouponKinds.Find("slot-fit")!.Draw(farther with { Around = reading.NextAround });
        Assert.Equal(0.1, again.Pieces[0].Steps[0].Value);
    }

    [Fact]
    public void A_roof_that_leaves_play_at_one_layer_is_as_close_as_layers_print()
    {
        Reading reading = CouponKinds.Find("layer-fit")!.Read(Samples.Wish(), Sheet("tight none, fits none, loose 0.2"));
        Assert.Equal(0.2, reading.Value("layer-fit"));
        Assert.Contains("nothing closer than 0.2 mm prints", Assert.Single(reading.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void Lids_slots_and_seats_out_of_reach_are_settled_by_the_next_coupon()
    {
        // Outer walls swell by nearly a millimetre: no usual gap takes anything.
        var printer = new SimulatedPrinter(0.9, -0.4, -0.4, 0.0045);
        foreach ((string kind, double wanted) in new[]
        {
            ("lid-fit", SimulatedPrinter.WantedGap), ("slot-fit", SimulatedPrinter.WantedGap), ("inlay-fit", SimulatedPrinter.InlayWanted),
        })
        {
            Calibration first = ThroughTheFile.Read(printer, ThroughTheFile.Drawn(Samples.Wish(), kind), WrittenBoard.Shipped);
            Assert.Empty(first.Faults);
            Assert.Empty(first.Found);
            NextCoupon next = Assert.Single(first.Next);
            Assert.Equal(kind, next.Kind.Name);
            Calibration second = ThroughTheFile.Read(printer, ThroughTheFile.Drawn(next.Wish, kind), WrittenBoard.Shipped);
            Assert.Equal(wanted + 0.65, second.Found.Single().Values[0].Value, 0.03);
        }
    }

    private static AnswerSheet Sheet(string answers) => new(answers.Split(", ").Select(each => each.Split(' '))
        .ToImmutableDictionary(each => each[0], each => each[1], StringComparer.Ordinal));

    // What would not fit in the hand.
    private static ImmutableArray<string> Misfits(SimulatedPrinter printer, ProfileLibrary library)
    {
        var board = new WrittenBoard
        {
            Outline = "{disc: 90}",
            Light = "{through: front, look: pixels}",
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1}"],
            Cable = "{part: J1}",
            Mount = "magnets",
        };
        BoardReadResult read = BoardFileReader.Read("board.yaml", board.Text, library, []);
        BoardFile file = read.File ?? throw new InvalidOperationException(string.Join("\n", read.Diagnostics));
        HousingPlan plan = HousingPlanner.Plan(file);
        var misfits = ImmutableArray.CreateBuilder<string>();
        void Within(string what, double value, double low, double high)
        {
            if (value < low || value > high)
            {
                misfits.Add(FormattableString.Invariant($"{what}: {value:0.000} outside {low:0.000} to {high:0.000}"));
            }
        }

        var magnets = Assert.IsType<MagnetMountPlan>(plan.Mount);
        Within("magnet in pocket", magnets.PocketDiameter + printer.Hole - 8, SimulatedPrinter.MagnetTight - 0.01,
            SimulatedPrinter.MagnetLoose);
        Assert.NotNull(plan.Baffle);
        double seat = file.Print.Printer.InlayFit;
        Within("baffle in seat", printer.GapInHand(seat, printer.Slot), SimulatedPrinter.InlayTight - 0.01,
            SimulatedPrinter.InlayLoose + 0.06);
        MouthProfile profile = WrittenBoard.Shipped.Packages.Find("usb-c-receptacle")!.Mouth!;
        PortPlan port = plan.Ports.Single();
        double nominal = new double[] { profile.OpeningWidth, profile.RecessWidth }.MinBy(width => Math.Abs(port.OpeningWidth - width));
        Within("plug in opening", port.OpeningWidth - nominal + printer.Slot, SimulatedPrinter.PlugTight - 0.01,
            SimulatedPrinter.PlugLoose + 0.05);
        return misfits.ToImmutable();
    }

    private static ProfileLibrary Calibrated(SimulatedPrinter printer) => ThroughTheFile.Library(
        ThroughTheFile.Profiles(printer, ThroughTheFile.Drawn(Samples.Wish(), All), WrittenBoard.Shipped));

    private static Calibration Mixed(params (string Kind, SimulatedPrinter Printer)[] coupons)
    {
        CouponWish wish = Samples.Wish();
        ImmutableArray<MadeCoupon> drawn =
            [.. coupons.Select(each => ThroughTheFile.Drawn(wish, each.Kind)[0])];
        string text = AnswerForm.Text(
            drawn, (coupon, question) => coupons.Single(each => each.Kind == coupon.Kind.Name).Printer.Answer(coupon, question));
        return Calibration.Of(AnswerFileReader.Read("answers.yaml", text, WrittenBoard.Shipped).File!, []);
    }
}
