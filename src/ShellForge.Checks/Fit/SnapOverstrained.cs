using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A snap bead that breaks, slips or will not close.</summary>
public sealed class SnapOverstrained() : Rule(
    "snap-overstrained",
    "A closing snap must stay within the strain its filament repeats, keep its catch after tolerances, and close by hand.",
    "A clip that breaks at the first closing, or lets go when warm, is found after the print.",
    "strain = 2 x interference / mean diameter against the filament's repeatable strain along layers (a ring is strained along them); catch = interference - spread; force from ring stiffness over the wall's bending length 0.78 sqrt(R t), a fifth of the ring pressed at a time, against 150 N",
    "snap-fit design guides for closed rings; bending length of a cylinder's edge from shell theory; friction 0.3, typical")
{
    private const double LeastCatch = 0.15;

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
                Severity.Stop, "snap bead", $"with all spreads against it too little catch is left to hold the cover: {lost.Cause}",
                snap.CatchAfterTolerance, LeastCatch, at, $"take {lost.Instead}, or print a coupon and write the measured fit into the printer profile");
        }

        if (housing.Plan.Shell.Round is not { } round)
        {
            yield break;
        }

        FilamentProfile filament = housing.Board.Print.Shell;
        double allowed = filament.StrainAlongLayers;
        if (snap.Strain > allowed)
        {
            yield return Found(
                snap.Strain > 1.5 * allowed ? Severity.Stop : Severity.Warn, "snap bead",
                $"closing strains the ring by {100 * snap.Strain:0.0} %, {filament.Name} repeats {100 * allowed:0.0} %",
                100 * snap.Strain, 100 * allowed, at, "take a lower bead by a tighter printer profile, a tougher filament, or 'closure: screws'", "%");
        }

        double force = SnapForce.Closing(
            snap.Interference, round.Inner, housing.Plan.Cover.LipThickness, housing.Plan.Shell.Wall, filament.ModulusMegapascals, snap.Interruptions);
        if (force > SnapForce.Hand)
        {
            yield return Found(
                Severity.Warn, "snap bead", $"closing takes about {force:0} N, more than a hand gives", force, SnapForce.Hand, at,
                "take fewer lines of wall, or 'closure: screws'", "N");
        }
    }
}
