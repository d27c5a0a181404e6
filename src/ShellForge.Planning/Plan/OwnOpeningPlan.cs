using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Plan;

/// <summary>
/// An opening that the maker wants for a purpose of their own. Its outline is drawn in the plane that it is cut through, and it is open
/// straight through from outside to what it is for.
/// </summary>
public abstract record OwnOpeningPlan : OpeningPlan
{
    // Room between a post on the floor and the way through the opening, mm.
    private protected const double BesidePost = 0.5;

    private protected OwnOpeningPlan()
    {
    }

    /// <summary>The shape that the maker wants in the hand.</summary>
    public required OpeningShape Asked { get; init; }

    /// <summary>Designator of the part that it is for; null where it stands by itself.</summary>
    public required string? PartRef { get; init; }

    /// <summary>
    /// Its outline as drawn: in a wall seen from outside, right and up from the axis and the outer floor; elsewhere in plan.
    /// </summary>
    public required Region Outline { get; init; }

    /// <summary>A line straight through it.</summary>
    /// <param name="at">A place in the plane of <see cref="Outline"/>.</param>
    /// <returns>Where it enters from outside, and where it ends inside.</returns>
    public abstract (Point3 Outside, Point3 Inside) SightThrough(Point2 at);

    /// <summary>What to change where something stands in its way.</summary>
    public abstract string Elsewhere { get; }

    /// <summary>What to change where LEDs are seen through it.</summary>
    public abstract string OutOfSight { get; }

    /// <inheritdoc />
    public sealed override string Without => $"another place for the opening '{Ref}'";

    /// <inheritdoc />
    public sealed override PlacedTongue? PlacedTongue => null;

    /// <inheritdoc />
    public sealed override string? Trial => null;

    /// <inheritdoc />
    public sealed override OpeningInUse? InUse(double beside) => null;

    /// <inheritdoc />
    public sealed override BoardSeat? Seat(Angle up) => null;

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan) => [];

    /// <inheritdoc />
    public sealed override string NameOf(FaceFeature face) => NameOf(Ref);

    /// <summary>The opening of a name in messages, with its article.</summary>
    public static string NameOf(string name) => $"the opening '{name}'";

    /// <summary>Its size on a drawing: "\u00D83.2", "9 x 3".</summary>
    private protected string SizeText => Asked.IsRound ? $"\u00D8{HandWords.Figure(Asked.Along)}"
        : $"{HandWords.Figure(Asked.Along)} x {HandWords.Figure(Asked.Across)}";
}

/// <summary>
/// Through the tub's wall. Its own frame: u along <see cref="Faces"/>, v to its left, z up. The upper edge slants as the printer needs it:
/// <code>
///      ___
///     /   \     level piece, bridged
///    |     |
///     \___/     z from the outer floor
/// </code>
/// </summary>
public sealed record WallOpeningPlan : OwnOpeningPlan
{
    // The lip hangs no farther into the room than this, mm.
    private const double PastLip = 4;

    /// <summary>Direction in which it leaves the housing.</summary>
    public required Angle Faces { get; init; }

    /// <summary>A point of the line through its middle, in plan, at the wall's inner face.</summary>
    public required Point2 Through { get; init; }

    /// <summary>z of its middle.</summary>
    public required double AxisZ { get; init; }

    /// <summary>u of the nearest inner wall face across its width, mm.</summary>
    public required double WallInner { get; init; }

    /// <summary>u of the farthest outer wall face across its width, mm.</summary>
    public required double WallFace { get; init; }

    /// <summary>u up to which it has to stay open inside, mm.</summary>
    public required double OpenTo { get; init; }

    /// <summary>Whether the floor's room below the board lies behind it.</summary>
    public required bool UnderBoard { get; init; }

    /// <inheritdoc />
    public override string Elsewhere => "another angle at 'wall', another 'height', or a smaller opening";

    /// <inheritdoc />
    public override string OutOfSight => "bring it below the board ('over-board: -4'), turn it away, or make it smaller";

    /// <inheritdoc />
    public override WallOpening InWall => new(
        NameOf(Ref), new Point3(Through.X, Through.Y, AxisZ), Faces, Outline.Bounds.Size.X, Outline.Bounds.Min.Y, Outline.Bounds.Max.Y,
        OpensRim: false);

