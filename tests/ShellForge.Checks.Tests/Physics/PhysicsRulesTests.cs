using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Heat;
using ShellForge.Checks.Light;
using ShellForge.Checks.Power;
using ShellForge.Physics.Heat;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Physics;

/// <summary>
/// The shipped tide lamp with one value changed at a time. Heat and power need no solids; light here falls past the board alone, which
/// suffices for which way it moves.
/// </summary>
public class PhysicsRulesTests
{
    private static readonly string Text = File.ReadAllText(Path.Combine(Repository.Root, "out-samples", "tide-lamp", "board.yaml"));
    private static readonly ProfileLibrary Profiles = ProfileLibrary.Load([]).Library;

    private static readonly ConcurrentDictionary<string, Lazy<HousingUnderCheck>> Lamps = new();

    // Several tests ask for the same lamp: each is planned once.
    private static HousingUnderCheck Lamp(params string[] set) =>
        Lamps.GetOrAdd(string.Join('\n', set), _ => new Lazy<HousingUnderCheck>(() => Planned(WithDistance(set)))).Value;

    // The distance that the plan finds for the lamp as it is; found anew only where the light is changed.
    private static string[] WithDistance(string[] set) =>
        set.Any(each => each.StartsWith("housing.", StringComparison.Ordinal) || each.StartsWith("print.", StringComparison.Ordinal)
            || each.StartsWith("board.", StringComparison.Ordinal))
            ? set : [.. set, "housing.diffuser.distance=5"];

    private static HousingUnderCheck Planned(string[] set)
    {
        BoardReadResult read = BoardFileReader.Read("board.yaml", Text, Profiles, [.. set.Select(SetOverride.Parse)]);
        Assert.True(read.File is not null, string.Join("\n", read.Diagnostics));
        return new HousingUnderCheck { Board = read.File, Plan = HousingPlanner.Plan(read.File), Parts = [] };
    }

    private static string Told(IRule rule, params string[] set) =>
        string.Join(" ", rule.Check(Lamp(set)).Select(finding => $"{finding.Severity} {finding.Subject}"));

    [Theory]
    [InlineData("", "Note usb-c-1.5A")]
    [InlineData("power.capped=false", "Warn usb-c-1.5A")]
    [InlineData("power.brightness=0.9", "Warn usb-c-1.5A")]
    [InlineData("power.supply=usb-c-3A", "")]
    [InlineData("power.supply=usb-default", "Warn usb-default")]
    public void The_supply_is_overloaded_when_the_firmware_lets_it(string set, string told) =>
        Assert.Equal(told, Told(new SupplyOverloaded(), set.Length > 0 ? [set] : []));

    // A lamp that is too warm and asks too much of its supply: who does as the first finding says must not meet the second.
    [Theory]
    [InlineData("usb-default", "20")]
    [InlineData("usb-c-1.5A", "25")]
    public void Findings_that_dimming_settles_name_one_brightness_and_it_settles_all(string supply, string ambient)
    {
        string[] set = [$"power.supply={supply}", $"use.ambient={ambient}", "print.shell=pla-black"];
        IRule[] rules = [new SupplyOverloaded(), new PlasticTooWarm(), new LedsTooWarm()];
        Finding[] told =
        [
            .. rules.SelectMany(rule => rule.Check(Lamp([.. set, "power.capped=false"])))
                .Where(finding => finding.Severity != Severity.Note),
        ];
        Assert.True(told.Length > 1, string.Join("\n", told.Select(finding => finding.Message)));
        string[] named = [.. told.Select(finding => Regex.Match(finding.Remedy, @"cap .*? of 255 and write '[^']*'").Value).Distinct()];
        string brightness = Regex.Match(Assert.Single(named), @"brightness: ([\d.]+)").Groups[1].Value;

        Assert.All(rules.SelectMany(rule => rule.Check(Lamp([.. set, $"power.brightness={brightness}", "power.capped=true"]))),
            finding => Assert.Equal(Severity.Note, finding.Severity));
    }

