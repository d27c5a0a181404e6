using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Tests.Print;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Checks.Tests;

public class EqualOnesTests
{
    [Fact]
    public void Equal_findings_of_numbered_screws_become_one_with_the_worst_value_and_place()
    {
        Finding found =
            Assert.Single(FindingMerge.Merge([Of("screw 5", 0.204), Of("screw 6", 0.2), Of("screw 7", 0.203), Of("screw 8", 0.204)]));
        Assert.Equal("screw 5 to 8", found.Subject);
        Assert.Equal(0.2, found.Measured);
        Assert.Equal(6, found.At!.Value.X);
    }

    [Theory]
    [InlineData("1 2", "hole 1 and 2")]
    [InlineData("3 1", "hole 1 and 3")]
    [InlineData("1 2 4", "hole 1, 2 and 4")]
    [InlineData("1 2 3 7 9 10 11", "hole 1 to 3, 7 and 9 to 11")]
    public void All_are_named(string numbers, string subject) =>
        Assert.Equal(subject, Assert.Single(FindingMerge.Merge(numbers.Split(' ').Select(number => Of($"hole {number}", 0.2)))).Subject);

    [Fact]
    public void Unlike_ones_and_parts_stay_as_they_are()
    {
        Finding[] found =
        [
            Of("screw 1", 0.2), Of("boss 2", 0.2), Of("screw 3", 0.2) with { Message = "its head meets D4" },
            Of("screw 4", 0.2) with { Severity = Severity.Stop },
            Of("tub", 0.2), Of("tub", 0.1), Of("J1", 0.2), Of("J2", 0.2),
        ];
        Assert.Equal(found, FindingMerge.Merge(found));
    }

    [Fact]
    public void A_run_of_rules_tells_them_as_one()
    {
        HousingUnderCheck housing = KnownShapes.Housing(Shapes.Box(new Point3(0, 0, 0), new Point3(30, 30, 5)));
        Assert.Equal("screw 1 to 4", Assert.Single(CheckRun.Run(housing, [new Bottoming()])).Subject);
    }

    private static Finding Of(string subject, double measured) => new()
    {
        Rule = "screw-bottoms-out",
        Severity = Severity.Warn,
        Subject = subject,
        Message = "the tip ends 0.2 mm above the bottom of its hole",
        Measured = measured,
        Limit = 0.5,
        Unit = "mm",
        At = new Point3(double.Parse(subject[^1..].Replace("b", "0", StringComparison.Ordinal),
            System.Globalization.CultureInfo.InvariantCulture), 0, 0),
        Remedy = "take the next shorter stock length",
    };

    private sealed class Bottoming() : Rule("screw-bottoms-out", "what", "why", "formula", "source")
    {
        public override IEnumerable<Finding> Check(HousingUnderCheck housing) =>
            [Of("screw 1", 0.2), Of("screw 2", 0.2), Of("screw 3", 0.2), Of("screw 4", 0.2)];
    }
}
