using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
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
public sealed record PortPlan
{
    /// <summary>Designator of the connector.</summary>
    public required string Ref { get; init; }

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

    /// <summary>The tongue in its place.</summary>
    public PlacedTongue? PlacedTongue => Tongue is { } tongue ? new PlacedTongue(tongue, Face, Faces, At, $"the opening of {Ref}") : null;
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

/// <summary>A port that shares its stretch of rim with others.</summary>
/// <param name="Port">The port.</param>
/// <param name="Within">Half of the stretch looked at, mm along the rim.</param>
/// <param name="Others">What else stands there, and how far from the port along the rim, mm; the nearest first.</param>
public sealed record CrowdedPort(PortPlan Port, double Within, ImmutableArray<(string What, double Along)> Others);

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
    string Ref, Point2 RestMin, Point2 RestMax, Angle Faces, Point2 Face, double Top, double StopTop, double StopU, double Rib);
