using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Prints;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Remembering;

namespace ShellForge.Planning.Plan;

/// <summary>
/// The front part: a wall from the parting line to the front, a bezel round the lit window, a lip that centres it in the tub.
/// </summary>
public sealed record CoverPlan
{
    /// <summary>Outer outline, less an open bore.</summary>
    public required Region Footprint { get; init; }

    /// <summary>Room inside its walls.</summary>
    public required Region Cavity { get; init; }

    /// <summary>The lit window in the bezel.</summary>
    public required Region Window { get; init; }

    /// <summary>Thickness of the bezel plate, mm.</summary>
    public required double BezelThickness { get; init; }

    /// <summary>The rounded outer edge of the front; null where it has the bed's chamfer alone.</summary>
    public EdgePlan? FrontEdge { get; init; }

    /// <summary>The rounded edge of the front in an open bore; null where it has the bed's chamfer alone.</summary>
    public EdgePlan? FrontEdgeInBore { get; init; }

    /// <summary>The lip in plan (outer rim, and the tongue at an open bore), interruptions taken out.</summary>
    public required Region Lip { get; init; }

    /// <summary>Gap per side between lip and tub wall, mm.</summary>
    public required double LipGap { get; init; }

    /// <summary>Thickness of the lip, mm.</summary>
    public required double LipThickness { get; init; }

    /// <summary>Gap per side between the tongue round an open bore and the bore wall, mm.</summary>
    public required double TongueGap { get; init; }

    /// <summary>Shortest piece, mm along the lip, that joins the lip to a tongue: a shorter one is an ear that holds nothing.</summary>
    public required double LeastBridge { get; init; }

    /// <summary>z of the lip's lower end.</summary>
    public required double LipBottom { get; init; }

    /// <summary>
    /// Bars behind a printed-in diffuser, from the bezel's inner face to the diffuser's, that join the bezel's inner and outer part; empty
    /// for none.
    /// </summary>
    public Region Bars { get; init; } = Region.Empty;

    /// <summary>
    /// What hangs from the bezel round the baffle and centres it and a drop-in diffuser, the slot for the baffle's tooth taken out;
    /// empty where the cover's own wall does it.
    /// </summary>
    public Region Seat { get; init; } = Region.Empty;

    /// <summary>z of the seat's lower end.</summary>
    public double SeatBottom { get; init; }

    /// <summary>The slot for the baffle's tooth in plan, also where the cover's own wall is the seat; empty without a baffle.</summary>
    public Region ToothSlot { get; init; } = Region.Empty;

    /// <summary>z of that slot's upper end; downwards it is open, since the baffle is put in from there.</summary>
    public double ToothSlotTop { get; init; }
}

/// <summary>How the diffuser is held.</summary>
public enum DiffuserFit
{
    /// <summary>Cover and diffuser are one body of one filament.</summary>
    OneWithCover,

    /// <summary>Printed into the cover's window in one job; the plastics fuse.</summary>
    PrintedIn,

    /// <summary>A printed part that lies behind the bezel.</summary>
    DropIn,

    /// <summary>A cut sheet that lies behind the bezel.</summary>
    CutSheet,
}

/// <summary>What scatters the light.</summary>
public sealed record DiffuserPlan
{
    /// <summary>How it is held.</summary>
    public required DiffuserFit Fit { get; init; }

    /// <summary>Its outline.</summary>
    public required Region Outline { get; init; }

    /// <summary>Thickness, mm.</summary>
    public required double Thickness { get; init; }

    /// <summary>From the LEDs' windows to its inner face, mm.</summary>
    public required double Distance { get; init; }

    /// <summary>Filament; for a sheet, the one whose optics stand in for it.</summary>
    public required FilamentProfile Filament { get; init; }

    /// <summary>Smallest over mean irradiance from LED to LED that the plan expects, 0 to 1.</summary>
    public required double ExpectedMinimumOverMean { get; init; }

    /// <summary>The LEDs as neighbours, between which light is judged; null where they lie on circles about the axis.</summary>
    public LedFieldPlan? Field { get; init; }

    /// <summary>The lap of a printed-in diffuser that the bezel holds even if the plastics should part; null for other fits.</summary>
    public LapPlan? Lap { get; init; }

