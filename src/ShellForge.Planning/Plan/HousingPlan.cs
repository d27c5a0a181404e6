using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Hands;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Planning.Plan;

/// <summary>
/// Every dimension of the housing, decided once. Frame: mm, the board's centre on the z axis, x right and y up seen by the viewer, z = 0
/// on the tub's outer floor and rising towards the viewer. All parts are planned as assembled; <see cref="Parts"/> says how each
/// is turned for the printer.
/// </summary>
public sealed record HousingPlan
{
    /// <summary>What was asked for.</summary>
    public required BoardFile Source { get; init; }

    /// <summary>Heights from the floor to the front.</summary>
    public required StackPlan Stack { get; init; }

    /// <summary>Walls and floor in plan.</summary>
    public required ShellPlan Shell { get; init; }

    /// <summary>Posts on the tub's floor: under the board, and for closure screws.</summary>
    public required ImmutableArray<BossPlan> Bosses { get; init; }

    /// <summary>Every screw of the housing.</summary>
    public required ImmutableArray<ScrewJointPlan> Screws { get; init; }

    /// <summary>Openings for parts on the board; the number in a face's tag counts in this order.</summary>
    public required ImmutableArray<OpeningPlan> Openings { get; init; }

    /// <summary>Those of them that a plug enters.</summary>
    public IEnumerable<PortPlan> Ports => Openings.OfType<PortPlan>();

    /// <summary>Whether an opening leads to a part: made by itself, or by the maker for that part.</summary>
    public bool Opens(BoardPart part) =>
        Openings.Any(opening => opening.Ref == part.Ref || (opening is OwnOpeningPlan own && own.PartRef == part.Ref));

    /// <summary>Whether a part is a module whose own connector is shut in.</summary>
    public bool ShutsIn(BoardPart part) => part.Mouth is not null && part.Package is { MountingRequired: true } && !Opens(part);

    /// <summary>The exits of soldered round cables, in the order of the board file.</summary>
    public ImmutableArray<CableExitPlan> CableExits { get; init; } = [];

    /// <summary>The exit by which a lead leaves; null where it stays inside, or its cable has none.</summary>
    public CableExitPlan? ExitOf(WireLead wire) => CableExits.FirstOrDefault(exit => exit.Cable.Name == wire.To);

    /// <summary>
    /// The cover's tongues with the numbers of their face tags: over the openings in their order, then over the cables' exits.
    /// </summary>
    public IEnumerable<(PlacedTongue Tongue, int Number)> Tongues =>
        Openings.Select(opening => opening.PlacedTongue).Concat(CableExits.Select(exit => exit.Tongue))
            .Select((tongue, number) => (Tongue: tongue!, Number: number)).Where(each => each.Tongue is not null);

    /// <summary>Supports under connectors of modules that are soldered flat.</summary>
    public ImmutableArray<SaddlePlan> Saddles { get; init; } = [];

    /// <summary>The bay of a battery; null for none.</summary>
    public BatteryBayPlan? Bay { get; init; }

    /// <summary>A second board on the floor; null for none.</summary>
    public SecondBoardPlan? SecondBoard { get; init; }

    /// <summary>Spacers that a second board hangs from behind the LED board.</summary>
    public ImmutableArray<SpacerPlan> Spacers { get; init; } = [];

    /// <summary>What keeps the board where it lies.</summary>
    public required BoardHoldPlan Hold { get; init; }

    /// <summary>The front part.</summary>
    public required CoverPlan Cover { get; init; }

    /// <summary>What scatters the light.</summary>
    public required DiffuserPlan Diffuser { get; init; }

    /// <summary>Walls between and round the LEDs; null where the board has none.</summary>
    public BafflePlan? Baffle { get; init; }

    /// <summary>How cover and tub hold together.</summary>
    public required ClosurePlan Closure { get; init; }

    /// <summary>What makes the parts go together one way only.</summary>
    public required KeyPlan Key { get; init; }

    /// <summary>Notches in the parting line for a screwdriver blade.</summary>
    public required ImmutableArray<PryNotchPlan> PryNotches { get; init; }

    /// <summary>Slots in the floor that let warm air out.</summary>
    public ImmutableArray<VentPlan> Vents { get; init; } = [];

    /// <summary>How the housing is hung or stood; null: not at all.</summary>
    public MountPlan? Mount { get; init; }

    /// <summary>Lettering and revision marks.</summary>
    public ImmutableArray<LetteringPlan> Lettering { get; init; } = [];

    /// <summary>Openings that share their stretch of rim with others.</summary>
    public ImmutableArray<CrowdedOpening> Crowded { get; init; } = [];

    /// <summary>The printed parts, in the order of assembly from the floor up.</summary>
    public required ImmutableArray<PartPlan> Parts { get; init; }

    /// <summary>Screws, inserts, washers, sheet and filament to have at hand.</summary>
    public required ImmutableArray<ShoppingItem> Shopping { get; init; }

    /// <summary>What the hands do, from the prints on the bench to the closed housing, and to open it again.</summary>
    public ImmutableArray<HandStep> Steps { get; init; } = [];

    /// <summary>Every decision with its reason.</summary>
    public required ImmutableArray<Decision> Decisions { get; init; }

    /// <summary>Wishes that cannot be met.</summary>
    public required ImmutableArray<PlanRefusal> Refusals { get; init; }
}

/// <summary>Something to have at hand.</summary>
/// <param name="Item">In the trade's words: "insert M2.5 x 4, body 4.6", "screw M2.5 x 8 pan head".</param>
/// <param name="Count">How many.</param>
public sealed record ShoppingItem(string Item, int Count);

/// <summary>A number or a choice that the plan has taken, with what drove it. Listed under <c>resolved</c> in the report.</summary>
/// <param name="Path">Dotted path, such as <c>stack.below-board</c>.</param>
/// <param name="Value">The value as text, lengths in mm with at most three decimals.</param>
/// <param name="From">Where it comes from: a place in the board file, a profile, or the rule of the plan.</param>
/// <param name="Why">One sentence for the maker ("C9 costs 4.1 mm").</param>
public sealed record Decision(string Path, string Value, string From, string Why);

/// <summary>
/// A wish that the plan cannot meet. The plan still is whole (the nearest thing that can be built), so that the maker sees it; the
/// checks turn each refusal into a finding with the alternatives that would work.
/// </summary>
/// <param name="Rule">Name of the rule that reports it, such as <c>no-way-for-plug</c>.</param>
/// <param name="Subject">What it is about: a part, a designator, a hole.</param>
/// <param name="Message">What cannot be met and why.</param>
/// <param name="Measured">The value that results.</param>
/// <param name="Limit">The value it would need.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="At">Place in the assembled frame, mm.</param>
/// <param name="Remedy">What would work.</param>
/// <param name="IsReplaced">
/// Whether something else was planned that does the same work, such as a knot for a tie: a <c>warn</c>. Otherwise the housing lacks it: a
/// <c>stop</c>.
/// </param>
/// <param name="IsNoted">Whether what was asked for is there for the most part, and the rest only has to be known: a <c>note</c>.</param>
public sealed record PlanRefusal(
    string Rule, string Subject, string Message, double Measured, double Limit, string Unit, Point3 At, string Remedy,
    bool IsReplaced = false, bool IsNoted = false);
