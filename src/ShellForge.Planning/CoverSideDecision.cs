using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Closures;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Front;
using ShellForge.Planning.Holding;
using ShellForge.Planning.Marks;
using ShellForge.Planning.Mounts;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning;

/// <summary>
/// Decides everything on the cover's side, and what hangs on the floor beside the bosses, in the order in which each needs the other.
/// </summary>
internal static class CoverSideDecision
{
    // Window and diffuser keep clear of posts by this, mm.
    private const double AroundPost = 0.3;

    // Lettering and vents keep clear of each other and of mounts by this, mm.
    private const double AroundText = 1.5;

    /// <summary>The cover's side of a draft.</summary>
    public static Decided<CoverSide> Decide(HousingDraft draft, ClosureDecision decided)
    {
        var reasons = new Reasons();
        RimSectors rim = RimSectors.Of(draft);
        double lipBottom = CoverDecision.LipBottom(draft);
        KeyPlan key = reasons.Take(KeyDecision.Decide(draft, decided.Closure, rim, lipBottom));
        RimSectors keyed = key.Rib is { } rib ? rim.With(new RimSector(key.At, rib.SlotWidth, "key", false)) : rim;
        ClosurePlan closure = reasons.Take(decided.Closure.Plan(draft, rim, key, lipBottom));
        if (decided.Refused is var (refused, remedy))
        {
            reasons.Refuse(
                refused.Rule, "cover", $"{refused.Message} It is planned with 'closure: {draft.Closure.Word}'.",
                0, 1, "", new Point3(0, 0, draft.Stack.PartingLine), remedy);
        }

        Region posts = closure.FreePosts.Offset(AroundPost);
        CoverRoom room = draft.Room;
        Region window = CoverDecision.Window(draft, posts);
        BafflePlan? baffle = reasons.Take(BaffleDecision.Decide(draft, keyed, key, posts, window));
        CoverPlan cover = reasons.Take(CoverDecision.Decide(draft, room, baffle, window, posts));
        DiffuserPlan diffuser = draft.Front.Diffuser with
        {
            Outline = draft.Front.Diffuser.Fit is DiffuserFit.DropIn or DiffuserFit.CutSheet
                ? draft.Front.Diffuser.Outline.Less(posts)
                : window,
            Lap = draft.Front.Diffuser.Lap is LapPlan lap ? lap with { Outline = lap.Outline.Less(posts) } : null,
        };
        if (draft.File.Housing.Light.Through == LightThrough.Wall)
        {
            diffuser = reasons.Take(WithBand(draft, room, diffuser));
        }

        var front = new FrontSide(cover, diffuser, baffle);
        HolderPlan? holder = draft.Hold.Form.Plan(draft, front, closure, reasons);
        BoardHoldPlan hold = reasons.Take(HoldDecision.Decide(draft, front, closure, holder));
        MountPlan? mount = reasons.Take(MountForm.Chosen(draft));
        Region mounted = mount?.Taken ?? Region.Empty;
        ImmutableArray<LetteringPlan> label = reasons.Take(LetteringDecision.Label(draft, mounted));
        Region lettered = mounted.And(Region.Union(label.Select(line => line.Strokes.Hull().Offset(AroundText))));
        ImmutableArray<VentPlan> vents = reasons.Take(VentDecision.Decide(draft, front, mount, lettered));
        Region vented = lettered.And(Region.Union(vents.Select(vent => vent.Outline.Offset(AroundText))));
        return reasons.Of(new CoverSide
        {
            Hold = hold,
            Cover = cover,
            Diffuser = diffuser,
            Baffle = baffle,
            Closure = closure,
            Key = key,
            PryNotches = reasons.Take(PryNotchDecision.Decide(draft, keyed)),
            Vents = vents,
            Mount = mount,
            Lettering = [.. label, .. reasons.Take(RevisionMarks.Decide(draft, front, holder, mount, vented))],
        });
    }

    private static Decided<DiffuserPlan> WithBand(HousingDraft draft, CoverRoom room, DiffuserPlan diffuser)
    {
        var reasons = new Reasons();
        (BandPlan? band, string? obstacle) = LitWallSection.Of(draft.Given, draft.Lip).Band(draft, room);
        if (band is null)
        {
            reasons.Refuse(
                "lit-band-without-place", "cover", $"The wall can't be lit: {obstacle}. It is planned closed.",
                0, 1, "", new Point3(0, 0, draft.Stack.PartingLine),
                "'through: front', a lower 'window', or power through a soldered cable where a connector makes the tub's wall high");
            return reasons.Of(diffuser with { Fit = DiffuserFit.OneWithCover, Filament = draft.File.Print.Shell });
        }

        reasons.Length("diffuser.band.bottom", band.Bottom, Reasons.Rule, "lower end of the lit band");
        reasons.Length("diffuser.band.top", band.Top, Reasons.Rule, "upper end of the lit band");
        return reasons.Of(diffuser with { Band = band });
    }
}