    /// <summary>The lit band when light leaves through the wall; null when it leaves through the front.</summary>
    public BandPlan? Band { get; init; }
}

/// <summary>
/// A thin collar of the diffuser on its inner face, with bezel in front of it and behind it:
/// <code>
///   ████████████▒▒▒▒▒▒▒▒▒▒  outer face     █ bezel   ▒ diffuser
///   ██████▒▒▒▒▒▒▒▒
///   ████████████
/// </code>
/// </summary>
/// <param name="Outline">In plan: from inside the window's edge to behind the bezel.</param>
/// <param name="Thickness">Along z from the diffuser's inner face, mm.</param>
/// <param name="Inset">How far it reaches into the window, mm.</param>
public sealed record LapPlan(Region Outline, double Thickness, double Inset);

/// <summary>
/// LEDs that lie on no full circles about the board's middle: grids, arcs, spirals, free places. Which of them are neighbours says where
/// light has to blend, and how far each one's own light has to reach.
/// </summary>
/// <param name="Leds">The LEDs that shine to the front, in the order of their data.</param>
/// <param name="Links">Neighbours: no other LED lies between the two.</param>
public sealed record LedFieldPlan(ImmutableArray<FieldLed> Leds, ImmutableArray<LedLink> Links)
{
    /// <summary>Whether another field has the same LEDs and neighbours.</summary>
    public bool Equals(LedFieldPlan? other) => other is not null && Content == other.Content;

    /// <inheritdoc />
    public override int GetHashCode() => Content.GetHashCode();

    private (Listed<FieldLed>, Listed<LedLink>) Content => (new(Leds), new(Links));
}

/// <summary>An LED of a field.</summary>
/// <param name="Ref">Its designator.</param>
/// <param name="At">Its middle in plan.</param>
/// <param name="Pitch">Distance to the nearest LED, mm; twice its own body where none is near.</param>
/// <param name="Alone">Whether none is near.</param>
public readonly record struct FieldLed(string Ref, Point2 At, double Pitch, bool Alone);

/// <summary>Two neighbours.</summary>
/// <param name="From">Index of the one.</param>
/// <param name="To">Index of the other.</param>
/// <param name="Centre">Centre of the pitch circle that both lie on side by side; null where the way between them is straight.</param>
public readonly record struct LedLink(int From, int To, Point2? Centre);

/// <summary>A band of the cover's wall that lets the light of side-facing LEDs out.</summary>
/// <param name="Bottom">z of its lower end.</param>
/// <param name="Top">z of its upper end.</param>
/// <param name="Pillars">Ribs of the cover behind the band that hold its upper and lower part together, in plan.</param>
/// <param name="ThroughBore">Whether it lies in the wall of an open bore; otherwise in the outer wall.</param>
public sealed record BandPlan(double Bottom, double Top, Region Pillars, bool ThroughBore);

/// <summary>Walls between and round the LEDs, a part of its own.</summary>
public sealed record BafflePlan
{
    /// <summary>Whether every LED has a cell; otherwise there are rim walls only.</summary>
    public required bool Cells { get; init; }

    /// <summary>Walls in plan: rims and, with cells, the walls between LEDs.</summary>
    public required Region Walls { get; init; }

    /// <summary>What its outermost rim surrounds, that rim and its gaps included: what centres the baffle goes round it.</summary>
    public required Region Surrounded { get; init; }

    /// <summary>Wall thickness, mm.</summary>
    public required double Wall { get; init; }

    /// <summary>z of its feet.</summary>
    public required double Bottom { get; init; }

    /// <summary>z of its rims' top, which lie under the bezel or the edge of the diffuser; crush ribs left out.</summary>
    public required double Top { get; init; }

    /// <summary>
    /// Walls that rise higher than the rims, up to the diffuser in the window, in plan; empty when all end at one height.
    /// </summary>
    public Region InWindow { get; init; } = Region.Empty;

    /// <summary>z of their top.</summary>
    public double InWindowTop { get; init; }

    /// <summary>Low walls below the LEDs' windows that hold two rims together without a shadow, in plan; empty with cells.</summary>
    public Region Bridges { get; init; } = Region.Empty;

