using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Decides where a blade opens the housing: two notches in the cover's lower edge, away from ports, where the cover's wall is thickest. In
/// the tub's wall they would meet the groove.
/// </summary>
internal static class PryNotchDecision
{
    // For the blade of a small screwdriver, mm. Typical.
    private const double Width = 8.0;
    private const double Height = 1.2;

    // Not past the lip: light must stay in.
    private const double DepthMost = 1.2;
    private const double Margin = 4.0;

    // Notches at a third of a turn from the port on either side, so that the cover tilts off it.
    private const double AwayDegrees = 120;

    /// <summary>The notches of a housing.</summary>
    public static Decided<ImmutableArray<PryNotchPlan>> Decide(HousingDraft draft, RimSectors rim)
    {
        var reasons = new Reasons();
        if (draft.Closure.NoPryNotches is { } why)
        {
            reasons.Choice("pry-notches", "none", Reasons.Rule, why);
            return reasons.Of<ImmutableArray<PryNotchPlan>>([]);
        }

        double width = Math.Min(Width, rim.Radius / 2);
        double depth = Math.Min(DepthMost, draft.Shell.Wall);
        double height = draft.Basis.UpDistance(Height);
        Angle port = rim.Taken.FirstOrDefault(sector => sector.OpensRim)?.At
            ?? draft.Openings.Select(opening => opening.InUse(0)?.Towards).FirstOrDefault(direction => direction is not null)
            ?? draft.File.Up + Angle.FromDegrees(180);
        var notches = ImmutableArray.CreateBuilder<PryNotchPlan>();
        RimSectors left = rim;
        foreach (double away in new[] { AwayDegrees, -AwayDegrees })
        {
            if (left.NearestFree(port + Angle.FromDegrees(away), width, Margin) is Angle at)
            {
                notches.Add(new PryNotchPlan(at, width, height, depth));
                left = left.With(new RimSector(at, width, "pry notch", false));
            }
        }

        reasons.Choice(
            "pry-notches", notches.Count.ToString(System.Globalization.CultureInfo.InvariantCulture), Reasons.Rule,
            "in the cover's lower edge, away from the port, for a blade 8 wide at most");
        return reasons.Of(notches.ToImmutable());
    }
}
