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
    // The groove lies so much lower that the bead's upper flank draws the cover onto the rim, mm.
    private const double Draw = 0.05;

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
        double spread = file.Print.Printer.Accuracy;
        (SnapSection section, double gap, double radius, double caught, double strain) = SnapFit.Of(file, draft.Shell, draft.Lip);
        double interference = section.Interference;
        double grooveDepth = interference + SnapFit.GrooveDeeper;
        reasons.Length(
            "closure.bead.interference", interference, filament.Name,
            string.Create(CultureInfo.InvariantCulture,
                $"sizes stray by {Reasons.Mm(spread)}: at the least a catch of {Reasons.Mm(Math.Round(caught, 3))} is left, "
                    + $"{SnapSection.CatchMinimum} is needed; at the most the ring is strained by {strain:0.00%}, {filament.Name} repeats "
                    + $"{(double)filament.StrainAlongLayers:0.0%}"));
        reasons.Length(
            "closure.bead.height", section.Height, Reasons.Rule,
            $"gap {Reasons.Mm(gap)}{(gap == draft.Lip.Gap ? "" : " in the hand")} plus interference {Reasons.Mm(interference)}");
        reasons.Choice(
            "closure.bead.lead-in", string.Create(CultureInfo.InvariantCulture, $"{SnapSection.LeadIn.Degrees:0} degrees"), Reasons.Rule,
            string.Create(CultureInfo.InvariantCulture,
                $"to the axis: the flattest flank of the trade's 30 to 45 takes "
                    + $"{SnapForce.AlongAxis(SnapSection.LeadIn) / SnapForce.AlongAxis(SnapSection.Hold):0%} of the force of "
                    + $"{SnapSection.Hold.Degrees:0}, at which the other flank holds"));
        reasons.Length(
            "closure.groove.wall-left", Math.Round(draft.Shell.Wall - grooveDepth, 3), Reasons.Rule,
            $"of the wall of {Reasons.Mm(draft.Shell.Wall)} behind a groove {Reasons.Mm(SnapFit.GrooveDeeper)} deeper than the bead "
                + $"reaches; {Reasons.Mm(SnapFit.Skin)} is the least that prints sound");
        double beadZ = lipBottom + SnapSection.Land + section.LeadInRun + (SnapSection.Crest / 2);
        double grooveTop = beadZ - Draw + (SnapSection.Crest / 2) + SnapSection.Run(grooveDepth, SnapSection.Hold);
        double land = Math.Max(0, draft.Stack.PartingLine - grooveTop) + SnapSection.Crest;
        double fromEnd = draft.Stack.PartingLine - beadZ;

        // The cover's wall, whose end the lip is, gives as much as the tub's: half the resistance of one.
        double Give(double at) => SnapForce.EndStiffness(at, draft.Shell.Wall, filament.ModulusMegapascals, fromEnd) / 2;
        ImmutableArray<(Angle From, Angle Sweep)> hooks = Hooks(draft, reasons);
        var bead = new RidingBead(radius, interference, land, Give(radius), []);
        RidingBead[] atBore = hooks.IsEmpty
            ? [] : [new RidingBead(draft.Shell.Round!.BoreOuter, HookInterference, land, Give(draft.Shell.Round.BoreOuter), []).Only(
                hooks)];
        Sourced share = file.Print.Printer.SnapForce;
        BeadRun? run = SnapForm.RunOf(file, draft.Shell);
        (Angle, Angle)[] corners = [.. (run?.Without ?? []).Select(Sector)];
        double Force(IEnumerable<(Angle, Angle)> gaps) =>
            share * SnapForce.Closing([bead.Without(gaps.Concat(corners)), .. atBore], SnapSection.LeadIn, draft.Lip.Overlap);
        ImmutableArray<(Angle From, Angle Sweep)> interruptions = Interruptions(rim, key);
        ImmutableArray<(Angle From, Angle Sweep)> split = SnapForce.Split(interruptions, radius, Force);
        double force = Force(split);
        if (split != interruptions)
        {
            reasons.Choice("closure.bead.pieces", split.Length.ToString(CultureInfo.InvariantCulture), Reasons.Rule, string.Create(
                CultureInfo.InvariantCulture,
                $"all round it would take {Force(interruptions):0} N to close, a hand gives {SnapForce.Hand:0}: in pieces it takes "
                    + $"{force:0} N"));
        }

        if (run is { Without.IsEmpty: false })
        {
            reasons.Choice("closure.bead.run", string.Create(CultureInfo.InvariantCulture, $"{100 * run.Held:0} % of the rim"),
                Reasons.Rule,
                string.Create(CultureInfo.InvariantCulture,
                    $"corners are stiff: the bead leaves them out, and sides shorter than "
                        + $"{run.Shortest:0} mm between them"));
        }

        reasons.Choice(
            "closure.bead.force", string.Create(CultureInfo.InvariantCulture, $"{force:0} N"), Reasons.Rule,
            string.Create(CultureInfo.InvariantCulture,
                $"pressed down from one side, where most of the bead rides at once; a hand gives {SnapForce.Hand:0}. Tub and cover give "
                    + $"alike; a cover that gave nothing would make it {2 * force:0}"));
        return reasons.Of(new SnapClosurePlan
        {
            BeadZ = beadZ,
            BeadHeight = section.Height,
            Interference = interference,
            GrooveDepth = grooveDepth,
            GrooveZ = beadZ
                - reasons.Length("closure.groove.lower", Draw, Reasons.Rule,
                    "the groove lies so much lower than the bead, whose upper flank then draws the cover onto the rim"),
            Crest = SnapSection.Crest,
            LeadIn = SnapSection.LeadIn,
            Hold = SnapSection.Hold,
            Strain = strain,
            CatchAfterTolerance = caught,
            LostCatch = caught < SnapSection.CatchMinimum - Layers.Slack ? Lost(draft) : null,
            ClosingForce = force,
            Interruptions = split,
            ShortestPiece = SnapSection.ShortestPiece,
            BesideSolidWall = SnapSection.BesideSolidWall,
            LeftOut = run?.LeftOut() ?? Region.Empty,
            BoreHooks = hooks,
            BoreHookHeight = draft.Lip.TongueGap + HookInterference,
            BoreGrooveDepth = HookInterference + SnapFit.GrooveDeeper,
        });
    }

    // The directions of a place on the outline, as far as its neighbours.
    private static (Angle From, Angle Sweep) Sector(Point2 place)
    {
        var half = Angle.FromRadians(BeadRun.Apart / Math.Max(place.Length, BeadRun.Apart));
        return ((Angle.Of(place) - half).Normalized, 2 * half);
    }

    private static ImmutableArray<(Angle From, Angle Sweep)> Hooks(HousingDraft draft, Reasons reasons)
    {
        if (draft.Shell.Round is not { HasBore: true } round || round.Inner - round.BoreOuter < WideBand
            || draft.Shell.Wall < SnapFit.Skin + HookInterference + SnapFit.GrooveDeeper
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

    private static LostCatch Lost(HousingDraft draft)
    {
        string[] others =
        [
            .. ClosureForm.All.Where(form => form != draft.Closure && form.Reopens
                && form.Obstacle(draft.Given, draft.Shell, draft.Lip, draft.OpeningsInPlan) is null)
            .Select(form => $"'closure: {form.Word}'"),
            "'walls: 4'",
        ];
        return new LostCatch(
            $"a wall of {Reasons.Mm(draft.Shell.Wall)} has no room for a deep enough groove",
            string.Join(" or ", others));
    }

    private static ImmutableArray<(Angle From, Angle Sweep)> Interruptions(RimSectors rim, KeyPlan key)
    {
        IEnumerable<RimSector> gaps = rim.Taken.Where(sector => sector.OpensRim)
            .Concat(key.Rib is { } rib ? [new RimSector(key.At, rib.SlotWidth, "key", true)] : []);
        return
        [
            .. gaps.Select(gap =>
            {
                Angle half = rim.Half(gap.Width + (2 * PastSlot), gap.At);
                return ((gap.At - half).Normalized, 2 * half);
            }),
        ];
    }
}
