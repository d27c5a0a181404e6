using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Decides a twist lock: lugs on the lip enter slots in the tub's wall from above and turn clockwise under its rim,
/// <code>
///   rim ──┐  ┌───────────
///         │  │  /‾‾‾‾‾‾‾   45 degree ceiling, so that it prints
///         │  └──────────┐
///         └─────────────┘ stop
/// </code>
/// One lug stands out of the even spacing: the cover goes in one way only.
/// </summary>
internal static class TwistDecision
{
    // How far a lug reaches under the rim, radially, mm.
    private const double Hold = 0.6;

    // Room round a lug, mm.
    private const double Gap = 0.2;

    // Height of a lug's outer face, mm, and of the rim over the slot's mouth.
    private const double LugFace = 1.0;
    private const double RimOver = 0.8;

    // Lug along the wall, mm, and as a share of the spacing.
    private const double LugLength = 10;
    private const double LugShare = 0.25;

    // One lug for so many mm of diameter.
    private const double DiameterPerLug = 30;

    // How far the odd lug stands out of the spacing, as a share of it: less, and it would enter by force.
    private const double OddShare = 0.12;

    // Lines of plastic outside a slot.
    private const int SkinLines = 2;

    /// <summary>Overlap of the lip that lugs and rim need, mm.</summary>
    public static double Overlap(double gap) => RimOver + LugRise(gap) + LugFace + (2 * Gap);

    /// <summary>Why this housing can't be twisted shut; null when it can.</summary>
    public static string? Obstacle(HousingDraft draft, RimSectors rim)
    {
        if (draft.Shell.Round is null)
        {
            return "the outline is not round";
        }

        string[] tongues = [.. rim.Taken.Where(sector => sector.OpensRim).Select(sector => sector.What)];
        return tongues.Length > 0
            ? $"the cover's tongue in the slot at {string.Join(" and ", tongues)} can't turn"
            : draft.Shell.Wall - Hold - Gap < draft.Basis.Wall(SkinLines) - Layers.Slack
                ? $"a wall of {Reasons.Mm(draft.Shell.Wall)} leaves no two lines outside the slots"
                : null;
    }

    /// <summary>The lugs of a round housing.</summary>
    public static Decided<TwistClosurePlan> Decide(HousingDraft draft, double lipBottom)
    {
        var reasons = new Reasons();
        double radius = draft.Shell.Round!.Inner;
        int count = Math.Clamp((int)Math.Round(2 * radius / DiameterPerLug), 3, 6);
        double spacing = 360.0 / count;
        Angle sweep = Angle.FromDegrees(Math.Min(
            Angle.FromRadians(LugLength / radius).Degrees, LugShare * spacing));
        Angle clear = Angle.FromRadians(Gap / radius);
        Angle turn = sweep + (4 * clear);
        Angle first = draft.File.Up;
        ImmutableArray<Angle> lugs =
        [
            .. Enumerable.Range(0, count).Select(i =>
                (first + Angle.FromDegrees((i * spacing) + (i == 1 ? OddShare * spacing : 0))).Normalized),
        ];
        reasons.Choice(
            "closure.lugs", count.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
            $"by diameter; the second stands {Reasons.Mm(Math.Round(OddShare * spacing, 1))} degrees out of the spacing: it is the key");
        reasons.Choice(
            "closure.turn", $"{Reasons.Mm(Math.Round(turn.Degrees, 1))} degrees clockwise", Reasons.Rule, "a lug's length and its gaps");
        double bottom = lipBottom + Gap;
        return reasons.Of(new TwistClosurePlan
        {
            Lugs = lugs,
            LugSweep = sweep,
            Turn = turn,
            LugBottom = bottom,
            LugTop = bottom + LugFace,
            LugHeight = draft.Lip.Gap + Hold,
            Gap = Gap,
        });
    }

    // The upper face of a lug rises at 45 degrees from its outer face to the lip.
    private static double LugRise(double gap) => gap + Hold;
}