    /// <inheritdoc />
    public override Region TakenInside => UnderBoard ? Way(OpenTo, WallFace) : Region.Empty;

    /// <inheritdoc />
    public override (Angle Direction, string Through) Section => (Angle.Of(Through), NameOf(Ref));

    /// <inheritdoc />
    public override PlanNote Note => new(
        Through + ((WallFace - Point2.Dot(Through, Point2.Polar(1, Faces))) * Point2.Polar(1, Faces)),
        string.Create(CultureInfo.InvariantCulture,
            $"{Ref}: {SizeText}, {Angle.Of(Through).Normalized.Degrees:0.#}\u00B0, z {AxisZ:0.##}"));

    /// <inheritdoc />
    public override Region TakenOutside(ShellPlan shell) => Region.Empty;

    /// <inheritdoc />
    public override bool IsBarredBy(Point2 at, double diameter) =>
        UnderBoard && TakenInside.Distance(at) <= (diameter / 2) + BesidePost;

    /// <inheritdoc />
    public override Region ThroughLip(CircuitBoard board, double lipBottom) =>
        Outline.Bounds.Max.Y <= lipBottom ? Region.Empty : Way(Math.Min(OpenTo, WallInner - PastLip), WallFace);

    /// <inheritdoc />
    public override (Point3 Outside, Point3 Inside) SightThrough(Point2 at)
    {
        Point2 along = Point2.Polar(1, Faces);
        Point2 across = at.X * new Point2(0 - along.Y, along.X);
        Point2 from = (WallFace * along) + across;
        Point2 to = (OpenTo * along) + across;
        return (new Point3(from.X, from.Y, at.Y), new Point3(to.X, to.Y, at.Y));
    }

    /// <inheritdoc />
    public override T Accept<T>(IOpeningVisitor<T> visitor) => visitor.WallOpening(this);

    // As wide as the opening, in plan.
    private Region Way(double from, double to)
    {
        Box2 box = Outline.Bounds;
        Point2 along = Point2.Polar(1, Faces);
        Point2 middle = box.Centre.X * new Point2(0 - along.Y, along.X);
        return Strips.Along(middle, Faces, box.Size.X, from, to);
    }
}

/// <summary>Through the tub's floor.</summary>
public sealed record FloorOpeningPlan : OwnOpeningPlan
{
    // Floor left between the opening and anything else that is cut there: two lines, mm.
    private const double FloorBeside = 0.8;

    /// <summary>Its middle in plan.</summary>
    public required Point2 At { get; init; }

    /// <summary>z of the floor's inner face.</summary>
    public required double FloorTop { get; init; }

    /// <summary>z up to which it has to stay open inside.</summary>
    public required double OpenTo { get; init; }

    /// <summary>Leg of the 45 degree chamfer along its edge in the outer floor, mm.</summary>
    public required double Chamfer { get; init; }

    /// <summary>Its outline in the outer floor.</summary>
    public Region Mouth => Outline.Offset(Chamfer);

    /// <inheritdoc />
    public override string Elsewhere => "another place at 'floor', or move what stands there";

    /// <inheritdoc />
    public override string OutOfSight => "move it under the board";

    /// <inheritdoc />
    public override WallOpening? InWall => null;

    /// <inheritdoc />
    public override Region TakenInside => Outline;

    /// <inheritdoc />
    public override (Angle Direction, string Through) Section => (At == Point2.Origin ? Angle.Zero : Angle.Of(At), NameOf(Ref));

    /// <inheritdoc />
    public override PlanNote Note => new(At, string.Create(CultureInfo.InvariantCulture,
        $"{Ref}: {SizeText} at x {At.X:0.##}, y {At.Y:0.##}"));

    /// <inheritdoc />
    public override Region TakenOutside(ShellPlan shell) => Mouth.Offset(FloorBeside);

    /// <inheritdoc />
    public override bool IsBarredBy(Point2 at, double diameter) => Outline.Distance(at) <= (diameter / 2) + BesidePost;

    /// <inheritdoc />
    public override Region ThroughLip(CircuitBoard board, double lipBottom) => Region.Empty;