    /// <summary>z of their top.</summary>
    public double BridgesTop { get; init; }

    /// <summary>The tooth that goes into the cover's slot; null when the cover may turn over the baffle.</summary>
    public ToothPlan? Tooth { get; init; }

    /// <summary>Rooms cut from below over parts, tails and screw heads.</summary>
    public required ImmutableArray<BaffleNotch> Notches { get; init; }

    /// <summary>Small ribs on top that the cover presses down.</summary>
    public required ImmutableArray<Region> CrushRibs { get; init; }

    /// <summary>
    /// Small upright ribs on the outer rim, in plan, by which it stays in a cover that turns; empty where ribs on top press it onto the
    /// board.
    /// </summary>
    public ImmutableArray<Region> GripRibs { get; init; } = [];

    /// <summary>Height of the crush ribs above <see cref="Top"/>, mm.</summary>
    public required double CrushHeight { get; init; }

    /// <summary>Filament.</summary>
    public required FilamentProfile Filament { get; init; }
}

/// <summary>A tooth on the baffle's outer rim that keys it to the cover; its lower side rises at 45 degrees.</summary>
/// <param name="At">Direction.</param>
/// <param name="Width">Along the rim, mm.</param>
/// <param name="Root">Radius inside the rim where it starts, mm.</param>
/// <param name="Rim">Radius of the rim's outer face, mm.</param>
/// <param name="Tip">Radius of its tip, mm.</param>
/// <param name="Bottom">z of its lower end at the rim.</param>
public sealed record ToothPlan(Angle At, double Width, double Root, double Rim, double Tip, double Bottom)
{
    /// <summary>The tooth in plan.</summary>
    public Region Outline => Strips.Radial(At, Width, Root, Tip);
}

/// <summary>A room cut into the baffle from below.</summary>
/// <param name="Outline">In plan.</param>
/// <param name="Top">z of its roof.</param>
/// <param name="For">What it clears: a designator or a screw.</param>
public sealed record BaffleNotch(Region Outline, double Top, string For)
{
    /// <summary>Whether it goes over nothing but is a layer of the slope over another, whose roof would hang in the air.</summary>
    public bool IsSlope { get; init; }

    /// <summary>
    /// z from which it is cut, within the room below it; null where it is open below. Layers of a slope that all began at the baffle's feet
    /// would cross each other all the way up, which costs the square of their number.
    /// </summary>
    public double? From { get; init; }

    /// <summary>Whether it is there at a height.</summary>
    public bool IsAt(double z) => z > (From ?? double.NegativeInfinity) && z < Top;
}

/// <summary>A notch in the lower edge of the cover for a blade.</summary>
/// <param name="At">Direction.</param>
/// <param name="Width">Along the wall, mm.</param>
/// <param name="Height">Above the parting line, mm.</param>
/// <param name="Depth">From the outer face inward, mm.</param>
public sealed record PryNotchPlan(Angle At, double Width, double Height, double Depth);

/// <summary>A slot through the floor.</summary>
/// <param name="Outline">In plan.</param>
public sealed record VentPlan(Region Outline);

/// <summary>A line of lettering.</summary>
/// <param name="Strokes">Strokes in plan, already placed and mirrored where they are read from below.</param>
/// <param name="Part">Name of the part that carries it.</param>
/// <param name="FromZ">Lower face of the strokes.</param>
/// <param name="ToZ">Upper face of the strokes.</param>
/// <param name="Raised">Added when true, cut when false.</param>
public sealed record LetteringPlan(Region Strokes, string Part, double FromZ, double ToZ, bool Raised)
{
    /// <summary>Whether it is a mark of the revision, inside, where no light is judged.</summary>
    public bool IsMark { get; init; }

    /// <summary>
    /// For lettering on the side of an upright wall, from the frame of its part to the assembled housing's: the strokes then lie in (y, z)
    /// of that frame, and both faces are values of its x. Null where strokes lie in plan.
    /// </summary>
    public Transform3? FromSide { get; init; }
}

