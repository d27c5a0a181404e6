using System.Collections.Immutable;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A corner of an outline.</summary>
/// <param name="At">The corner.</param>
/// <param name="Arc">Included angle of the arc that leads here from the corner before, counter-clockwise; zero: a straight line.</param>
internal readonly record struct OutlineCorner(Point2 At, Angle Arc);

/// <summary>An outline as said: exactly one of them.</summary>
internal sealed record ParsedOutline(
    Parsed<double> Disc,
    Parsed<ParsedRing> Ring,
    Parsed<ImmutableArray<OutlineCorner>> Polygon,
    Parsed<ImmutableArray<OutlineCorner>> Arcs);

/// <summary>A ring as said.</summary>
internal sealed record ParsedRing(Parsed<double> Outer, Parsed<double> Bore);

/// <summary>A cutout or a notch: what is cut away from the outline.</summary>
internal sealed record ParsedCutout(
    Parsed<double> Circle, Parsed<Point2> At, Parsed<ImmutableArray<OutlineCorner>> Polygon, Parsed<ImmutableArray<OutlineCorner>> Arcs);

/// <summary>The outline of the board.</summary>
internal static class OutlineForm
{
    private static readonly Kind<OutlineCorner> Corner =
        new MappedKind<Point2, OutlineCorner>(BoardKinds.Point, at => new OutlineCorner(at, Angle.Zero));

    private static readonly Kind<OutlineCorner> ArcCorner = new MappedKind<ImmutableArray<double>, OutlineCorner>(
        new TupleKind(
            "a corner [x, y] or [x, y, angle of the arc that leads to it]",
            2,
            BoardKinds.Coordinate,
            BoardKinds.Coordinate,
            new NumberKind("an included angle in degrees", -359, 359)),
        c => new OutlineCorner(new Point2(c[0], c[1]), Angle.FromDegrees(c.Length > 2 ? c[2] : 0)));

    private static readonly Form<ParsedRing> Ring = new("a ring", keys =>
    {
        FormKey<double> outer = keys.Required("outer", BoardKinds.Length("an outer diameter", 8, BoardKinds.LargestBoard),
            "Outer diameter.");
        FormKey<double> bore = keys.Required("bore", BoardKinds.Length("a bore diameter", 1, BoardKinds.LargestBoard),
            "Diameter of the bore.");
        return values => new ParsedRing(values.Get(outer), values.Get(bore));
    }, buildsIncomplete: true);

    /// <summary>Corners joined by straight lines.</summary>
    public static Kind<ImmutableArray<OutlineCorner>> Polygon { get; } =
        new ListKind<OutlineCorner>("corners [x, y]", Corner, 3, BoardKinds.Most);

    /// <summary>Corners joined by lines and arcs.</summary>
    public static Kind<ImmutableArray<OutlineCorner>> Arcs { get; } =
        new ListKind<OutlineCorner>("corners [x, y] or [x, y, arc]", ArcCorner, 2, BoardKinds.Most);

    /// <summary>The mapping at `outline:`.</summary>
    public static Form<ParsedOutline> Form { get; } = new("the outline", keys =>
    {
        FormKey<double> disc = keys.Optional("disc", BoardKinds.Length("a disc's diameter", 8, BoardKinds.LargestBoard),
            "A full disc: its diameter.");
        FormKey<ParsedRing> ring = keys.Optional("ring", Ring, "A ring with a round bore on the same axis.");
        FormKey<ImmutableArray<OutlineCorner>> polygon = keys.Optional("polygon", Polygon, "Corners [x, y] in order, either way round.");
        FormKey<ImmutableArray<OutlineCorner>> arcs = keys.Optional(
            "arcs", Arcs,
            "Corners in order; a third number is the included angle of the arc that leads to the corner, counter-clockwise positive.");
        keys.ExactlyOneOf(disc, ring, polygon, arcs);
        return values => new ParsedOutline(values.Get(disc), values.Get(ring), values.Get(polygon), values.Get(arcs));
    }, buildsIncomplete: true);

    /// <summary>An entry of `cutouts:`.</summary>
    public static Form<ParsedCutout> Cutout { get; } = new("a cutout", keys =>
    {
        FormKey<double> circle = keys.Optional("circle", BoardKinds.Length("a cutout's diameter", 0.5, BoardKinds.LargestBoard),
            "A round cutout: its diameter.");
        FormKey<Point2> at = keys.Optional("at", BoardKinds.Point, "Centre of a round cutout.", "the board's centre");
        FormKey<ImmutableArray<OutlineCorner>> polygon = keys.Optional("polygon", Polygon, "Corners [x, y] in order.");
        FormKey<ImmutableArray<OutlineCorner>> arcs = keys.Optional("arcs", Arcs, "Corners in order, with arcs as in an outline.");
        keys.ExactlyOneOf(circle, polygon, arcs);
        keys.Needs(at, circle);
        return values => new ParsedCutout(values.Get(circle), values.Get(at), values.Get(polygon), values.Get(arcs));
    }, buildsIncomplete: true);
}