    [Theory]
    [InlineData("", "")]
    [InlineData("power.supply={volts: 12, amps: 2}", "Stop 12 V, 2 A")]
    [InlineData("power.supply={volts: 48, amps: 2}", "Stop 48 V, 2 A")]
    [InlineData("power.supply={volts: 3, amps: 2}", "Stop 3 V, 2 A")]
    [InlineData("power.supply={volts: 60, amps: 2}", "Stop 60 V, 2 A")]
    [InlineData("power.supply=cell-3.7V-1A", "Note cell-3.7V-1A")]
    public void A_voltage_that_LEDs_or_hands_do_not_bear_is_told(string set, string told) =>
        Assert.Equal(told, Told(new VoltageOff(), set.Length > 0 ? [set] : []));

    [Fact]
    public void A_connector_whose_contacts_carry_less_stops_the_print()
    {
        Assert.Equal("", Told(new ContactsOverloaded()));
        HousingUnderCheck lamp = Lamp("power.capped=false", "board.pixels.count=60", "board.pixels.package=2020");
        HousingUnderCheck many = lamp with
        {
            Board = lamp.Board with
            {
                Board = lamp.Board.Board with
                {
                    PixelCircles = [.. lamp.Board.Board.PixelCircles, .. lamp.Board.Board.PixelCircles, .. lamp.Board.Board.PixelCircles],
                },
            },
        };
        Assert.Equal(["Stop J1"], new ContactsOverloaded().Check(many).Select(finding => $"{finding.Severity} {finding.Subject}"));
    }

