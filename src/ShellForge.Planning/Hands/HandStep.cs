using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Hands;

/// <summary>When a step's turn comes; steps of one phase keep the order in which they are given.</summary>
public enum HandPhase
{
    /// <summary>Prints on the bench are made ready.</summary>
    Prints,

    /// <summary>What goes into the empty tub: inserts, magnets.</summary>
    Tub,

    /// <summary>The board goes into the tub, and its cable with it.</summary>
    Board,

    /// <summary>What goes onto the board or into the cover.</summary>
    Inside,

    /// <summary>Cover and tub come together.</summary>
    Close,

    /// <summary>The closed housing is hung, stood or fixed.</summary>
    Place,

    /// <summary>It is opened again.</summary>
    Open,
}

/// <summary>
/// A step of the assembly: what the hands do, told by the form that needs it. Outputs draw and print it, and know no form.
/// </summary>
public sealed record HandStep
{
    /// <summary>When its turn comes.</summary>
    public required HandPhase Phase { get; init; }

    /// <summary>What the hands do, in a few words: "Set the inserts".</summary>
    public required string Title { get; init; }

    /// <summary>How, in short sentences, with the figures: what to press, where, which way up.</summary>
    public required string Text { get; init; }

    /// <summary>What to look at or try after it; empty where the step itself is the check.</summary>
    public required string Check { get; init; }

    /// <summary>Where the hand or the eye is at risk. Outputs print each text once, at the first step that has it.</summary>
    public ImmutableArray<HandCaution> Cautions { get; init; } = [];

    /// <summary>Tools for it.</summary>
    public ImmutableArray<string> Tools { get; init; } = [];

    /// <summary>What a picture of it shows in its place, from the floor up: by the names of parts.</summary>
    public ImmutableArray<string> Shown { get; init; } = [];

    /// <summary>Those of <see cref="Shown"/> that the hands hold, drawn lifted. What is printed into one of them goes with it.</summary>
    public ImmutableArray<string> Held { get; init; } = [];

    /// <summary>Screws, inserts, magnets and the like that this step puts in; drawn off their place, with an arrow to it.</summary>
    public ImmutableArray<HandThing> Things { get; init; } = [];

    /// <summary>The same kind of things that are already in their place.</summary>
    public ImmutableArray<HandThing> InPlace { get; init; } = [];

    /// <summary>How what is held moves, for the picture's arrow.</summary>
    public HandMotion Motion { get; init; }

    /// <summary>Direction from the axis at which an arrow of the picture stands; null: where it is seen best.</summary>
    public Angle? At { get; init; }

    /// <summary>Whether what is shown lies turned over on the bench, the viewer's side down; lifted is then away from the viewer.</summary>
    public bool FromBelow { get; init; }

    /// <summary>Whether the picture pulls apart what is held, one above the other.</summary>
    public bool Apart { get; init; }
}

/// <summary>How what the hands hold moves.</summary>
public enum HandMotion
{
    /// <summary>It is not moved, or the picture says nothing of it.</summary>
    None,

    /// <summary>Towards the tub, along the axis.</summary>
    Down,

    /// <summary>Away from the tub, along the axis.</summary>
    Up,

    /// <summary>Down, then clockwise seen by the viewer.</summary>
    DownAndClockwise,

    /// <summary>Anticlockwise seen by the viewer, then up.</summary>
    AnticlockwiseAndUp,
}

/// <summary>A caution in its place.</summary>
/// <param name="Risk">What is at risk, in a word or two, as a heading: "Iron", "Eyes", "Edges".</param>
/// <param name="Text">What to do about it, in one or two sentences.</param>
public sealed record HandCaution(string Risk, string Text)
{
    /// <summary>Printed edges and the knife that cleans them.</summary>
    public static HandCaution Edges { get; } = new("Edges", "Printed edges and knives cut: cut away from the hand.");

    /// <summary>LEDs on the open board.</summary>
    public static HandCaution Eyes { get; } = new(
        "Eyes", "Start dim, and do not look into the LEDs from near. Light that flashes 3 to 60 times a second can set off seizures: test "
            + "with slower patterns and warn people first.");

    /// <summary>A blade that pries or cuts.</summary>
    public static HandCaution Blade { get; } = new("Blade", "A blade that slips cuts: lead it away from the hand that holds.");

    /// <summary>The iron that sets inserts.</summary>
    public static HandCaution Iron { get; } = new(
        "Iron", "Iron and brass burn skin: hold the part in a vice or on the bench, never in the hand. Hot plastic gives off fumes: air "
            + "the room.");

    /// <summary>Solvents and glues.</summary>
    public static HandCaution Adhesive { get; } = new(
        "Adhesive",
        "Glue bonds skin and its vapour irritates: wear gloves and eye protection, air the room, and follow the maker's sheet.");

    /// <summary>Lithium in a housing.</summary>
    public static HandCaution Lithium { get; } = new(
        "Battery", "Lithium cells burn when they are shorted, pierced, squeezed or overcharged: take one with its protection circuit, "
            + "and a charger made for it. Its data sheet and local rules hold for charging, carrying and disposal.");

    /// <summary>Other cells in a housing.</summary>
    public static HandCaution Cells { get; } = new(
        "Battery", "Shorted cells get hot and old ones leak: use cells of one kind and age, and take them out before a long rest. Their "
            + "data sheet and local rules hold for charging and disposal.");

    /// <summary>Holes in a wall of the room.</summary>
    public static HandCaution Drilling { get; } = new(
        "Drilling", "Before drilling, look for cables and pipes in the wall; wear eye protection.");
}

/// <summary>What a small thing is made of, for its colour in pictures.</summary>
public enum HandMaterial
{
    /// <summary>Screws and washers.</summary>
    Steel,

    /// <summary>Inserts.</summary>
    Brass,

    /// <summary>Magnets.</summary>
    Magnet,

    /// <summary>Ties and adhesive.</summary>
    Plastic,

    /// <summary>Cells and pouches in their sleeves.</summary>
    Battery,

    /// <summary>A second board.</summary>
    Laminate,
}

/// <summary>A screw, an insert or a magnet in its place, as discs stacked along an upright axis.</summary>
/// <param name="Material">What it is made of.</param>
/// <param name="At">Its axis.</param>
/// <param name="Discs">Diameter, lower and upper end of each, mm, as assembled.</param>
/// <param name="FromBelow">Whether it is put in from below, through the outer floor.</param>
public sealed record HandThing(
    HandMaterial Material, Point2 At, ImmutableArray<(double Diameter, double FromZ, double ToZ)> Discs, bool FromBelow = false)
{
    /// <summary>What is no disc: an upright body with this outline, from and to a z; null for none.</summary>
    public (Region Outline, double FromZ, double ToZ)? Body { get; init; }

    /// <summary>How it lies where its axis is not upright: from the frame in which it stands to the assembled one.</summary>
    public Transform3 Placement { get; init; } = Transform3.Identity;
}
