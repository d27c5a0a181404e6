using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Remembering;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Planning.Draft;

/// <summary>
/// The plan after the tub is decided and before the cover is: what decisions about cover, diffuser, baffle, closure, key, vents,
/// mount and lettering may look at.
/// </summary>
internal sealed record HousingDraft
{
    /// <summary>What was asked for.</summary>
    public required BoardFile File { get; init; }

    /// <summary>Lines and layers.</summary>
    public required PrintBasis Basis { get; init; }

    /// <summary>What every decision starts from.</summary>
    public Given Given => new(File, Basis) { Memory = Memory };

    /// <summary>Knows what was worked out for other housings.</summary>
    public required WorkMemory Memory { get; init; }

    /// <summary>How cover and tub hold together.</summary>
    public required ClosureTraits Closure { get; init; }

    /// <summary>What holds the board's rim.</summary>
    public required HoldInPlan Hold { get; init; }

    /// <summary>Section of the cover's lip.</summary>
    public required LipSection Lip { get; init; }

    /// <summary>Walls and floor in plan.</summary>
    public required ShellPlan Shell { get; init; }

    /// <summary>What walls and lip leave of the cover.</summary>
    public required CoverRoom Room { get; init; }

    /// <summary>Heights.</summary>
    public required StackPlan Stack { get; init; }

    /// <summary>Window, bezel and diffuser.</summary>
    public required FrontDraft Front { get; init; }

    /// <summary>Posts on the floor.</summary>
    public required ImmutableArray<BossPlan> Bosses { get; init; }

    /// <summary>Every screw.</summary>
    public required ImmutableArray<ScrewJointPlan> Screws { get; init; }

    /// <summary>Openings for parts on the board.</summary>
    public required ImmutableArray<OpeningPlan> Openings { get; init; }

    /// <summary>The exits of soldered cables, as far as they are decided.</summary>
    public ImmutableArray<CableExitPlan> CableExits { get; init; } = [];

    /// <summary>The same openings as they were decided before the heights.</summary>
    public required ImmutableArray<OpeningInPlan> OpeningsInPlan { get; init; }

    /// <summary>Supports under connectors.</summary>
    public ImmutableArray<SaddlePlan> Saddles { get; init; } = [];

    /// <summary>A battery's bay; null for none.</summary>
    public BatteryBayPlan? Bay { get; init; }

    /// <summary>A second board on the floor; null for none.</summary>
    public SecondBoardPlan? SecondBoard { get; init; }

    /// <summary>Spacers that a second board hangs from.</summary>
    public ImmutableArray<SpacerPlan> Spacers { get; init; } = [];

    /// <summary>What battery and second board take of the floor.</summary>
    public Region OnFloor => (Bay?.Taken ?? Region.Empty).And(SecondBoard?.Taken ?? Region.Empty);

    /// <summary>The same with all of the outer floor free: its edge then gives way to what finds its place there.</summary>
    public HousingDraft WithoutFloorEdge() => this with { Shell = Shell with { FloorEdge = null, FloorEdgeInBore = null } };
}

/// <summary>What of the lip is decided before the walls, which must leave room for it; how long it is comes with the closure.</summary>
/// <param name="Thickness">Radial thickness, whole lines, mm.</param>
/// <param name="Gap">Gap to the wall's inner face per side, mm.</param>
/// <param name="TongueGap">Gap of the tongue at an open bore to the bore wall, mm: wider, since a second tight fit would fight the
/// first.</param>
/// <param name="AboveBoard">Least height of the lip's end above the board's top face, mm.</param>
internal record LipRing(double Thickness, double Gap, double TongueGap, double AboveBoard)
{
    /// <summary>Room from the wall's inner face that the lip takes, mm.</summary>
    public double Reach => Gap + Thickness;

    /// <summary>Room from the bore wall's face that the tongue takes, mm.</summary>
    public double TongueReach => TongueGap + Thickness;
}

/// <summary>
/// Section of the lip that hangs from the cover into the tub:
/// <code>
///      cover wall │███████│
///  parting line ──┼──┐ ┌──┴─ ─ ─
///                 │tub│█│ lip   } overlap
///                 │   │█│
///                      └ gap between lip and wall
/// </code>
/// </summary>
/// <param name="Ring">What was decided of it before the walls.</param>
/// <param name="Overlap">From the parting line down to the lip's end, mm.</param>
internal sealed record LipSection(LipRing Ring, double Overlap) : LipRing(Ring);

/// <summary>What a mount asks of the tub, before the stack is decided.</summary>
/// <param name="Floor">Least floor thickness, mm; 0 for none.</param>
/// <param name="BelowBoard">Least space between the floor's inner face and the board, mm; 0 for none.</param>
/// <param name="Why">What asks for it.</param>
internal sealed record MountNeeds(double Floor, double BelowBoard, string Why);

/// <summary>How low the front may lie.</summary>
/// <param name="LedWindow">z of the LEDs' windows, from which the diffuser's distance runs.</param>
/// <param name="LowestInner">Least z of the diffuser's inner face.</param>
/// <param name="LowestFront">Least z of the cover's outer face.</param>
/// <param name="Why">What drives the two.</param>
/// <param name="LowestBezel">Least z of the bezel's inner face, which lies over parts and screw heads too; 0 without any.</param>
/// <param name="BoardTop">z of the board's front face.</param>
/// <param name="Tallest">z of the highest thing on it: LED, part or screw head.</param>
internal sealed record FrontLimits(double LedWindow, double LowestInner, double LowestFront, string Why, double LowestBezel,
    double BoardTop, double Tallest);

/// <summary>Window, bezel and diffuser as decided from light and filaments.</summary>
/// <param name="Diffuser">The diffuser.</param>
/// <param name="Window">The lit window in the bezel.</param>
/// <param name="BezelThickness">Thickness of the bezel plate, mm.</param>
/// <param name="OverDiffuser">From the diffuser's outer face to the cover's outer face, mm: 0 when flush.</param>
internal sealed record FrontDraft(DiffuserPlan Diffuser, Region Window, double BezelThickness, double OverDiffuser)
{
    /// <summary>Bars behind the diffuser that join the bezel's inner and outer part over walls between cells; empty for none.</summary>
    public Region Bars { get; init; } = Region.Empty;
}

/// <summary>Everything decided about cover, baffle, closure and what goes with them.</summary>
internal sealed record CoverSide
{
    /// <summary>What keeps the board where it lies.</summary>
    public required BoardHoldPlan Hold { get; init; }

    /// <summary>The front part.</summary>
    public required CoverPlan Cover { get; init; }

    /// <summary>The diffuser of the draft, posts and, for a lit wall, the band taken into account.</summary>
    public required DiffuserPlan Diffuser { get; init; }

    /// <summary>Walls between and round the LEDs; null for none.</summary>
    public BafflePlan? Baffle { get; init; }

    /// <summary>How cover and tub hold together.</summary>
    public required ClosurePlan Closure { get; init; }

    /// <summary>What makes the parts go together one way only.</summary>
    public required KeyPlan Key { get; init; }

    /// <summary>Notches for a blade.</summary>
    public required ImmutableArray<PryNotchPlan> PryNotches { get; init; }

    /// <summary>Slots in the floor.</summary>
    public ImmutableArray<VentPlan> Vents { get; init; } = [];

    /// <summary>How the housing is hung or stood.</summary>
    public MountPlan? Mount { get; init; }

    /// <summary>Lettering and marks.</summary>
    public ImmutableArray<LetteringPlan> Lettering { get; init; } = [];
}