    [Fact]
    public void Long_rings_on_one_feed_drop_and_two_feeds_mend_it()
    {
        Assert.Equal("", Told(new RingDrops()));
        HousingUnderCheck lamp = Lamp("power.capped=false");
        PixelCircle circle = lamp.Board.Board.PixelCircles[0];
        HousingUnderCheck longer = lamp with
        {
            Board = lamp.Board with
            {
                Board = lamp.Board.Board with
                {
                    PixelCircles = [circle with { Pixels = [.. Enumerable.Repeat(circle.Pixels, 4).SelectMany(pixels => pixels)] }],
                },
            },
        };
        Finding finding = Assert.Single(new RingDrops().Check(longer));
        Assert.Contains("2 evenly spread", finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(22, 0.4, "")]
    [InlineData(28, 0.2, "")]
    [InlineData(28, 1.0, "Warn lead")]
    [InlineData(30, 0.4, "Warn lead")]
    public void Leads_are_held_against_their_enclosed_rating(int gauge, double brightness, string told)
    {
        string wires = $"board.wires=[{{name: lead, at: [0, 30], conductors: 2, gauge: {gauge}, to: out}}]";
        Assert.Equal(told, Told(new LeadTooThin(), wires, FormattableString.Invariant($"power.brightness={brightness}")));
    }

    [Theory]
    [InlineData("out", "Warn lead")]
    [InlineData("J1", "")]
    public void A_lead_to_a_part_of_the_board_is_as_long_as_the_way_there_and_carries_a_share(string to, string told)
    {
        // 24 LEDs of 60 mA and a controller: some 1.55 A, which a metre of gauge 24 carries with a drop of 0.26 V.
        string wires = $"board.wires=[{{name: lead, at: [0, 30], conductors: 2, gauge: 24, to: {to}}}]";
        Assert.Equal(told, Told(new LeadTooThin(), wires, "power.brightness=1"));
    }

    [Theory]
    [InlineData("", "Note board")]
    [InlineData("power.capped=false", "Warn board")]
    [InlineData("use.ambient=45", "Warn board")]
    [InlineData("power.brightness=1", "Stop board")]
    [InlineData("print.shell=pla-black", "Warn board")]
    public void Plastic_gets_too_warm_where_it_does(string set, string told) =>
        Assert.Equal(told, Told(new PlasticTooWarm(), set.Length > 0 ? [set] : []));

    [Fact]
    public void Every_wish_moves_the_temperatures_its_way()
    {
        double Board(params string[] set) => Lamp(set).Heat.Planned[HeatBody.Board].Celsius;
        double at = Board();

        // Eight degrees more outside are a little less inside: warmer faces radiate better.
        Assert.InRange(Board("use.ambient=38") - at, 6.5, 8);
        Assert.True(Board("power.brightness=0.3") > at);
        Assert.True(Board("power.duty=0.5") < at);
        Assert.True(Board("use.orientation=hanging") < at);
        Assert.True(Lamp("use.ambient=38").Heat.LargestBrightness < Lamp().Heat.LargestBrightness);
        Assert.True(Lamp("print.shell=asa-black", "print.diffuser=asa-white").Heat.LargestBrightness > Lamp().Heat.LargestBrightness);
        NodeTemperature leds = Lamp().Heat.Planned[HeatBody.Leds];
        Assert.InRange(leds.Celsius - at, 1, 20);
    }

    [Fact]
    public void Limits_hold_at_the_warm_end_of_the_air_and_both_ends_are_told()
    {
        HousingHeat one = Lamp("use.ambient=45").Heat;
        HousingHeat range = Lamp("use.ambient=[5, 45]").Heat;
        Assert.Null(one.PlannedCoolest);
        Assert.Equal<NodeTemperature>([.. one.Planned.Nodes], [.. range.Planned.Nodes]);
        Assert.Equal(one.LargestBrightness, range.LargestBrightness);
        Assert.Equal<NodeTemperature>([.. Lamp("use.ambient=5").Heat.Planned.Nodes], [.. range.PlannedCoolest!.Nodes]);
        Assert.Equal(5, range.PlannedCoolest.WarmUp[0].AirCelsius, 6);
        Assert.Equal("Warn board", Told(new PlasticTooWarm(), "use.ambient=[5, 45]"));
    }

    [Fact]
    public void Currents_are_told_as_they_are_drawn()
    {
        Finding note = Assert.Single(new SupplyOverloaded().Check(Lamp()));
        Assert.Equal("At full white: up to 1.54 A (worst LEDs), too much for this supply (1.2 A, 80 % of its 1.5 A). At your 20 %: 0.41 A.",
            note.Message);
        Assert.Equal("keep the firmware at or below 193 of 255", note.Remedy);
        Finding weak = Assert.Single(new SupplyOverloaded().Check(Lamp("power.supply={volts: 5, amps: 0.1}")));
        Assert.Equal("dimming does not help, since dark LEDs and controller alone draw more: take a supply of 1.0 A or more", weak.Remedy);
    }

    [Fact]
    public void No_remedy_asks_for_a_brightness_of_nothing()
    {
        foreach (string ambient in new[] { "use.ambient=30", "use.ambient=45", "use.ambient=55", "use.ambient=58" })
        {
            foreach (Finding finding in new Rule[] { new PlasticTooWarm(), new LedsTooWarm() }.SelectMany(
                rule => rule.Check(Lamp(ambient))))
            {
                Assert.DoesNotContain(" 0 of 255", finding.Remedy, StringComparison.Ordinal);
                Assert.DoesNotContain("degC", finding.Message + finding.Unit, StringComparison.Ordinal);
            }
        }

        Finding hot = Assert.Single(new PlasticTooWarm().Check(Lamp("use.ambient=58")));
        Assert.StartsWith("dimming alone does not help: print it of pc ('print: {shell: pc-black, diffuser: pc-white}')", hot.Remedy,
            StringComparison.Ordinal);
        Assert.Contains("fewer LEDs or a larger board", hot.Remedy, StringComparison.Ordinal);
        Assert.Contains("'vents: floor'", hot.Remedy, StringComparison.Ordinal);
    }

    // Polycarbonate is good to 95 degrees; nothing that there is a profile of bears more.
    [Fact]
    public void No_remedy_asks_for_a_filament_that_nobody_has()
    {
        Finding hot = Assert.Single(new PlasticTooWarm().Check(Lamp("use.ambient=80")));
        Assert.DoesNotContain("print it of", hot.Remedy, StringComparison.Ordinal);
        ProfileLibrary own = ProfileLibrary.Load(
            [("mine.yaml",
                "format: shellforge-profiles/1\nfilaments:\n  hot-black: {like: pc-black, family: hot, service-limit: [150, mine]}\n"
                    + "  hot-white: {like: pc-white, family: hot, service-limit: [150, mine]}\n")]).Library;
        BoardFile file = BoardFileReader.Read("board.yaml", Text, own, [SetOverride.Parse("use.ambient=80")]).File!;
        Finding told = Assert.Single(new PlasticTooWarm().Check(
            new HousingUnderCheck { Board = file, Plan = HousingPlanner.Plan(file), Parts = [] }));
        Assert.Contains("print it of hot ('print: {shell: hot-black, diffuser: hot-white}')", told.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_brightness_that_a_remedy_names_silences_the_warning()
    {
        Finding warned = Assert.Single(new PlasticTooWarm().Check(Lamp("power.capped=false")));
        string brightness = warned.Remedy.Split("brightness: ")[1].Split(',')[0];
        Assert.All(new PlasticTooWarm().Check(Lamp("power.brightness=" + brightness)), finding =>
        {
            Assert.Equal(Severity.Note, finding.Severity);
            Assert.DoesNotContain("too close", finding.Message, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Coefficients_come_from_the_profile_that_the_file_names()
    {
        ProfileLibrary profiles = ProfileLibrary.Load(
            [("mine.yaml",
                "format: shellforge-profiles/1\nheat: {breeze: {like: still-air, upright-convection: [5, 4, 6, a fan beside it]}}\n")])
                    .Library;
        HousingHeat Heat(string air)
        {
            BoardFile file = BoardFileReader.Read("board.yaml", Text, profiles, [SetOverride.Parse($"use.air={air}")]).File!;
            return new HousingUnderCheck { Board = file, Plan = HousingPlanner.Plan(file), Parts = [] }.Heat;
        }

        Assert.True(Heat("breeze").Planned[HeatBody.Board].Celsius < Heat("still-air").Planned[HeatBody.Board].Celsius - 1);
        Assert.Contains(Heat("breeze").Coefficients.All, each => each.Coefficient.Source == "a fan beside it");
    }

    [Fact]
    public void Vents_are_made_when_the_model_of_heat_says_so_and_air_gets_to_them()
    {
        HousingUnderCheck cool = Lamp("use.orientation=hanging", "power.brightness=0.05");
        HousingUnderCheck warm = Lamp("use.orientation=hanging", "power.brightness=1");
        HousingUnderCheck covered = Lamp("power.brightness=1");
        Assert.Empty(cool.Plan.Vents);
        Assert.NotEmpty(warm.Plan.Vents);
        Assert.Empty(covered.Plan.Vents);
        double sealedRise =
            Lamp("use.orientation=hanging", "power.brightness=1", "housing.vents=none", "housing.diffuser.distance=5")
                .Heat.Planned[HeatBody.InnerAir].Mean - 30;
        Decision told = Assert.Single(warm.Plan.Decisions, decision => decision.Path == "vents");
        Assert.Contains(FormattableString.Invariant($"rises by about {sealedRise:0} K"), told.Why, StringComparison.Ordinal);
        Assert.Contains("lies against", Assert.Single(covered.Plan.Decisions, decision => decision.Path == "vents").Why,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Vents_against_the_wall_are_told_and_cool_nothing()
    {
        Assert.Equal("", Told(new VentsCovered()));
        Assert.Equal("Note vents", Told(new VentsCovered(), "housing.vents=floor"));
        Assert.Equal("", Told(new VentsCovered(), "housing.vents=floor", "use.orientation=hanging"));
        Assert.True(Lamp("housing.vents=floor", "use.orientation=hanging").Heat.Planned[HeatBody.InnerAir].Mean
            < Lamp("housing.vents=none", "use.orientation=hanging").Heat.Planned[HeatBody.InnerAir].Mean);
    }

    [Theory]
    [InlineData("look: blend")]
    [InlineData("look: pixels")]
    public void A_more_even_wish_puts_the_diffuser_farther_away(string look)
    {
        double Distance(string evenness) =>
            Lamp($"housing.light={{through: front, {look}, window: 10, evenness: {evenness}}}").Plan.Diffuser.Distance;
        Assert.True(Distance("dots") <= Distance("soft"));
        Assert.True(Distance("soft") < Distance("even"));
        Assert.True(Distance("0.7") < Distance("0.85"));
    }

    [Fact]
    public void The_plan_reaches_the_evenness_that_it_solves_for()
    {
        foreach (string evenness in new[] { "soft", "even" })
        {
            HousingPlan plan = Lamp($"housing.light={{through: front, look: blend, window: 10, evenness: {evenness}}}").Plan;
            Assert.True(plan.Diffuser.ExpectedMinimumOverMean >= plan.Source.Housing.Light.MinimumOverMean);
        }
    }

    [Fact]
    public void A_diffuser_nearer_than_asked_for_shows_dots()
    {
        const string blend = "housing.light={through: front, look: blend, window: 10, evenness: even}";
        Assert.Equal("Warn diffuser", Told(new DotsShow(), blend, "housing.diffuser.distance=3.6"));
        Assert.Equal("", Told(new DotsShow(), blend, "housing.diffuser.distance=14"));
    }

    [Fact]
    public void A_thick_white_sheet_is_dim_and_a_thin_one_is_not()
    {
        Assert.Equal("", Told(new FrontTooDim()));
        Assert.Equal("Warn diffuser", Told(new FrontTooDim(), "housing.diffuser.thickness=3"));
        Assert.Equal("", Told(new FrontTooDim(), "housing.diffuser.thickness=3", "print.diffuser=petg-natural"));
    }

    [Fact]
    public void White_cell_walls_bleed_and_black_ones_do_not()
    {
        Assert.Equal(Math.Exp(-0.86 / 0.17), Lamp().Light!.ThroughCellWall, 3);
        Assert.InRange(Lamp("print.baffle=petg-white").Light!.ThroughCellWall, 0.2, 0.3);
        Assert.StartsWith("Warn", Told(new CellsBleed(), "print.baffle=petg-white"), StringComparison.Ordinal);
    }

    [Fact]
    public void Cautions_fit_the_supply()
    {
        Assert.Contains(Cautions.All(Lamp()), caution => caution.Risk == "Eyes");
        Assert.DoesNotContain(Cautions.All(Lamp()),
            caution => (caution.Risk + caution.Text).Contains("mains", StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain(Cautions.Of(Lamp()), caution => caution.Text.Contains("Lithium", StringComparison.Ordinal));
        Assert.Contains(Cautions.Of(Lamp("power.supply=cell-3.7V-1A")),
            caution => caution.Text.Contains("Lithium", StringComparison.Ordinal));
        Assert.Equal(Cautions.All(Lamp()).Length, Cautions.All(Lamp()).Select(caution => caution.Text).Distinct().Count());
        Assert.Single(Cautions.All(Lamp()), caution => caution.Text.Contains("flash", StringComparison.Ordinal));
        Assert.Contains(Cautions.Of(Lamp("power.supply={volts: 60, amps: 2}")),
            caution => caution.Text.Contains("electrician", StringComparison.Ordinal));
    }

    [Fact]
    public void A_mount_that_found_no_place_cools_nothing()
    {
        HousingUnderCheck none = Lamp("housing.mount=none");
        HousingUnderCheck refused = none with { Board = Lamp("housing.mount=stand").Board };
        HousingUnderCheck stand = Lamp("housing.mount=stand");

        Assert.Null(refused.Plan.Mount);
        Assert.Equal(FaceDirection.Covered, refused.Heat.Input.FloorDirection);
        Assert.Equal(Warmest(none), Warmest(refused));
        Assert.True(Warmest(stand) < Warmest(none) - 1, $"{Warmest(stand)} on a stand, {Warmest(none)} on the wall");
        static double Warmest(HousingUnderCheck lamp) => lamp.Heat.Planned.Nodes.Max(node => node.Celsius);
    }
}
