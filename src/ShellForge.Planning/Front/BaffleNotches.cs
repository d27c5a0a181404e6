using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>Rooms in the baffle's feet over parts, LEDs, solder tails, wires and screw heads.</summary>
internal static class BaffleNotches
{
    // A wall nearer than this to an LED gets a notch, mm; LEDs stand close, and a wider gap would leak.
    private const double BesideLed = 0.25;

    // Clear above what a notch goes over, mm.
    private const double Above = 0.4;

    /// <summary>Wall left over a notch, mm: less, and it goes through.</summary>
    public const double RoofLeast = 0.8;

    // A piece of wall smaller than this many wall thicknesses long is not worth printing.
    private const double CrumbLength = 3;

    // Room round a soldered wire, mm, besides its own diameter.
    private const double AroundWire = 1.0;

    /// <summary>The notches that walls need.</summary>
    public static ImmutableArray<BaffleNotch> Over(HousingDraft draft, Region walls, double top) =>
    [
        .. Bodies(draft).Where(thing => !walls.IsEmpty && walls.Distance(thing.Outline) < thing.Beside)
            .Select(thing => new BaffleNotch(
                thing.Outline.Offset(PlanRules.Beside), draft.Basis.Up(thing.Top + Above), thing.For))
            .Select(notch => notch.Top > top - RoofLeast ? notch with { Top = draft.Stack.Front } : notch),
    ];

    /// <summary>What stands on the board: its outline, how near a wall may come to it, z of its top.</summary>
    public static IEnumerable<(string For, Region Outline, double Beside, double Top)> Bodies(HousingDraft draft)
    {
        double board = draft.Stack.BoardTop;
        var leds = LitBand.Circles(draft.File.Board).SelectMany(circle => circle.Pixels).Select(pixel => pixel.Ref).ToHashSet();
        var wanted = new List<(string For, Region Outline, double Beside, double Top)>();
        foreach (PartEnvelope part in PartEnvelope.OnTop(draft.File.Board))
        {
            wanted.Add((part.Ref, part.Outline, leds.Contains(part.Ref) ? BesideLed : PlanRules.Beside,
                board + (part.To ?? PlanRules.UnknownHeight)));
        }

        wanted.AddRange(draft.File.Board.Parts.Where(part => part.Mounted == PartMounting.MidBoard).Select(part =>
            (part.Ref, PartEnvelope.OutlineOf(part), PlanRules.Beside, board + (part.Height ?? PlanRules.UnknownHeight))));
        wanted.AddRange(draft.File.Board.Wires.Where(wire => wire.Side == BoardSide.Top).Select(wire =>
            (wire.Name, Around(wire.At, (wire.Conductors * wire.Diameter) + AroundWire), PlanRules.Beside, board + PlanRules.WireBlob)));
        wanted.AddRange(draft.Screws.Where(screw => screw.Use == ScrewUse.Board && screw.FromFront).Select(screw =>
            (screw.Name, Around(screw.At, HeadDiameter(screw)), PlanRules.Beside, TopOfHead(screw))));
        return wanted;
    }

    /// <summary>What notches take away over the baffle's whole height.</summary>
    public static Region Through(ImmutableArray<BaffleNotch> notches, double top) =>
        Region.Union(notches.Where(notch => notch.Top > top).Select(notch => notch.Outline));

    /// <summary>The largest connected piece: a baffle is one part.</summary>
    public static Region Largest(Region walls) => walls.IsEmpty ? walls : walls.Parts.MaxBy(part => part.Area)!;

    /// <summary>Pieces long enough to print.</summary>
    public static Region WithoutCrumbs(Region walls, double wall) =>
        Region.Union(walls.Parts.Where(part => part.Area >= CrumbLength * wall * wall));

    /// <summary>z of the top of a screw's head.</summary>
    public static double TopOfHead(ScrewJointPlan screw) =>
        screw.SeatZ + screw.Screw.HeadHeight + (screw.Washer ? screw.Screw.WasherThickness : 0);

    /// <summary>Diameter that head and washer cover, mm.</summary>
    public static double HeadDiameter(ScrewJointPlan screw) =>
        screw.Washer ? Math.Max(screw.Screw.HeadDiameter, screw.Screw.WasherDiameter) : screw.Screw.HeadDiameter;

    private static Region Around(Point2 at, double diameter) => Region.Disc(at, Ring.Hole(diameter / 2));
}
