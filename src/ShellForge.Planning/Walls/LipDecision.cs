using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Holders;

namespace ShellForge.Planning.Walls;

/// <summary>
/// Decides the section of the lip that centres the cover in the tub: its ring before the walls, its length with the closure.
/// </summary>
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

    /// <summary>The lip in plan.</summary>
    public static Decided<LipRing> Ring(Given given)
    {
        (BoardFile file, PrintBasis basis) = given;
        var reasons = new Reasons();
        BoardOutline outline = file.Board.Outline;
        double diameter = 2 * outline.OuterRadius;
        double gap = reasons.Length(
            "cover.lip.gap",
            Math.Round(file.Print.Printer.LipFit + (GapPerDiameter * diameter), 2, MidpointRounding.AwayFromZero),
            file.Print.Printer.Name,
            $"{Reasons.Measured("lip fit", file.Print.Printer.LipFit) ?? $"normal fit {Reasons.Mm(file.Print.Printer.LipFit)}"} per side "
                + $"plus 0.05 % of the diameter of {Reasons.Mm(diameter)}");
        double band = outline.OuterRadius - outline.BoreRadius;
        int lines = band < NarrowBand ? 2 : 3;
        double reach = HoldForm.Of(given).LipReach(given);
        int usual = lines;
        while (gap + basis.Wall(lines) < reach - Layers.Slack)
        {
            lines++;
        }

        double thickness = reasons.Length(
            "cover.lip.thickness",
            basis.Wall(lines),
            Reasons.Rule,
            lines > usual ? $"{lines.ToString(CultureInfo.InvariantCulture)} lines: it ends over what holds the board's rim"
                : lines == 2 ? "2 lines: the board's band is narrow and light needs the room" : "3 lines: stiff enough for its length");
        double tongueGap = reasons.Length(
            "cover.tongue.gap", TongueGap, Reasons.Rule, "looser than the lip: a second tight fit would fight the first");
        return reasons.Of(new LipRing(thickness, gap, tongueGap, AboveBoard));
    }

    /// <summary>The lip as long as a closure and the light at the seam need it.</summary>
    public static Decided<LipSection> Long(Given given, LipRing ring, ClosureTraits closure)
    {
        (BoardFile file, PrintBasis basis) = given;
        var reasons = new Reasons();
        (double wanted, string why) = closure.LipOverlap(file, ring);
        return reasons.Of(new LipSection(ring, reasons.Length(
            "cover.lip.overlap", basis.UpDistance(Math.Max(wanted, LightTightOverlap)), Reasons.Rule,
            wanted > LightTightOverlap ? why : $"{Reasons.Mm(LightTightOverlap)} keeps light in at the seam")));
    }
}
