using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Board.Description;

/// <summary>What the maker wants of the housing. Null: the plan decides.</summary>
public sealed record HousingSpec
{
    /// <summary>
    /// The insert in the drawer; null only where nothing takes one: no mounting hole without an insert of its own, no closure screw.
    /// </summary>
    public InsertProfile? Insert { get; init; }

    /// <summary>The screw that goes into it; null with <see cref="Insert"/>.</summary>
    public ScrewProfile? Screw { get; init; }

    /// <summary>Whether washers lie under the board screws' heads.</summary>
    public bool Washers { get; init; }

    /// <summary>Wall as a count of lines.</summary>
    public int? WallLines { get; init; }

    /// <summary>Wall as a thickness, mm; wins over lines.</summary>
    public double? WallThickness { get; init; }

    /// <summary>Floor, mm.</summary>
    public double? Floor { get; init; }

    /// <summary>How large it shall be from outside.</summary>
    public SizeWish Size { get; init; } = SizeWish.Free;

    /// <summary>How the visible outer edges end, at the front and round the floor.</summary>
    public EdgeWish Edge { get; init; } = EdgeWish.Chamfer;

    /// <summary>Gap between board edge and wall, mm.</summary>
    public double? BoardEdgeClearance { get; init; }

    /// <summary>Gap between bottom parts and floor, mm.</summary>
    public double? BelowPartsClearance { get; init; }

    /// <summary>The cables, none or several; the first brings the power.</summary>
    public ImmutableArray<CableSpec> Cables { get; init; } = [];

    /// <summary>How cover and tub hold together.</summary>
    public ClosureKind Closure { get; init; }

    /// <summary>What keeps the board in the tub, beside the screws through its holes.</summary>
    public HoldKind Hold { get; init; }

    /// <summary>Number of closure screws; null: by circumference.</summary>
    public int? ClosureScrews { get; init; }

    /// <summary>Whether a ring's bore stays open; null: open when the board has one.</summary>
    public bool? BoreOpen { get; init; }

    /// <summary>Light.</summary>
    public required LightSpec Light { get; init; }

    /// <summary>Diffuser.</summary>
    public required DiffuserSpec Diffuser { get; init; }

    /// <summary>Whether the light baffle is to be one with the cover; otherwise it is a part of its own.</summary>
    public bool BaffleJoined { get; init; }

    /// <summary>Vents.</summary>
    public VentKind Vents { get; init; }

    /// <summary>How the housing is hung or stood.</summary>
    public MountKind Mount { get; init; }

    /// <summary>The magnets of a mount that takes some.</summary>
    public MagnetSize Magnet { get; init; } = MagnetSize.Nominal;

    /// <summary>Lettering; null for none.</summary>
    public LabelSpec? Label { get; init; }

    /// <summary>Openings of the maker's own.</summary>
    public ImmutableArray<OwnOpening> Openings { get; init; } = [];

    /// <summary>Cells or pouches inside; null for none.</summary>
    public BatterySpec? Battery { get; init; }

    /// <summary>A second board inside; null for none.</summary>
    public SecondBoardSpec? SecondBoard { get; init; }
}

/// <summary>How large the housing shall be from outside.</summary>
/// <param name="Outer">Across the outer walls, mm: the diameter, or the longer side of a housing that is not round; null: as the board
/// needs it.</param>
/// <param name="Height">From the outer floor to the front, mm; null: as what stands in it needs it.</param>
public sealed record SizeWish(double? Outer, double? Height)
{
    /// <summary>As large as board and parts need it.</summary>
    public static SizeWish Free { get; } = new(null, null);
}

/// <summary>How a visible outer edge ends.</summary>
public enum EdgeForm
{
    /// <summary>In a small chamfer against elephant's foot.</summary>
    Chamfer,

    /// <summary>In a moderate arc.</summary>
    Round,

    /// <summary>In the largest arc that walls, rims and what lies near the edge allow.</summary>
    Soft,
}

/// <summary>How the visible outer edges shall end.</summary>
/// <param name="Form">Their form.</param>
/// <param name="Radius">Radius of the arc, mm; null: the plan decides.</param>
public sealed record EdgeWish(EdgeForm Form, double? Radius)
{
    /// <summary>A chamfer, as it is without a wish.</summary>
    public static EdgeWish Chamfer { get; } = new(EdgeForm.Chamfer, null);
}