    /// <inheritdoc />
    public override (Point3 Outside, Point3 Inside) SightThrough(Point2 at) =>
        (new Point3(at.X, at.Y, 0), new Point3(at.X, at.Y, OpenTo));

    /// <inheritdoc />
    public override T Accept<T>(IOpeningVisitor<T> visitor) => visitor.FloorOpening(this);
}

/// <summary>Through the front: bezel, or diffuser in the lit window.</summary>
public sealed record FrontOpeningPlan : OwnOpeningPlan
{
    /// <summary>Its middle in plan.</summary>
    public required Point2 At { get; init; }

    /// <summary>z of the cover's outer face.</summary>
    public required double Front { get; init; }

    /// <summary>z of the lowest face of bezel and diffuser.</summary>
    public required double CutFrom { get; init; }

    /// <summary>z down to which it has to stay open inside.</summary>
    public required double OpenTo { get; init; }

    /// <summary>z of the outer face of what it goes through: the bezel's, or the diffuser's where that lies farther inside.</summary>
    public required double Face { get; init; }

    /// <summary>Leg of the 45 degree chamfer along its edge there, mm; 0 where the hands cut it.</summary>
    public required double Chamfer { get; init; }

    /// <summary>Whether it goes through the lit window.</summary>
    public required bool InWindow { get; init; }

    /// <summary>Its outline in that face.</summary>
    public Region Mouth => Outline.Offset(Chamfer);

    /// <inheritdoc />
    public override string Elsewhere => "another place at 'front', or move what stands there";

    /// <inheritdoc />
    public override string OutOfSight => "move it away from the LEDs, make it smaller, or let what goes through it fill it";

    /// <summary>Whether the hands have to cut it into a sheet that is laid in.</summary>
    public required bool ThroughSheet { get; init; }

    /// <inheritdoc />
    public override WallOpening? InWall => null;

    /// <inheritdoc />
    public override Region TakenInside => Region.Empty;

    /// <inheritdoc />
    public override (Angle Direction, string Through) Section => (At == Point2.Origin ? Angle.Zero : Angle.Of(At), NameOf(Ref));

    /// <inheritdoc />
    public override PlanNote Note => new(At, string.Create(CultureInfo.InvariantCulture,
        $"{Ref}: {SizeText} at x {At.X:0.##}, y {At.Y:0.##}"));

    /// <inheritdoc />
    public override string NotedOn => PartNames.Cover;

    /// <inheritdoc />
    public override Region TakenInFront => Mouth.Offset(BesidePost);

    /// <inheritdoc />
    public override Region TakenOutside(ShellPlan shell) => Region.Empty;

    /// <inheritdoc />
    public override bool IsBarredBy(Point2 at, double diameter) => false;

    /// <inheritdoc />
    public override Region ThroughLip(CircuitBoard board, double lipBottom) => Region.Empty;

    /// <inheritdoc />
    public override (Point3 Outside, Point3 Inside) SightThrough(Point2 at) =>
        (new Point3(at.X, at.Y, Front), new Point3(at.X, at.Y, OpenTo));

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        if (ThroughSheet)
        {
            yield return new HandStep
            {
                Phase = HandPhase.Inside,
                Title = $"Cut the opening '{Ref}' into the sheet",
                Text = "Lay the sheet into its seat, draw the edge of the opening onto it through the cover, and cut it out: "
                    + $"{SizeText} mm.",
                Check = "The edge of the sheet does not stand into the opening.",
                Tools = ["sharp knife or hollow punch"],
                Cautions = [HandCaution.Blade],
                Shown = [PartNames.Cover],
                FromBelow = true,
            };
        }
    }

    /// <inheritdoc />
    public override T Accept<T>(IOpeningVisitor<T> visitor) => visitor.FrontOpening(this);
}

/// <content>What is done for these forms.</content>
public partial interface IOpeningVisitor<out T>
{
    /// <summary>For one through the wall.</summary>
    T WallOpening(WallOpeningPlan opening);

    /// <summary>For one through the floor.</summary>
    T FloorOpening(FloorOpeningPlan opening);

    /// <summary>For one through the front.</summary>
    T FrontOpening(FrontOpeningPlan opening);
}