/// <summary>A printed part.</summary>
public sealed record PartPlan
{
    /// <summary>Name, also of its file: tub, baffle, diffuser, cover, stand.</summary>
    public required string Name { get; init; }

    /// <summary>Filament.</summary>
    public required FilamentProfile Filament { get; init; }

    /// <summary>From the assembled frame to print orientation: lowest face on z = 0, axis on z.</summary>
    public required Transform3 ToPrint { get; init; }

    /// <summary>
    /// Factor in x and y by which the written part is larger than the part in the hand, so that it shrinks to size; 1 where the
    /// slicer does it or the filament does not shrink.
    /// </summary>
    public double ShrinkScale { get; init; } = 1;

    /// <summary>From the assembled frame to the file: print orientation and the scale against shrinkage.</summary>
    public Transform3 ToFile => ToPrint.Then(Transform3.Scale(ShrinkScale, ShrinkScale, 1));

    /// <summary>How it lies on the bed, for people: "outer floor down".</summary>
    public required string LiesOn { get; init; }

    /// <summary>How it is printed.</summary>
    public required PartPrint Print { get; init; }

    /// <summary>
    /// How many loose pieces it is printed in; null where it is printed together with another part that holds its pieces.
    /// </summary>
    public int? Pieces { get; init; } = 1;

    /// <summary>Whether it is part of the housing; otherwise the housing is put on it.</summary>
    public bool IsOfHousing { get; init; } = true;

    /// <summary>Name of the part it is printed together with in one job; null for a job of its own.</summary>
    public string? PrintedWith { get; init; }
}

/// <summary>What closes a housing in front of the board.</summary>
/// <param name="Cover">The cover.</param>
/// <param name="Diffuser">The diffuser.</param>
/// <param name="Baffle">The baffle; null without one.</param>
public sealed record FrontSide(CoverPlan Cover, DiffuserPlan Diffuser, BafflePlan? Baffle);

/// <summary>What makes the parts go together one way only. It shows in the tub's rim, so that it also marks how the board lies.</summary>
/// <param name="At">Direction of the key: of the rib, or of the mouth for a twist lock's odd lug.</param>
/// <param name="Top">z of its upper end: the parting line.</param>
/// <param name="Rib">The rib and its slot; null where the closure keys the cover itself.</param>
/// <param name="Board">How the board is keyed.</param>
public sealed record KeyPlan(Angle At, double Top, KeyRibPlan? Rib, BoardKey Board);

/// <summary>
/// A rib on the cover's lip that goes into a slot in the tub's wall. It reaches away from the board, which is lowered in past it.
/// </summary>
/// <param name="Width">Width of the rib, mm.</param>
/// <param name="Depth">Depth of the slot from the wall's inner face, mm; the whole wall: the slot goes through.</param>
/// <param name="Gap">Gap per side between rib and slot, mm.</param>
/// <param name="Bottom">z of the rib's lower end.</param>
public sealed record KeyRibPlan(double Width, double Depth, double Gap, double Bottom)
{
    /// <summary>Width of the slot, mm.</summary>
    public double SlotWidth => Width + (2 * Gap);
}

/// <summary>How the board is kept from going in turned.</summary>
/// <param name="Words">In words, after "It is keyed": "by its outline".</param>
/// <param name="OneWayOnly">Whether it goes in one way only; otherwise a mark says which way is right.</param>
public sealed record BoardKey(string Words, bool OneWayOnly)
{
    /// <summary>Its connector finds its port one way only.</summary>
    public static BoardKey Connector { get; } = new("by its connector in the port", true);

    /// <summary>Its outline fits one way only.</summary>
    public static BoardKey Outline { get; } = new("by its outline", true);

    /// <summary>Its holes meet their posts one way only.</summary>
    public static BoardKey Holes { get; } = new("by its holes, which fit one way only", true);

    /// <summary>Nothing but a mark shows the right way.</summary>
    /// <param name="what">What marks it: "the key slot".</param>
    /// <param name="atFirstLed">Whether the mark lies at the first LED.</param>
    public static BoardKey Mark(string what, bool atFirstLed) =>
        new($"by the mark on the rim: {what} lies {(atFirstLed ? "at" : "nearest to")} the first LED", false);
}
