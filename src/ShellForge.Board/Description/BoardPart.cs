using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Description;

/// <summary>How a part sits on the board.</summary>
public enum PartMounting
{
    /// <summary>Not said.</summary>
    Unsaid,

    /// <summary>Soldered flat.</summary>
    Flat,

    /// <summary>On pin headers.</summary>
    OnPins,

    /// <summary>In a socket.</summary>
    InSocket,

    /// <summary>Standing on its leads.</summary>
    Standing,

    /// <summary>Laid on its side.</summary>
    Lying,

    /// <summary>Sunk into a cutout of the board.</summary>
    MidBoard,
}

/// <summary>What the housing does at a connector.</summary>
public enum PortWish
{
    /// <summary>The plan decides: open where the cable is.</summary>
    Unsaid,

    /// <summary>The wall is opened for a plug.</summary>
    Open,

    /// <summary>The wall stays closed; the connector is for the bench.</summary>
    Closed,
}

/// <summary>A part on the board, as the envelope that has to be cleared.</summary>
public sealed record BoardPart
{
    /// <summary>Designator.</summary>
    public required string Ref { get; init; }

    /// <summary>Package name; null when a bare size was given.</summary>
    public PackageProfile? Package { get; init; }

    /// <summary>The side it sits on.</summary>
    public required BoardSide Side { get; init; }

    /// <summary>Body centre.</summary>
    public required Point2 At { get; init; }

    /// <summary>Turn of the body, counter-clockwise seen from the top for both sides.</summary>
    public Angle Rotation { get; init; }

    /// <summary>Body along its own x, mm (the diameter when <see cref="Round"/>).</summary>
    public required double Length { get; init; }

    /// <summary>Body along its own y, mm.</summary>
    public required double Width { get; init; }

    /// <summary>Whether the body is a cylinder standing on the board.</summary>
    public bool Round { get; init; }

    /// <summary>Top of the body above the board face, lift included, mm; null: unknown.</summary>
    public required double? Height { get; init; }

    /// <summary>Where the height comes from, for people.</summary>
    public string HeightFrom { get; init; } = "";

    /// <summary>How much of <see cref="Height"/> is what makers allow over the listed height, mm.</summary>
    public double HeightTolerance { get; init; }

    /// <summary>How it sits.</summary>
    public PartMounting Mounted { get; init; }

    /// <summary>Gap between board face and body, mm.</summary>
    public double Lift { get; init; }

    /// <summary>Whether it hangs on spacers, so that up to <see cref="Lift"/> other parts have room between it and the board.</summary>
    public bool OnSpacers { get; init; }

    /// <summary>Mass, g; null: by its size.</summary>
    public double? Grams { get; init; }

    /// <summary>Whether an unknown height is no danger.</summary>
    public bool Passive { get; init; }

    /// <summary>How far leads stand out on the far side, mm.</summary>
    public double JointProtrusion { get; init; }

    /// <summary>Heat given off in use, W.</summary>
    public double Watts { get; init; }

    /// <summary>The connector, when it takes a plug.</summary>
    public ConnectorMouth? Mouth { get; init; }

    /// <summary>What the housing does at the connector.</summary>
    public PortWish Port { get; init; }

    /// <summary>Dotted path of the entry in the file.</summary>
    public string Path { get; init; } = "";
}

/// <summary>A connector's mouth on a placed part.</summary>
/// <param name="Profile">Sizes of mouth and plug.</param>
/// <param name="Faces">Direction a plug comes from, seen from the mouth outward.</param>
/// <param name="Face">Middle of the mouth's front face, in plan.</param>
/// <param name="PastEdge">How far the mouth stands out past the board's edge along <paramref name="Faces"/>, mm; negative: inside.</param>
public sealed record ConnectorMouth(MouthProfile Profile, Angle Faces, Point2 Face, double PastEdge);
