using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Board.Description;

/// <summary>A side of the board.</summary>
public enum BoardSide
{
    /// <summary>The side that carries the LEDs and faces the viewer.</summary>
    Top,

    /// <summary>The side that faces the tub's floor.</summary>
    Bottom,
}

/// <summary>How the board was cut out of its panel.</summary>
public enum EdgeFinish
{
    /// <summary>Routed all round.</summary>
    Clean,

    /// <summary>Broken off at tabs: stubs stand out.</summary>
    Tabs,

    /// <summary>Scored and broken.</summary>
    VScored,
}

/// <summary>The board with everything soldered to it.</summary>
public sealed record CircuitBoard
{
    /// <summary>Its outline.</summary>
    public required BoardOutline Outline { get; init; }

    /// <summary>Laminate thickness, mm.</summary>
    public required double Thickness { get; init; }

    /// <summary>How its edge was made.</summary>
    public EdgeFinish Edge { get; init; }

    /// <summary>Measured length of a tab stub, mm; null when not measured.</summary>
    public double? TabStub { get; init; }

    /// <summary>Whether the bore is one that was measured.</summary>
    public bool BoreMeasured { get; init; }

    /// <summary>Holes for screws, wires and tooling, patterns written out.</summary>
    public ImmutableArray<BoardHole> Holes { get; init; } = [];

    /// <summary>LED circles, in file order.</summary>
    public ImmutableArray<PixelCircle> PixelCircles { get; init; } = [];

    /// <summary>Everything else that is soldered on, companions of the LEDs included.</summary>
    public ImmutableArray<BoardPart> Parts { get; init; } = [];

    /// <summary>Soldered leads.</summary>
    public ImmutableArray<WireLead> Wires { get; init; } = [];

    /// <summary>Where the file's own origin lies seen from the board's centre, mm: file coordinate = centred coordinate + this.</summary>
    public Point2 FileCentre { get; init; }

    /// <summary>The board with other profiles for the inserts of its holes.</summary>
    public CircuitBoard WithInserts(Func<InsertProfile, InsertProfile> of) =>
        this with { Holes = [.. Holes.Select(hole => hole.Insert is { } own ? hole with { Insert = of(own) } : hole)] };

    /// <summary>The board with other profiles for what plugs go into.</summary>
    public CircuitBoard WithMouths(Func<BoardPart, MouthProfile, MouthProfile> of) => this with
    {
        Parts =
        [
            .. Parts.Select(part =>
                part.Mouth is { } mouth ? part with { Mouth = mouth with { Profile = of(part, mouth.Profile) } } : part),
        ],
    };
}

/// <summary>The edge of the board, centred.</summary>
public abstract record BoardOutline
{
    private protected BoardOutline()
    {
    }

    /// <summary>The laminate seen from the top, bore and cutouts left out.</summary>
    public abstract Region Region { get; }

    /// <summary>Radius of the smallest circle round the centre that holds the board, mm.</summary>
    public abstract double OuterRadius { get; }

    /// <summary>Radius of the bore, mm; 0 when there is none.</summary>
    public abstract double BoreRadius { get; }
}

/// <summary>A full disc, less cutouts and notches in its edge.</summary>
public sealed record DiscOutline(double Diameter) : BoardOutline
{
    /// <summary>What is cut away.</summary>
    public Region Cutouts { get; init; } = Region.Empty;

    /// <inheritdoc />
    public override Region Region =>
        Region.Disc(Point2.Origin, new Ring(Diameter / 2, RingSide.Outside, Ring.CountFor(Diameter / 2), Angle.Zero)).Less(Cutouts);

    /// <inheritdoc />
    public override double OuterRadius => Diameter / 2;

    /// <inheritdoc />
    public override double BoreRadius => 0;
}

/// <summary>A ring with a round bore on the same axis, less cutouts and notches in its edges.</summary>
public sealed record RingOutline(double OuterDiameter, double BoreDiameter) : BoardOutline
{
    /// <summary>What is cut away.</summary>
    public Region Cutouts { get; init; } = Region.Empty;

    /// <inheritdoc />
    public override Region Region
    {
        get
        {
            int count = Ring.CountFor(OuterDiameter / 2);
            return Region.Annulus(
                new Ring(OuterDiameter / 2, RingSide.Outside, count, Angle.Zero),
                new Ring(BoreDiameter / 2, RingSide.Inside, count, Angle.Zero)).Less(Cutouts);
        }
    }

    /// <inheritdoc />
    public override double OuterRadius => OuterDiameter / 2;

    /// <inheritdoc />
    public override double BoreRadius => BoreDiameter / 2;
}

