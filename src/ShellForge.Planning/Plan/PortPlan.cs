using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Plan;

/// <summary>The rung of the port ladder that was taken.</summary>
public enum PortKind
{
    /// <summary>A closed opening: the mouth lies inside the edge and near the outer wall face.</summary>
    ClosedOpening,

    /// <summary>A closed opening with a recess that the plug's overmould enters.</summary>
    OvermouldRecess,

    /// <summary>A slot open to the parting line; a tongue on the cover makes its roof.</summary>
    SlotWithTongue,
}

/// <summary>An opening in the wall in front of a connector. Its own frame: u along <see cref="Faces"/>, v to its left, z up.</summary>
public sealed record PortPlan : OpeningPlan
{
    // Room between a post on the floor and what comes through the opening, mm.
    private const double BesidePost = 0.5;

    /// <summary>The rung taken.</summary>
    public required PortKind Kind { get; init; }

    /// <summary>Direction from which the plug comes, outward.</summary>
    public required Angle Faces { get; init; }

    /// <summary>Middle of the mouth's front face in plan.</summary>
    public required Point2 Face { get; init; }

    /// <summary>Where it is, seen from the axis: not where it looks to, which is the other way for one in a bore.</summary>
    public Angle At => Face == Point2.Origin ? Faces : Angle.Of(Face);

    /// <summary>Whether it looks to the axis, into an open bore.</summary>
    public bool IntoBore => Point2.Dot(Face, Point2.Polar(1, Faces)) < 0;

    /// <summary>z of the mouth's axis.</summary>
    public required double AxisZ { get; init; }

    /// <summary>Sizes of mouth and plug.</summary>
    public required MouthProfile Mouth { get; init; }

    /// <summary>Width of the opening through the wall, mm, as drawn.</summary>
    public required double OpeningWidth { get; init; }

    /// <summary>z of the opening's lower edge.</summary>
    public required double OpeningBottom { get; init; }

    /// <summary>z of the opening's upper edge: for a slot the tongue's lower face.</summary>
    public required double OpeningTop { get; init; }

    /// <summary>Corner radius of the opening, mm.</summary>
    public required double OpeningCornerRadius { get; init; }

    /// <summary>What stands for the upper corners of opening and recess.</summary>
    public required RoofSlant Roof { get; init; }

    /// <summary>Distance along u from the axis of the housing to the outer wall face in front of the mouth, mm.</summary>
    public required double WallFace { get; init; }

    /// <summary>Distance along u from the axis of the housing to the nearest inner wall face in front of the mouth, mm.</summary>
    public required double WallInner { get; init; }

    /// <summary>How far the mouth lies behind the face that the plug's overmould touches, mm; negative: it stands out.</summary>
    public required double MouthBehind { get; init; }

    /// <summary>The recess; null when there is none.</summary>
    public RecessPlan? Recess { get; init; }

    /// <summary>The tongue; null unless <see cref="PortKind.SlotWithTongue"/>.</summary>
    public TonguePlan? Tongue { get; init; }

    /// <inheritdoc />
    public override PlacedTongue? PlacedTongue =>
        Tongue is { } tongue ? new PlacedTongue(tongue, Face, Faces, At, $"the opening of {Ref}") : null;

    /// <inheritdoc />
    public override WallOpening InWall => new(
        $"the plug at {Ref}", new Point3(Face.X, Face.Y, AxisZ), Faces, Math.Max(OpeningWidth, Recess?.Width ?? 0),
        Math.Min(OpeningBottom, Recess?.Bottom ?? OpeningBottom), Math.Max(OpeningTop, Recess?.Top ?? 0), Tongue is not null);

    /// <inheritdoc />
    public override Region TakenInside => Region.Empty;

    /// <inheritdoc />
    public override (Angle Direction, string Through) Section => (Faces, $"the port of {Ref}");

    /// <inheritdoc />
    public override PlanNote Note => new(Point2.Polar(WallFace, Faces), $"{Ref}: {HandWords.Figure(OpeningWidth)} wide");

    /// <inheritdoc />
    public override string Trial =>
        $"Push the plug of your own cable into {Ref} through the opening. It must click in all the way, and its grip must "
            + $"not meet the wall. If it does, measure the grip and say it in the board file.";

    /// <inheritdoc />
    public override Region TakenOutside(ShellPlan shell) =>
        Recess is null ? Region.Empty : Strips.Along(Face, Faces, Recess.Width, -shell.Wall, 4 * shell.Wall);

    /// <inheritdoc />
    public override bool IsBarredBy(Point2 at, double diameter)
    {
        Point2 along = Point2.Polar(1, Faces);
        Point2 from = at - Face;
        return Point2.Dot(from, along) >= -diameter
            && Math.Abs(Point2.Cross(along, from)) <= ((InWall.Width + diameter) / 2) + BesidePost;
    }

