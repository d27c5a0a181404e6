using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Closures;

/// <summary>
/// Decides the snap bead. Strain counts the interference only, since the gap is free way; what is left to catch after both parts
/// came out against it decides whether the closure may be used at all.
/// </summary>
internal static class SnapDecision
{
    // The groove is deeper than the bead reaches, mm.
    private const double GrooveDeeper = 0.1;

    // Plastic outside the groove, mm: the least wall a printer makes sound.
    private const double Skin = 0.8;

    // Annular covers wider than this bow: short beads hold them at the bore too. Number, length along the wall, interference, mm.
    private const double WideBand = 20;
    private const int HookCount = 3;
    private const double HookLength = 8;
    private const double HookInterference = 0.25;

    // Bead left out beyond a slot's edges on either side, mm, so that it does not ride over a tongue's flank.
    private const double PastSlot = 1.5;

    /// <summary>Bead and groove of a housing.</summary>
    public static Decided<SnapClosurePlan> Decide(HousingDraft draft, RimSectors rim, KeyPlan key, double lipBottom)
    {
        var reasons = new Reasons();
        BoardFile file = draft.File;
        FilamentProfile filament = file.Print.Shell;
        Region lipOutside = draft.Shell.Cavity.Filled().Offset(-draft.Lip.Gap);
        double diameter = draft.Shell.Round is RoundShell round
            ? 2 * (round.Inner - draft.Lip.Gap)
            : lipOutside.Perimeter / Math.PI;
        SnapSection section = SnapSection.Of(SnapSection.RingOf(file.Board.Outline), draft.Lip.Gap, filament, file.Print.Printer);
        double room = draft.Shell.Wall - Skin - GrooveDeeper;
        double interference = Math.Min(section.Interference, Math.Max(room, 0));
        double grooveDepth = interference + GrooveDeeper;
        double caught = interference - file.Print.Printer.Accuracy;
        double strain = 2 * interference / diameter;
        reasons.Length(
            "closure.bead.interference", interference, filament.Name,
            string.Create(CultureInfo.InvariantCulture,
                $"catch of {SnapSection.CatchMinimum} after a spread of {Reasons.Mm(file.Print.Printer.Accuracy)}; strain {strain:0.00%} of {(double)filament.StrainAlongLayers:0.0%} allowed"));
        double height = reasons.Length(
            "closure.bead.height", draft.Lip.Gap + interference, Reasons.Rule,
            $"gap {Reasons.Mm(draft.Lip.Gap)} plus interference {Reasons.Mm(interference)}");
        ImmutableArray<(Angle From, Angle Sweep)> interruptions = Interruptions(rim, key);
        if (draft.Shell.Round is RoundShell ring)
        {
            double Force(IEnumerable<(Angle, Angle)> gaps) =>
                SnapForce.Closing(interference, ring.Inner, draft.Lip.Thickness, draft.Shell.Wall, filament.ModulusMegapascals, gaps);
            ImmutableArray<(Angle From, Angle Sweep)> split = SnapForce.Split(interruptions, ring.Inner, Force);
            if (split != interruptions)
            {
                reasons.Choice("closure.bead.pieces", split.Length.ToString(CultureInfo.InvariantCulture), Reasons.Rule, string.Create(
                    CultureInfo.InvariantCulture, $"all round it would take {Force(interruptions):0} N to close, a hand gives {SnapForce.Hand:0}: in pieces it takes {Force(split):0} N"));
                interruptions = split;
            }
        }

        return reasons.Of(new SnapClosurePlan
        {
            BeadZ = lipBottom + SnapSection.Land + height + (SnapSection.Crest / 2),
            BeadHeight = height,
            Interference = interference,
            GrooveDepth = grooveDepth,
            BeadWidth = (2 * height) + SnapSection.Crest,
            Strain = strain,
            CatchAfterTolerance = caught,
            LostCatch = caught < SnapSection.CatchMinimum - Layers.Slack
                ? Lost(draft, rim, interference < section.Interference, diameter) : null,
            Interruptions = interruptions,
            BoreHooks = Hooks(draft, reasons),
            BoreHookHeight = draft.Lip.TongueGap + HookInterference,
            BoreGrooveDepth = HookInterference + GrooveDeeper,
        });
    }

    private static ImmutableArray<(Angle From, Angle Sweep)> Hooks(HousingDraft draft, Reasons reasons)
    {
        if (draft.Shell.Round is not { HasBore: true } round || round.Inner - round.BoreOuter < WideBand
            || draft.Shell.Wall < Skin + HookInterference + GrooveDeeper
            || HookInterference / round.BoreOuter > draft.File.Print.Shell.StrainAlongLayers)
        {
            return [];
        }

        Angle sweep = Angle.FromRadians(HookLength / round.BoreOuter);
        reasons.Choice("closure.bore-hooks", HookCount.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
            $"a cover with a band wider than {Reasons.Mm(WideBand)} bows and leaks light at the bore: short beads hold its tongue");
        return
        [
            .. Enumerable.Range(0, HookCount).Select(i =>
                ((draft.File.Up + Angle.FromDegrees((i + 0.5) * 360 / HookCount) - (0.5 * sweep)).Normalized, sweep)),
        ];
    }

    private static LostCatch Lost(HousingDraft draft, RimSectors rim, bool wallTooThin, double diameter)
    {
        FilamentProfile filament = draft.File.Print.Shell;
        string cause = wallTooThin
            ? $"a wall of {Reasons.Mm(draft.Shell.Wall)} has no room for a deep enough groove"
            : string.Create(CultureInfo.InvariantCulture,
                $"{filament.Name} bears {(double)filament.StrainAlongLayers:0.0%}, which on a diameter of {Reasons.Mm(Math.Round(diameter, 1))} is too little way");
        string twist = TwistDecision.Obstacle(draft, rim) is null ? "'closure: screws' or 'closure: twist'" : "'closure: screws'";
        return new LostCatch(cause, $"{twist}, {(wallTooThin ? "walls of 4 lines" : "a more elastic filament for the shell")}");
    }

    private static ImmutableArray<(Angle From, Angle Sweep)> Interruptions(RimSectors rim, KeyPlan key)
    {
        IEnumerable<RimSector> gaps = rim.Taken.Where(sector => sector.OpensRim)
            .Append(new RimSector(key.At, key.Width + (2 * key.Gap), "key", true));
        return
        [
            .. gaps.Select(gap =>
            {
                Angle half = rim.Half(gap.Width + (2 * PastSlot));
                return ((gap.At - half).Normalized, 2 * half);
            }),
        ];
    }
}