/// <summary>Any other outline: a closed polygon, arcs already drawn as chords, with cutouts.</summary>
public sealed record PolygonOutline : BoardOutline
{
    /// <summary>The outline as a region whose points are centred.</summary>
    public PolygonOutline(Region region)
    {
        Region = region;
        OuterRadius = region.Loops.SelectMany(loop => loop).Max(point => point.Length);
    }

    /// <inheritdoc />
    public override Region Region { get; }

    /// <inheritdoc />
    public override double OuterRadius { get; }

    /// <inheritdoc />
    public override double BoreRadius => 0;
}

/// <summary>What a hole is for.</summary>
public enum HolePurpose
{
    /// <summary>A screw holds the board here.</summary>
    Mount,

    /// <summary>Leads pass.</summary>
    Wire,

    /// <summary>Made for the board house; nothing uses it.</summary>
    Tooling,

    /// <summary>A second board hangs here on a spacer; its screw comes from the front.</summary>
    Spacer,
}

/// <summary>A hole in the board.</summary>
public sealed record BoardHole
{
    /// <summary>Name for messages: "hole 3".</summary>
    public required string Name { get; init; }

    /// <summary>Its axis.</summary>
    public required Point2 At { get; init; }

    /// <summary>Finished diameter, mm.</summary>
    public required double Diameter { get; init; }

    /// <summary>What it is for.</summary>
    public HolePurpose For { get; init; }

    /// <summary>Screw of its own, also into a spacer; null: the housing's.</summary>
    public ScrewProfile? Screw { get; init; }

    /// <summary>Insert of its own; null: the housing's.</summary>
    public InsertProfile? Insert { get; init; }

    /// <summary>Diameter free of copper and parts on the top side, mm; null: not said.</summary>
    public double? KeepOutTop { get; init; }

    /// <summary>Diameter free of copper and parts on the bottom side, mm; null: not said.</summary>
    public double? KeepOutBottom { get; init; }

    /// <summary>Dotted path of the entry in the file.</summary>
    public string Path { get; init; } = "";
}

/// <summary>Where an LED on a circle looks.</summary>
public enum PixelFacing
{
    /// <summary>Away from the board.</summary>
    Up,

    /// <summary>Outward through the wall.</summary>
    Out,

    /// <summary>Inward to the bore.</summary>
    In,
}

/// <summary>LEDs on one pitch circle.</summary>
public sealed record PixelCircle
{
    /// <summary>The package.</summary>
    public required LedProfile Led { get; init; }

    /// <summary>Pitch circle diameter, mm; 0 for a single LED at the centre.</summary>
    public required double Diameter { get; init; }

    /// <summary>Centre of the circle: the board's middle, unless plans are drawn about another point.</summary>
    public Point2 Centre { get; init; }

    /// <summary>Positions on the circle, skipped ones included.</summary>
    public required int Count { get; init; }

    /// <summary>Where they look.</summary>
    public PixelFacing Facing { get; init; }

    /// <summary>The LEDs there are, in data order.</summary>
    public required ImmutableArray<Pixel> Pixels { get; init; }

    /// <summary>
    /// Distance between neighbours along the chord, mm. A single LED has no neighbour: twice its body stands in, so that windows
    /// and distances worked out from the pitch stay sensible.
    /// </summary>
    public double Pitch => Count > 1
        ? Diameter * Angle.FromDegrees(180.0 / Count).Sin
        : 2 * Math.Max(Led.Length.Value, Led.Width.Value);
}

/// <summary>One LED.</summary>
/// <param name="Ref">Designator, such as D7.</param>
/// <param name="At">Body centre.</param>
/// <param name="Rotation">Turn of the package.</param>
public sealed record Pixel(string Ref, Point2 At, Angle Rotation);

/// <summary>A soldered lead.</summary>
public sealed record WireLead
{
    /// <summary>Name for messages.</summary>
    public required string Name { get; init; }

    /// <summary>Where it is soldered.</summary>
    public required Point2 At { get; init; }

    /// <summary>The side it is soldered on.</summary>
    public BoardSide Side { get; init; } = BoardSide.Bottom;

    /// <summary>Number of conductors that leave together.</summary>
    public int Conductors { get; init; } = 2;

    /// <summary>Outside diameter over the insulation of one conductor, mm.</summary>
    public required double Diameter { get; init; }

    /// <summary>Conductor size, AWG; null: not said.</summary>
    public int? Gauge { get; init; }

    /// <summary>Where it goes: another wire's name, a part's designator, or the name of the cable that it leaves by.</summary>
    public string To { get; init; } = RoundCable.Unnamed;
}