/// <summary>How cover and tub hold together.</summary>
public enum ClosureKind
{
    /// <summary>A bead on the cover's lip snaps into the tub's groove.</summary>
    Snap,

    /// <summary>Screws into heat-set inserts.</summary>
    Screws,

    /// <summary>Lugs turn into slots.</summary>
    Twist,

    /// <summary>The lip is glued in.</summary>
    Glue,
}

/// <summary>What keeps the board in the tub, beside the screws through its holes.</summary>
public enum HoldKind
{
    /// <summary>What the closed housing gives anyway; a form of its own where that keeps nothing.</summary>
    Auto,

    /// <summary>A printed ring over its rim, screwed to the tub.</summary>
    Clamp,

    /// <summary>Printed posts with hooks that it snaps under.</summary>
    Clips,
}

/// <summary>Vents wanted.</summary>
public enum VentKind
{
    /// <summary>The plan decides from the heat.</summary>
    Auto,

    /// <summary>None.</summary>
    None,

    /// <summary>Slots in the floor.</summary>
    Floor,
}

/// <summary>How the housing is hung or stood.</summary>
public enum MountKind
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>Keyholes in the floor.</summary>
    Keyhole,

    /// <summary>Magnet pockets in the floor.</summary>
    Magnets,

    /// <summary>A stand as a part of its own.</summary>
    Stand,

    /// <summary>A 1/4-20 insert in the floor.</summary>
    Tripod,

    /// <summary>Adhesive rubber feet under the floor.</summary>
    Feet,
}

/// <summary>A cable that leaves the housing.</summary>
public abstract record CableSpec
{
    private protected CableSpec()
    {
    }
}

/// <summary>Through a connector on the board.</summary>
public sealed record ConnectorCable(string PartRef) : CableSpec;

/// <summary>A round cable soldered to the board.</summary>
/// <param name="Diameter">Outside diameter, mm.</param>
/// <param name="At">Where it leaves, as a board angle.</param>
/// <param name="PlugWidth">Widest thing at its end that has to pass, mm; 0: none.</param>
/// <param name="PlugHeight">Height of that thing, mm.</param>
/// <param name="Relief">How its pull is taken.</param>
/// <param name="Through">What it leaves through.</param>
public sealed record RoundCable(double Diameter, Angle At, double PlugWidth, double PlugHeight, ReliefKind Relief, ExitKind Through)
    : CableSpec
{
    /// <summary>What leads say that leave by a cable without a name of its own.</summary>
    public const string Unnamed = "out";

    /// <summary>What leads call it that leave by it.</summary>
    public string Name { get; init; } = Unnamed;

    /// <summary>Path of its values in the board file.</summary>
    public string Path { get; init; } = "housing.cable";
}

/// <summary>What a round cable leaves through.</summary>
public enum ExitKind
{
    /// <summary>A notch in the tub's wall.</summary>
    Wall,

    /// <summary>A hole in the tub's floor.</summary>
    Floor,
}

/// <summary>How a round cable's pull is taken.</summary>
public enum ReliefKind
{
    /// <summary>A cable tie round a post.</summary>
    Tie,

    /// <summary>A knot behind the hole.</summary>
    Knot,
}

/// <summary>Where the light leaves.</summary>
public enum LightThrough
{
    /// <summary>Through the front.</summary>
    Front,

    /// <summary>Through a band in the wall.</summary>
    Wall,
}

/// <summary>What the eye should see.</summary>
public enum LightLook
{
    /// <summary>One band of light.</summary>
    Blend,

    /// <summary>A cell for each LED.</summary>
    Pixels,
}

/// <summary>Light wanted.</summary>
/// <param name="Through">Where it leaves.</param>
/// <param name="Look">What the eye should see.</param>
/// <param name="WindowWidth">Width of the lit window, mm; null: pitch circle plus and minus half a pitch, beyond which light falls below
/// half.</param>
/// <param name="MinimumOverMean">Evenness asked for: smallest over mean irradiance along the pitch circle, 0 to 1.</param>
/// <param name="EvennessWord">The word in the file: dots, soft, even, or the number.</param>
public sealed record LightSpec(
    LightThrough Through, LightLook Look, double? WindowWidth, double MinimumOverMean, string EvennessWord)
{
    /// <summary>What shape the lit window has.</summary>
    public WindowShape Shape { get; init; }

    /// <summary>The window's own outline, for <see cref="WindowShape.Outline"/>; empty otherwise.</summary>
    public Region WindowOutline { get; init; } = Region.Empty;
}

