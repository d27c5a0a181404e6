using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// An opening through which a part on the board is reached from outside, or that the maker wants for a purpose of their own. Every
/// stage asks the opening itself; nobody but its own builder and the rules that are about one form know which form it is. A new form is
/// a record of its own, and the compiler asks it for every answer.
/// </summary>
public abstract record OpeningPlan
{
    private protected OpeningPlan()
    {
    }

    /// <summary>Designator of the part; the name of one of the maker's own, which no part has.</summary>
    public required string Ref { get; init; }

    /// <summary>What it takes of the wall; null where it leaves the wall alone.</summary>
    public abstract WallOpening? InWall { get; }

    /// <summary>The cover's tongue in it; null where the cover has no part in it.</summary>
    public abstract PlacedTongue? PlacedTongue { get; }

    /// <summary>What nothing may stand in between the tub's floor and the board, in plan; the part itself is known already.</summary>
    public abstract Region TakenInside { get; }

    /// <summary>What it cuts from the outer floor, in plan.</summary>
    /// <param name="shell">Walls and floor.</param>
    public abstract Region TakenOutside(ShellPlan shell);

    /// <summary>What it takes of the front and of the room right behind it, in plan.</summary>
    public virtual Region TakenInFront => Region.Empty;

    /// <summary>What the board file says where it shall not be, as part of a remedy.</summary>
    public virtual string Without => $"'port: closed' at {Ref}";

    /// <summary>Whether a round post on the floor would stand in its way.</summary>
    /// <param name="at">The post's axis.</param>
    /// <param name="diameter">Its diameter, mm.</param>
    public abstract bool IsBarredBy(Point2 at, double diameter);

    /// <summary>What it takes of a lip that hangs from the cover, in plan.</summary>
    /// <param name="board">The populated board.</param>
    /// <param name="lipBottom">z of the lip's end.</param>
    public abstract Region ThroughLip(CircuitBoard board, double lipBottom);

    /// <summary>What stands out of the housing where it is in use; null for nothing.</summary>
    /// <param name="beside">Left free beside it, mm.</param>
    public abstract OpeningInUse? InUse(double beside);

    /// <summary>How one sees by it that the board lies in its place; null where it does not show that.</summary>
    /// <param name="up">The direction that points up.</param>
    public abstract BoardSeat? Seat(Angle up);

    /// <summary>An upright section that shows it: a direction from the axis, and what it goes through, with its article.</summary>
    public abstract (Angle Direction, string Through) Section { get; }

    /// <summary>Its note on the drawing of the part that it goes through.</summary>
    public abstract PlanNote Note { get; }

    /// <summary>Name of that part.</summary>
    public virtual string NotedOn => PartNames.Tub;

    /// <summary>How it is tried on a print of the wall round it alone; null where that shows nothing of it.</summary>
    public abstract string? Trial { get; }

    /// <summary>What the hands do for it beside putting the board in.</summary>
    /// <param name="plan">The whole plan, this opening in it.</param>
    public abstract IEnumerable<HandStep> HandSteps(HousingPlan plan);

    /// <summary>Name of one of its faces in messages, with its article.</summary>
    /// <param name="face">Kind of the face.</param>
    public abstract string NameOf(FaceFeature face);

    /// <summary>Calls the method of a visitor for this form.</summary>
    public abstract T Accept<T>(IOpeningVisitor<T> visitor);
}

/// <summary>Something done for each form of opening; every form adds its method beside its own record.</summary>
/// <typeparam name="T">What comes of it.</typeparam>
public partial interface IOpeningVisitor<out T>;

/// <summary>What an opening takes of the wall.</summary>
/// <param name="What">What the tub's wall has to close over, in the words of a reason: "the plug at J1".</param>
/// <param name="Middle">A point of the line through its middle, inside the wall.</param>
/// <param name="Direction">Direction of that line, outward.</param>
/// <param name="Width">Along the wall, mm.</param>
/// <param name="Bottom">z of its lowest edge.</param>
/// <param name="Top">z of its highest edge.</param>
/// <param name="OpensRim">Whether it cuts the tub's rim.</param>
public sealed record WallOpening(
    string What, Point3 Middle, Angle Direction, double Width, double Bottom, double Top, bool OpensRim)
{
    /// <summary><see cref="Middle"/> in plan.</summary>
    public Point2 Through => new(Middle.X, Middle.Y);
}

/// <summary>What stands out of the housing where an opening is in use: a plug with its cable.</summary>
/// <param name="What">For messages: "J1's plug".</param>
/// <param name="Way">In plan, with the room beside it.</param>
/// <param name="Lowest">z of its side towards the floor, mm.</param>
/// <param name="Towards">Direction in which it leaves.</param>
public sealed record OpeningInUse(string What, Region Way, double Lowest, Angle Towards);

/// <summary>How one sees by an opening that the board lies in its place.</summary>
/// <param name="Over">Where the part comes to lie: "J1 at its opening at 6 o'clock".</param>
/// <param name="Check">What then works: "a plug goes in until it latches".</param>
/// <param name="At">Where that is, as a direction from the axis.</param>
public sealed record BoardSeat(string Over, string Check, Angle At);

/// <summary>An opening that shares its stretch of rim with others.</summary>
/// <param name="Ref">Designator of its part, or its name.</param>
/// <param name="InWall">What it takes of the wall.</param>
/// <param name="Within">Half of the stretch looked at, mm along the rim.</param>
/// <param name="Others">What else stands there, and how far from the opening along the rim, mm; the nearest first.</param>
public sealed record CrowdedOpening(string Ref, WallOpening InWall, double Within, ImmutableArray<(string What, double Along)> Others);
