using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A snap bead that breaks, slips or will not close.</summary>
public sealed class SnapOverstrained() : Rule(
    "snap-overstrained",
    "A closing snap must stay within the strain its filament repeats, keep its catch after tolerances, and close by hand.",
    "A clip that breaks at the first closing, or lets go when warm, is found after the print.",
    "strain = 2 x (interference + spread) / diameter against the filament's repeatable strain along layers (a ring is strained along "
        + "them), 1.5 x stops; catch = interference - spread; force: tub and cover give as ends of round walls, on what rides at once "
        + "while the tilted cover is pressed down from one side, along the flank that is built, against 150 N",
    "snap-fit design guides for closed rings, lead-in 30 to 45 degrees; end of a long cylinder from shell theory; friction 0.3, a hand "
        + "150 N, typical")
{
    private const double LeastCatch = 0.15;
    private const double Hand = 150;

    /// <summary>Share of the repeatable strain from which a ring may break at the first closing: guides allow that much once.</summary>
    private const double BreaksFrom = 1.5;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.Closure is not SnapClosurePlan snap)
        {
            yield break;
        }

        double inner = housing.Plan.Shell.Round?.Inner ?? housing.Plan.Shell.Cavity.Filled().FarthestAlong(Angle.Zero);
        var at = new Point3(inner, 0, snap.BeadZ);
        if (Math.Round(snap.CatchAfterTolerance, 3) < LeastCatch && snap.LostCatch is { } lost)
        {
            yield return Found(
                Severity.Stop, "snap bead", $"the cover falls off when the print is a little off: {lost.Cause}",
                snap.CatchAfterTolerance, LeastCatch, at,
                $"take {lost.Instead}, or measure your printer's fit ('shellforge coupon', then 'shellforge calibrate')");
        }

        FilamentProfile filament = housing.Board.Print.Shell;
        double allowed = filament.StrainAlongLayers;
        if (snap.Strain > allowed)
        {
            yield return Found(
                snap.Strain > BreaksFrom * allowed ? Severity.Stop : Severity.Warn, "snap bead",
                $"closing strains the ring by up to {100 * snap.Strain:0.00} %; {filament.Name} bears {100 * allowed:0.0} % repeatedly",
                100 * snap.Strain, 100 * allowed, at,
                "take a tougher filament for the shell, 'closure: screws', or measure your printer's fit ('shellforge coupon', then "
                    + "'shellforge calibrate')", "%");
        }

        if (snap.ClosingForce > Hand)
        {
            yield return Found(
                Severity.Warn, "snap bead", $"closing it takes about {snap.ClosingForce:0} N, more than a hand gives",
                snap.ClosingForce, Hand, at, "take fewer lines of wall, a softer filament for the shell, or 'closure: screws'", "N");
        }
    }
}
