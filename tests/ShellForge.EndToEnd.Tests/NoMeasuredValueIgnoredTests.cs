using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Pipeline;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>No value that a coupon gives is taken and ignored: each changes a plan or what a rule finds, and the plan names it.</summary>
public sealed class NoMeasuredValueIgnoredTests
{
    // Measured before in each case: what outer sizes, holes and slots take, which fits follow from.
    private const string Base = "outer-allowance: [0, x]\n    hole-allowance: [0.2, x]\n    slot-allowance: [0.2, x]";

    public static TheoryData<string, double, string> Planned() => new()
    {
        { "outer-allowance", -0.2, "snap" },
        { "hole-allowance", 0.5, "snap" },
        { "slot-allowance", 0.5, "snap" },
        { "lip-fit", 0.4, "snap" },
        { "slot-fit", 0.45, "snap" },
        { "moving-fit", 0.7, "slot" },
        { "inlay-fit", 0.5, "snap" },
        { "layer-fit", 0.6, "twist" },
        { "plug-allowance", 0.4, "snap" },
        { "magnet-allowance", 0.35, "twist" },
        { "battery-fit", 0.9, "battery" },
        { "overhang", 35, "snap" },
        { "bridge-note", 3, "snap" },
        { "snap-force", 2.5, "snap" },
        { "accuracy", 0.06, "snap" },
        { "shrinkage", 0.007, "snap" },
    };

    public static TheoryData<string, double, string, string> Judged() => new()
    {
        { "thinnest-wall", 1.2, "snap", "feature-vanishes" },
        { "shrinkage-spread", 0.012, "snap", "screws-may-not-start" },

        // The keyhole's slot is bridged over 4.8 mm: clean on a usual printer, sagging or falling on one that was measured to do less.
        { "bridge-warn", 4.5, "glue-keyhole", "nothing-below" },
        { "bridge-stop", 4.6, "glue-keyhole", "nothing-below" },
    };

    [Theory]
    [MemberData(nameof(Planned))]
    public void A_measured_value_changes_what_is_planned_and_is_named(string key, double value, string board)
    {
        HousingPlan before = HousingPlanner.Plan(Read(board, null));
        HousingPlan after = HousingPlanner.Plan(Read(board, (key, value)));
        Assert.NotEqual(OutcomeText.Of(before), OutcomeText.Of(after));
        Named(after, key, value);
    }

    [Theory]
    [MemberData(nameof(Judged))]
    public void A_measured_value_that_only_rules_look_at_changes_what_they_find(string key, double value, string board, string rule)
    {
        IRule judge = RuleList.All.Single(each => each.Name == rule);
        string Found((string, double)? measured) => string.Join('\n', CheckRun.Run(HousingPipeline.Draw(Read(board, measured)), [judge])
            .Select(finding => $"{finding.Severity} {finding.Subject} {finding.Message} {finding.Limit}"));
        Assert.NotEqual(Found(null), Found((key, value)));
        Named(HousingPlanner.Plan(Read(board, (key, value))), key, value);
    }

    // Whoever measured a printer that bridges badly is told before the print what it can't do; with the usual figures nothing is.
    [Theory]
    [InlineData("bridge-warn", 4.5, Severity.Warn)]
    [InlineData("bridge-stop", 4.6, Severity.Stop)]
    public void A_bridge_beyond_the_measured_limit_is_told_of_a_board_that_was_fine_before(string key, double value, Severity severity)
    {
        IRule rule = RuleList.All.Single(each => each.Name == "nothing-below");
        Assert.Empty(CheckRun.Run(HousingPipeline.Draw(Read("glue-keyhole", null)), [rule]));
        Finding told = Assert.Single(CheckRun.Run(HousingPipeline.Draw(Read("glue-keyhole", (key, value))), [rule]));
        Assert.Equal((severity, "tub", value), (told.Severity, told.Subject, told.Limit));
        Assert.InRange(told.Measured!.Value, value, 5);
    }

    [Fact]
    public void Every_value_that_is_measured_is_among_them() => Assert.Equal(
        PairingSize.All.Select(size => size.Key).Order(StringComparer.Ordinal),
        Planned().Select(row => (string)row[0]).Concat(Judged().Select(row => (string)row[0]))
            .Order(StringComparer.Ordinal));

    private static void Named(HousingPlan plan, string key, double value)
    {
        Decision named = Assert.Single(plan.Decisions, decision => decision.Path == $"print.measured.{key}");
        Assert.Equal(value.ToString("0.###", CultureInfo.InvariantCulture), named.Value);
        Assert.StartsWith("measured 2026-11-30", named.Why, StringComparison.Ordinal);
    }

    private static BoardFile Read(string board, (string Key, double Value)? measured)
    {
        string lines = string.Join('\n', Base.Split('\n')
            .Where(line => measured is null || !line.Contains(measured.Value.Key, StringComparison.Ordinal)));
        string own = measured is { } set
            ? FormattableString.Invariant($"    {set.Key}: [{set.Value}, \"measured 2026-11-30, coupon x\"]\n") : "";
        ProfileLoadResult loaded = ProfileLibrary.Load([("measured.yaml",
            "format: shellforge-profiles/1\npairings:\n  p:\n    printer: fdm-0.4\n    filament: petg-black\n"
                + $"    {lines.TrimStart()}\n{own}")]);
        Assert.True(loaded.Diagnostics.IsEmpty, string.Join("\n", loaded.Diagnostics));
        WrittenBoard written = board switch
        {
            "twist" => new WrittenBoard { Closure = "twist", Mount = "magnets" },
            "battery" => new WrittenBoard { Outline = "{disc: 90}", Housing = ["battery: 14500"] },
            "slot" => new WrittenBoard
            {
                Outline = "{disc: 90}",
                Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 2.5}"],
                Cable = "{part: J1}",
            },
            _ => new WrittenBoard
            {
                Outline = "{disc: 90}",
                Light = "{through: front, look: pixels}",
                Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1}"],
                Cable = "{part: J1}",
                Housing = ["label: {text: KINDS, height: 5}"],
            },
        };
        string text = board == "glue-keyhole" ? File.ReadAllText(Repository.At("tests", "boards", "forms", board + ".yaml")) : written.Text;
        BoardReadResult read = BoardFileReader.Read("board.yaml", text, loaded.Library, []);
        return read.File ?? throw new InvalidOperationException(string.Join("\n", read.Diagnostics));
    }
}
