using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A part, or a pattern of parts, as said.</summary>
internal sealed record ParsedPart(
    Parsed<string> Ref,
    Parsed<PackageProfile> Package,
    Parsed<ImmutableArray<double>> Size,
    Parsed<bool> Round,
    Parsed<BoardSide> Side,
    ParsedPlacement Place,
    Parsed<Angle> Rotation,
    Parsed<bool> Turns,
    Parsed<Angle> Faces,
    Parsed<double> PastEdge,
    Parsed<double?> Height,
    Parsed<PartMounting> Mounted,
    Parsed<double> Lift,
    Parsed<bool> Passive,
    Parsed<double> Joint,
    Parsed<double> Watts,
    Parsed<PortWish> Port,
    MappingNode Node);

/// <summary>An entry of `parts:`.</summary>
internal static class PartForm
{
    /// <summary>The highest body, mm.</summary>
    public const double Highest = 100;

    private static readonly Kind<double> Edge = BoardKinds.Length("a body's size", 0.1, 300);

    /// <summary>[along x, along y] or [along x, along y, height].</summary>
    public static Kind<ImmutableArray<double>> Size { get; } = new TupleKind(
        "a body's size [along x, along y, height]", 2, Edge, Edge, BoardKinds.Length("a body's height", 0, Highest));

    /// <summary>A height, or the word unknown.</summary>
    public static Kind<double?> Height { get; } = BoardKinds.LengthOr("unknown", "a height above the board", 0, Highest);

    /// <summary>The mapping.</summary>
    public static Form<ParsedPart> Form { get; } = new("a part", keys =>
    {
        FormKey<string> name = keys.Required("ref", BoardKinds.Name, "Designator; a pattern counts on from its number.");
        FormKey<PackageProfile> package = keys.Optional("package", new ProfileKind<PackageProfile>("a package", l => l.Packages),
            "Package.");
        FormKey<ImmutableArray<double>> size =
            keys.Optional("size", Size, "Body [along x, along y, height] instead of a package; without the third the height is unknown.");
        keys.ExactlyOneOf(package, size);
        FormKey<bool> round = keys.Defaulted("round", BoardKinds.Flag, "The body of `size` is a cylinder that stands on the board.",
            "false");
        keys.Needs(round, size);
        FormKey<BoardSide> side = keys.Defaulted("side", BoardKinds.Side, "Side it sits on.", "bottom");
        var place = new PlacementKeys(keys, needed: false);
        FormKey<Angle> rotation = keys.Defaulted("rotation", BoardKinds.Angle,
            "Turn of the body, counter-clockwise seen from the top for both sides.", "0");
        FormKey<bool> turns = keys.Optional(
            "turns", BoardKinds.Flag, "Whether it turns with its direction from the centre, or with the grid.",
            "true on a circle or in a grid, else false");
        FormKey<Angle> faces = keys.Optional("faces", BoardKinds.Angle, "Direction the mouth looks to; overrides rotation.");
        keys.AtMostOneOf(rotation, faces);
        FormKey<double> pastEdge = keys.Optional(
            "past-edge", BoardKinds.Length("a distance past the edge", -200, 30),
            "How far the mouth stands out past the board's edge, negative inside; overrides position along `faces`.");
        keys.Needs(pastEdge, faces);
        FormKey<double?> height = keys.Optional("height", Height, "Top of the body above the board face it sits on, or unknown.",
            "the package's");
        FormKey<PartMounting> mounted = keys.Optional("mounted", Mounting, "How it sits.", "flat, where the package does not ask for it");
        FormKey<double> lift = keys.Defaulted("lift", BoardKinds.Length("a gap", 0, 50), "Gap between board and body.", "0");
        FormKey<bool> passive = keys.Optional("passive", BoardKinds.Flag, "A small passive: an unknown height is no danger.",
            "the package's");
        FormKey<double> joint = keys.Optional("joint-protrusion", BoardKinds.Length("a length of leads", 0, 20),
            "How far leads stand out on the far side.", "the package's");
        FormKey<double> watts = keys.Optional("watts", new NumberKind("a heat in W", 0, 50), "Heat given off in use, W.", "the package's");
        FormKey<PortWish> port = keys.Optional("port", new WordKind<PortWish>(("open", PortWish.Open), ("closed", PortWish.Closed)),
            "Whether the housing opens to it: the wall in front of a connector, or a hole for a pin in the floor under a button.",
            "open where the cable is");
        return values => new ParsedPart(
            values.Get(name),
            values.Get(package),
            values.Get(size),
            values.Get(round),
            values.Get(side),
            place.Said(values),
            values.Get(rotation),
            values.Get(turns),
            values.Get(faces),
            values.Get(pastEdge),
            values.Get(height),
            values.Get(mounted),
            values.Get(lift),
            values.Get(passive),
            values.Get(joint),
            values.Get(watts),
            values.Get(port),
            values.Node);
    }, buildsIncomplete: true);

    private static WordKind<PartMounting> Mounting => new(
        ("flat", PartMounting.Flat),
        ("on-pins", PartMounting.OnPins),
        ("in-socket", PartMounting.InSocket),
        ("standing", PartMounting.Standing),
        ("lying", PartMounting.Lying),
        ("mid-board", PartMounting.MidBoard));
}
