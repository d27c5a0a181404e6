using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Checks.Tests.Print;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Checks.Tests;

public class AcceptTests
{
    private static readonly Solid Gate =
        Shapes.Box(new Point3(-30, -4, 0), new Point3(30, 4, 12)).Less(Shapes.Box(new Point3(-25, -9, -1), new Point3(25, 9, 10)));

    [Fact]
    public void An_accepted_rule_becomes_a_note_with_its_reason()
    {
        Assert.Equal(Severity.Stop, Assert.Single(Run(Gate)).Severity);
        Finding finding = Assert.Single(Run(Gate, new AcceptedRule("nothing-below", "it sags where nobody looks")));
        Assert.Equal(Severity.Note, finding.Severity);
        Assert.Equal("it sags where nobody looks", finding.Accepted);
    }

    [Fact]
    public void An_acceptance_that_meets_nothing_is_told()
    {
        Finding[] found = Run(Shapes.Box(new Point3(0, 0, 0), new Point3(30, 30, 5)), new AcceptedRule("nothing-below", "left over"));
        Assert.Equal("acceptance-without-finding", Assert.Single(found).Rule);
    }

    [Fact]
    public void A_mesh_that_is_no_solid_is_never_accepted()
    {
        Finding[] found = Run(Solid.Empty, new AcceptedRule("audit-failed", "looks fine to me"));
        Assert.Contains(found, finding => finding is { Rule: "audit-failed", Severity: Severity.Stop, Accepted: null });
        Assert.Contains(found, finding => finding is { Rule: "acceptance-without-finding" });
    }

    private static Finding[] Run(Solid shape, params AcceptedRule[] accepted)
    {
        HousingUnderCheck housing = KnownShapes.Housing(shape);
        ImmutableArray<IRule> rules = [new AuditFailed(), new NothingBelow()];
        return [.. CheckRun.Run(housing with { Board = housing.Board with { Accept = [.. accepted] } }, rules)];
    }
}
