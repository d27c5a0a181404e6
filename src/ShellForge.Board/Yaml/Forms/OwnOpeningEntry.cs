using System.Collections.Immutable;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>An opening of the maker's own, as said.</summary>
internal sealed record ParsedOpening(
    Parsed<string> Name,
    Parsed<ParsedOpeningPlace> Wall,
    Parsed<ParsedOpeningPlace> Floor,
    Parsed<ParsedOpeningPlace> Front,
    Parsed<double> Height,
    Parsed<double> OverBoard,
    Parsed<double> Diameter,
    Parsed<ImmutableArray<double>> Slot,
    Parsed<ImmutableArray<double>> Rectangle,
    Parsed<double> Corner,
    Parsed<Angle> Turn,
    MappingNode Node);

/// <summary>Where an opening is: an angle, a point, polar coordinates, or the part that it is for.</summary>
internal sealed record ParsedOpeningPlace(Angle? Angle, Point2? At, Point2? Polar, string? Part);

/// <summary>An entry of `openings:`.</summary>
internal static class OwnOpeningEntry
{
    private static readonly Kind<double> Size = BoardKinds.Length("a size", 0.8, 120);

    private static readonly Kind<ParsedOpeningPlace> Part = new MappedKind<string, ParsedOpeningPlace>(
        BoardKinds.Name, part => new ParsedOpeningPlace(null, null, null, part));

    private static readonly Kind<ParsedOpeningPlace> InWall = new ChoiceKind<ParsedOpeningPlace>(
        new MappedKind<Angle, ParsedOpeningPlace>(BoardKinds.Angle, angle => new ParsedOpeningPlace(angle, null, null, null)), Part);

    private static readonly Form<ParsedOpeningPlace> Polar = new("a place in polar coordinates", keys =>
    {
        FormKey<Point2> polar = keys.Required("polar", PlacementKeys.PolarKind, "Position [radius, angle] from the board's centre.");
        return values => new ParsedOpeningPlace(null, null, values.Get(polar).Value, null);
    });

    private static readonly Kind<ParsedOpeningPlace> InPlan = new ChoiceKind<ParsedOpeningPlace>(
        new MappedKind<Point2, ParsedOpeningPlace>(BoardKinds.Point, at => new ParsedOpeningPlace(null, at, null, null)), Polar, Part);

    /// <summary>The mapping.</summary>
    public static Form<ParsedOpening> Form { get; } = new("an opening", keys =>
    {
        FormKey<string> name = keys.Required("name", new TextKind("a name", 24), "What it is called in messages and on drawings.");
        FormKey<ParsedOpeningPlace> wall = keys.Optional("wall", InWall,
            "Through the tub's wall: the board angle, or the designator of the part that it is for, which takes the nearest wall.");
        FormKey<ParsedOpeningPlace> floor = keys.Optional("floor", InPlan,
            "Through the floor: [x, y] in the ECAD's coordinates, {polar: [radius, angle]}, or the designator of the part over it.");
        FormKey<ParsedOpeningPlace> front = keys.Optional("front", InPlan,
            "Through the cover's front, bezel or lit window: a place as for the floor, or the designator of the part under it.");
        keys.ExactlyOneOf(wall, floor, front);
        FormKey<double> height = keys.Optional("height", BoardKinds.Length("a height over the outer floor", 0, 150),
            "Height of its middle in the wall over the outer floor.", "the part's middle, or half-way between floor and board");
        FormKey<double> overBoard = keys.Optional("over-board", BoardKinds.Length("a height over the board", -100, 100),
            "Height of its middle in the wall over the board's LED side, negative behind it.");
        keys.Needs(height, wall);
        keys.Needs(overBoard, wall);
        keys.AtMostOneOf(height, overBoard);
        FormKey<double> diameter = keys.Optional("diameter", BoardKinds.Length("a diameter", 0.8, 120), "A round hole: its diameter.");
        FormKey<ImmutableArray<double>> slot = keys.Optional("slot", new TupleKind("a slot's size [along, across]", 2, Size, Size),
            "A slot with round ends: [along, across] in the wall, [along x, along y] elsewhere.");
        FormKey<ImmutableArray<double>> rectangle = keys.Optional("rectangle",
            new TupleKind("a rectangle's size [along, across]", 2, Size, Size), "A rectangle: [along, across], as for a slot.");
        keys.ExactlyOneOf(diameter, slot, rectangle);
        FormKey<double> corner = keys.Optional("corner", BoardKinds.Length("a corner radius", 0, 60), "Radius of a rectangle's corners.",
            "0.5, at most half of its smaller size");
        keys.Needs(corner, rectangle);
        FormKey<Angle> turn = keys.Optional("turn", BoardKinds.Angle,
            "Turn of a slot or rectangle, counter-clockwise: seen from outside in the wall, from the LED side elsewhere.", "0");
        return values => new ParsedOpening(
            values.Get(name), values.Get(wall), values.Get(floor), values.Get(front), values.Get(height), values.Get(overBoard),
            values.Get(diameter), values.Get(slot), values.Get(rectangle), values.Get(corner), values.Get(turn), values.Node);
    });
}