/// <summary>Shape of the lit window.</summary>
public enum WindowShape
{
    /// <summary>A ring or disc where LEDs lie on circles about the board's middle, and else what they light.</summary>
    Auto,

    /// <summary>What the LEDs light, wherever they lie.</summary>
    Follow,

    /// <summary>A disc about the board's middle.</summary>
    Disc,

    /// <summary>A ring about the board's middle.</summary>
    Ring,

    /// <summary>An outline of its own.</summary>
    Outline,
}

/// <summary>How a printed diffuser shall be held.</summary>
public enum DiffuserWish
{
    /// <summary>Printed into the cover, in the same layers: the printer changes filament in each.</summary>
    PrintedIn,

    /// <summary>A part of its own that is laid into the cover from behind.</summary>
    DropIn,
}

/// <summary>Diffuser wanted.</summary>
public sealed record DiffuserSpec
{
    /// <summary>How it shall be held; null: the plan decides by filaments and printer.</summary>
    public DiffuserWish? Fit { get; init; }

    /// <summary>Thickness of a printed diffuser, mm; null: the plan decides by filament.</summary>
    public double? Thickness { get; init; }

    /// <summary>Thickness of a cut sheet that is dropped in, mm; null: printed.</summary>
    public double? Sheet { get; init; }

    /// <summary>From the LED's window to the diffuser's inner face, mm; null: from evenness and pitch.</summary>
    public double? Distance { get; init; }
}

/// <summary>Where lettering goes.</summary>
public enum LabelPlace
{
    /// <summary>Engraved in the outer floor, mirrored right for the reader from below.</summary>
    FloorOutside,

    /// <summary>Raised inside the floor.</summary>
    FloorInside,
}

/// <summary>Lettering.</summary>
/// <param name="Text">Printable ASCII.</param>
/// <param name="Where">Where it goes.</param>
/// <param name="Height">Letter height, mm; null: 5.</param>
public sealed record LabelSpec(string Text, LabelPlace Where, double? Height);

/// <summary>Supply and brightness.</summary>
public sealed record PowerSpec
{
    /// <summary>Name as written, such as <c>usb-c-1.5A</c>.</summary>
    public required string Supply { get; init; }

    /// <summary>Volts.</summary>
    public required double Volts { get; init; }

    /// <summary>Amperes the supply gives.</summary>
    public required double Amps { get; init; }

    /// <summary>Planned share of full white, 0 to 1.</summary>
    public required double Brightness { get; init; }

    /// <summary>Whether the firmware caps the brightness at the planned value.</summary>
    public bool Capped { get; init; }

    /// <summary>Share of time that LEDs are lit over an animation, 0 to 1.</summary>
    public double Duty { get; init; } = 1;
}

/// <summary>Printer and filaments.</summary>
public sealed record PrintSpec
{
    /// <summary>The printer.</summary>
    public required PrinterProfile Printer { get; init; }

    /// <summary>Filament of tub and cover.</summary>
    public required FilamentProfile Shell { get; init; }

    /// <summary>Filament of the diffuser.</summary>
    public required FilamentProfile Diffuser { get; init; }

    /// <summary>Filament of the baffle; null: the plan decides by look.</summary>
    public FilamentProfile? Baffle { get; init; }

    /// <summary>All filaments that there is a profile of, the maker's own too, as their profiles have them.</summary>
    public ImmutableArray<FilamentProfile> Known { get; init; } = [];

    /// <summary>What was measured of the printer with the shell's filament; null for nothing. Both have it in them.</summary>
    public PairingProfile? Measured { get; init; }
}

/// <summary>How the finished thing stands in the room.</summary>
public enum UseOrientation
{
    /// <summary>Hung flat on a wall, facing the room.</summary>
    Wall,

    /// <summary>Lying on a table, facing up.</summary>
    Table,

    /// <summary>Free in the air.</summary>
    Hanging,
}

/// <summary>Where the finished thing lives.</summary>
/// <param name="Orientation">How it stands in the room.</param>
/// <param name="CoolestCelsius">Coolest surrounding air; the warmest where the file gives no range.</param>
/// <param name="WarmestCelsius">Warmest surrounding air: limits are checked there.</param>
/// <param name="Air">How heat flows.</param>
public sealed record UseSpec(UseOrientation Orientation, double CoolestCelsius, double WarmestCelsius, HeatProfile Air);