    /// <inheritdoc />
    public override Region ThroughLip(CircuitBoard board, double lipBottom)
    {
        if (OpeningTop <= lipBottom)
        {
            return Region.Empty;
        }

        // As wide as the opening, from the middle of the connector's body, so that no strip of the lip stays on it, out to the wall's face.
        Point2 along = Point2.Polar(1, Faces);
        double from = Point2.Dot(board.Parts.First(part => part.Ref == Ref).At - Face, along);
        double to = WallFace - Point2.Dot(Face, along);
        return PartEnvelope.Rectangle(Face + ((from + to) / 2 * along), to - from, OpeningWidth, Faces);
    }

    /// <inheritdoc />
    public override OpeningInUse InUse(double beside)
    {
        double mouth = Point2.Dot(Face, Point2.Polar(1, Faces));
        return new OpeningInUse(
            $"{Ref}'s plug",
            Strips.Along(Face, Faces, Mouth.PlugWidth + (2 * beside), 0, Math.Max(WallFace - mouth, 0) + Mouth.PlugLength),
            AxisZ - (Mouth.PlugHeight / 2), Faces);
    }

    /// <inheritdoc />
    public override BoardSeat Seat(Angle up) => new(
        $"{Ref} at its opening {(IntoBore ? "in the bore " : "")}at {HandWords.Clock(At, up)}", "a plug goes in until it latches", At);

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan) => [];

    /// <inheritdoc />
    public override string NameOf(FaceFeature face) => face switch
    {
        FaceFeature.PortRecess => $"the recess for the plug of {Ref}",
        FaceFeature.Tongue => $"the tongue over {Ref}",
        _ => $"the opening for {Ref}",
    };

    /// <inheritdoc />
    public override T Accept<T>(IOpeningVisitor<T> visitor) => visitor.Port(this);
}

/// <summary>A recess in the outer wall face for a plug's overmould.</summary>
/// <param name="Width">Along v, mm, as drawn.</param>
/// <param name="Bottom">z of its lower edge.</param>
/// <param name="Top">z of its upper edge.</param>
/// <param name="CornerRadius">Corner radius, mm.</param>
/// <param name="FaceU">u of its floor: the face that the overmould touches.</param>
public sealed record RecessPlan(double Width, double Bottom, double Top, double CornerRadius, double FaceU);

/// <summary>A tongue on the cover that fills the upper part of a slot in the tub's wall.</summary>
/// <param name="Width">Along v, mm.</param>
/// <param name="Bottom">z of its lower face.</param>
/// <param name="Gap">Gap per side to the slot, mm.</param>
/// <param name="Thickness">Along u, mm: as the wall, flush outside.</param>
/// <param name="SlotWidth">Width of the slot it fills, along v, mm.</param>
public sealed record TonguePlan(double Width, double Bottom, double Gap, double Thickness, double SlotWidth);

/// <summary>A tongue of the cover in its place.</summary>
/// <param name="Tongue">Its sizes.</param>
/// <param name="Through">A point of the line through the middle of its opening, in plan.</param>
/// <param name="Faces">Direction of that line, outward.</param>
/// <param name="At">Where it is, seen from the axis.</param>
/// <param name="Closes">What it closes, with its article: "the opening of J1".</param>
public sealed record PlacedTongue(TonguePlan Tongue, Point2 Through, Angle Faces, Angle At, string Closes);

/// <summary>A rest under a connector's shell and a stop rib behind it, so that plug forces do not lift pads.</summary>
/// <param name="Ref">Designator.</param>
/// <param name="RestMin">Lower corner in the part's frame (u along the mouth, v left), mm, from the face's middle.</param>
/// <param name="RestMax">Upper corner.</param>
/// <param name="Faces">Direction of the mouth.</param>
/// <param name="Face">Middle of the mouth's front face.</param>
/// <param name="Top">z of the rest.</param>
/// <param name="StopTop">z of the stop rib's top; 0: no rib.</param>
/// <param name="StopU">u of the rib's face, mm from the face's middle.</param>
/// <param name="Rib">Thickness of the rib, mm.</param>
public sealed record SaddlePlan(
    string Ref, Point2 RestMin, Point2 RestMax, Angle Faces, Point2 Face, double Top, double StopTop, double StopU, double Rib)
{
    /// <summary>The rest in plan: what the walls leave of it, empty where that holds nothing.</summary>
    public required Region Rest { get; init; }
}

/// <content>What is done for this form.</content>
public partial interface IOpeningVisitor<out T>
{
    /// <summary>For a connector's opening.</summary>
    T Port(PortPlan opening);
}
