using ShellForge.Board.Description;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Walls;

/// <summary>Decides the section of the lip that centres the cover in the tub, long enough for the closure wanted.</summary>
internal static class LipDecision
{
    /// <summary>Overlap that keeps light in at the seam, mm. Source: trade knowledge, lip overlap of at least 1.5.</summary>
    private const double LightTightOverlap = 1.5;

    /// <summary>Least height of the lip's end above the board, mm: board thickness spreads by a tenth, bow by 0.1 near the edge.</summary>
    private const double AboveBoard = 0.3;

    /// <summary>Share of the diameter that a larger lip gets as gap: prints shrink and go out of round in proportion.</summary>
    private const double GapPerDiameter = 0.0005;

    /// <summary>Gap of the tongue round an open bore, mm. Typical: 0.35 to 0.4.</summary>
    private const double TongueGap = 0.4;

    /// <summary>Bands narrower than this get a thinner lip, mm: light has more use for the room.</summary>
    private const double NarrowBand = 12;

    /// <summary>The section for a board.</summary>
    public static Decided<LipSection> Decide(BoardFile file, PrintBasis basis)
    {
        var reasons = new Reasons();
        BoardOutline outline = file.Board.Outline;
        double diameter = 2 * outline.OuterRadius;
        double gap = reasons.Length(
            "cover.lip.gap",
            Math.Round(file.Print.Printer.NormalFit + (GapPerDiameter * diameter), 2, MidpointRounding.AwayFromZero),
            file.Print.Printer.Name,
            $"normal fit {Reasons.Mm(file.Print.Printer.NormalFit)} per side plus 0.05 % of the diameter of {Reasons.Mm(diameter)}");
        double band = outline.OuterRadius - outline.BoreRadius;
        int lines = band < NarrowBand ? 2 : 3;
        double thickness = reasons.Length(
            "cover.lip.thickness",
            basis.Wall(lines),
            Reasons.Rule,
            lines == 2 ? "2 lines: the board's band is narrow and light needs the room" : "3 lines: stiff enough for its length");
        (double wanted, string why) = file.Housing.Closure switch
        {
            ClosureKind.Snap => (SnapOverlap(file, gap), "room for the snap bead with a land above and below"),
            ClosureKind.Twist => (TwistDecision.Overlap(gap), "room for the lugs under the tub's rim"),
            _ => (LightTightOverlap, "1.5 keeps light in at the seam"),
        };
        double overlap = reasons.Length(
            "cover.lip.overlap", basis.UpDistance(Math.Max(wanted, LightTightOverlap)), Reasons.Rule, why);
        double tongueGap = reasons.Length(
            "cover.tongue.gap", TongueGap, Reasons.Rule, "looser than the lip: a second tight fit would fight the first");
        return reasons.Of(new LipSection(thickness, gap, tongueGap, overlap, AboveBoard));
    }

    private static double SnapOverlap(BoardFile file, double gap) =>
        SnapSection.Of(SnapSection.RingOf(file.Board.Outline), gap, file.Print.Shell, file.Print.Printer).Width + (2 * SnapSection.Land);
}
