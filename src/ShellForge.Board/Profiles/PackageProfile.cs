namespace ShellForge.Board.Profiles;

/// <summary>A part's body, its connector mouth if it has one, and the plug that mates with it.</summary>
public sealed record PackageProfile
{
    /// <summary>Profile name, such as <c>usb-c-receptacle</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Body along the package's x, mm (the diameter when <see cref="Round"/>).</summary>
    public required Sourced Length { get; init; }

    /// <summary>Body along the package's y, mm.</summary>
    public required Sourced Width { get; init; }

    /// <summary>Body above the board face it sits on, mm, flat mounted. Null: must be given.</summary>
    public Sourced? Height { get; init; }

    /// <summary>By how much a part may be taller than <see cref="Height"/>, mm; 0 where the height is already the largest.</summary>
    public Sourced HeightTolerance { get; init; }

    /// <summary>Whether the body is a cylinder standing on the board.</summary>
    public bool Round { get; init; }

    /// <summary>Whether the part is a passive of known size, whose unknown height is no danger.</summary>
    public bool Passive { get; init; }

    /// <summary>Whether a mounting (<c>mounted:</c>) must be said because heights differ so much.</summary>
    public bool MountingRequired { get; init; }

    /// <summary>Height when mounted on pins, mm.</summary>
    public Sourced? HeightOnPins { get; init; }

    /// <summary>Height when mounted in a socket, mm.</summary>
    public Sourced? HeightInSocket { get; init; }

    /// <summary>Height above the board face when sunk into a cutout of the board, mm.</summary>
    public Sourced? HeightMidBoard { get; init; }

    /// <summary>How far leads stand out on the far side of the board, mm; 0 for surface-mount parts.</summary>
    public Sourced JointProtrusion { get; init; }

    /// <summary>Heat given off in use, W.</summary>
    public Sourced Watts { get; init; }

    /// <summary>Diameter of a button's pusher, which stands on the body's axis, mm; null for what is no button.</summary>
    public Sourced? Pusher { get; init; }

    /// <summary>The opening a plug goes into; null for parts that take none.</summary>
    public MouthProfile? Mouth { get; init; }
}

/// <summary>A connector's mouth and its mating plug. The mouth lies on the body's +x face at rotation 0.</summary>
public sealed record MouthProfile
{
    /// <summary>Kind for messages and prices of contact: <c>usb-c</c>, <c>micro-b</c>, <c>barrel</c>, <c>wire</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>Whether its plug has no body to grip but leads to draw it by.</summary>
    public bool IsDrawnByLeads => Kind == "wire";

    /// <summary>
    /// How far the mouth's front face stands out past the body's +x end, mm: a connector that overhangs its module's edge.
    /// </summary>
    public Sourced Overhang { get; init; }

    /// <summary>Height of the mouth's axis above the board face, mm.</summary>
    public required Sourced AxisHeight { get; init; }

    /// <summary>Width of the metal or plastic nose that may enter the wall, mm.</summary>
    public required Sourced ShellWidth { get; init; }

    /// <summary>Height of that nose, mm.</summary>
    public required Sourced ShellHeight { get; init; }

    /// <summary>Opening in the wall along the board, mm.</summary>
    public required Sourced OpeningWidth { get; init; }

    /// <summary>Opening in the wall along z, mm.</summary>
    public required Sourced OpeningHeight { get; init; }

    /// <summary>Recess that the plug's overmould enters, along the board, mm.</summary>
    public required Sourced RecessWidth { get; init; }

    /// <summary>Recess along z, mm.</summary>
    public required Sourced RecessHeight { get; init; }

    /// <summary>Corner radius of the recess, mm, as far as the plug's corners leave it.</summary>
    public required Sourced RecessCornerRadius { get; init; }

    /// <summary>Largest overmould of a mating plug, along the board, mm.</summary>
    public required Sourced PlugWidth { get; init; }

    /// <summary>Largest overmould of a mating plug along z, mm.</summary>
    public required Sourced PlugHeight { get; init; }

    /// <summary>Corner radius of that overmould seen from its front, mm; 0 for square corners.</summary>
    public Sourced PlugCornerRadius { get; init; }

    /// <summary>Length of the overmould and strain relief behind the face, mm.</summary>
    public required Sourced PlugLength { get; init; }

    /// <summary>How far behind the wall face the mouth may lie before the plug no longer seats: warn from here, mm.</summary>
    public required Sourced SeatDepthWarn { get; init; }

    /// <summary>From here the plug does not seat, mm.</summary>
    public required Sourced SeatDepthStop { get; init; }

    /// <summary>Current the contacts carry, A.</summary>
    public required Sourced ContactAmps { get; init; }
}
