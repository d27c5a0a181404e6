using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning;

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
    private const double HandForce = 150;

    /// <summary>A hand presses a ring closed piece by piece, about a fifth of it at a time. Typical: try it on a coupon.</summary>
    private const double PressedShare = 0.2;
    private const double Friction = 0.3;
    private const double LeadInDegrees = 35;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.Closure is not SnapClosurePlan snap || housing.Plan.Shell.Round is not { } round)
        {
            yield break;
        }

        FilamentProfile filament = housing.Board.Print.Shell;
        var at = new Point3(round.Inner, 0, snap.BeadZ);
        double allowed = filament.StrainAlongLayers;
        if (snap.Strain > allowed)
        {
            yield return Found(
                snap.Strain > 1.5 * allowed ? Severity.Stop : Severity.Warn, "snap bead",
                $"closing strains the ring by {100 * snap.Strain:0.0} %, {filament.Name} repeats {100 * allowed:0.0} %",
                100 * snap.Strain, 100 * allowed, at, "take a lower bead by a tighter printer profile, a tougher filament, or 'closure: screws'", "%");
        }

        if (Math.Round(snap.CatchAfterTolerance, 3) < LeastCatch)
        {
            yield return Found(
                Severity.Stop, "snap bead", "with all spreads against it too little catch is left to hold the cover",
                snap.CatchAfterTolerance, LeastCatch, at, "take 'closure: screws' or 'closure: twist', or print a coupon and write the measured fit into the printer profile");
        }

        double force = ClosingForce(snap, round.Inner, housing.Plan.Cover.LipThickness, housing.Plan.Shell.Wall, filament.ModulusMegapascals);
        if (force > HandForce)
        {
            yield return Found(
                Severity.Warn, "snap bead", $"closing takes about {force:0} N, more than a hand gives", force, HandForce, at,
                "take fewer lines of wall, or 'closure: screws'", "N");
        }
    }

    /// <summary>
    /// Force along the axis that rides the bead over piece by piece, N. Lip and wall give in series, each as a ring as wide as its
    /// bending length.
    /// </summary>
    internal static double ClosingForce(SnapClosurePlan snap, double radius, double lip, double wall, double modulus)
    {
        double stiffness = 1 / ((1 / Stiffness(radius, lip, modulus)) + (1 / Stiffness(radius, wall, modulus)));
        double sweep = Math.Max(0, 1 - (snap.Interruptions.Sum(gap => gap.Sweep.Degrees) / 360));
        double radial = stiffness * snap.Interference * 2 * Math.PI * radius * sweep * PressedShare;
        double slope = Angle.FromDegrees(LeadInDegrees).Sin / Angle.FromDegrees(LeadInDegrees).Cos;
        return radial * (slope + Friction) / (1 - (slope * Friction));
    }

    // Radial line load per mm of give: E t w / R^2 with the ring as wide as the wall bends along the axis.
    private static double Stiffness(double radius, double thickness, double modulus) =>
        modulus * thickness * 0.78 * Math.Sqrt(radius * thickness) / (radius * radius);
}
