using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A second board as said.</summary>
internal sealed record ParsedSecondBoard(
    Parsed<ImmutableArray<double>> Size,
    Parsed<double> Round,
    Parsed<double> Thickness,
    Parsed<double> Above,
    Parsed<double> Below,
    Parsed<ParsedOwnHoles> Holes,
    Parsed<SecondBoardHold> Hold,
    Parsed<Point2> At,
    Parsed<Angle> Turn,
    Parsed<double> Watts,
    Parsed<double> Grams,
    Parsed<bool> Mains,
    Parsed<double> Spacers);

/// <summary>The screw holes of a second board.</summary>
internal sealed record ParsedOwnHoles(Parsed<ImmutableArray<Point2>> At, Parsed<double> Diameter);

/// <summary>The value at `second-board:`.</summary>
internal static class SecondBoardEntry
{
    private const int MostHoles = 8;

    private static readonly Kind<double> Side = BoardKinds.Length("a board's side", 8, 200);

    private static readonly Kind<Point2> OwnPoint = new MappedKind<ImmutableArray<double>, Point2>(
        new TupleKind("a position [x, y] from its own middle", 2, BoardKinds.Length("a coordinate", -100, 100),
            BoardKinds.Length("a coordinate", -100, 100)), xy => new Point2(xy[0], xy[1]));

    private static readonly Form<ParsedOwnHoles> Holes = new("its screw holes", keys =>
    {
        FormKey<ImmutableArray<Point2>> at = keys.Required(
            "at", new ListKind<Point2>("a list of positions", OwnPoint, 1, MostHoles),
            "Their places [x, y] from its own middle, along and across.");
        FormKey<double> diameter = keys.Required("diameter", BoardKinds.Length("a hole's diameter", 1, 8), "Finished diameter.");
        return values => new ParsedOwnHoles(values.Get(at), values.Get(diameter));
    });

    /// <summary>The mapping.</summary>
    public static Form<ParsedSecondBoard> Form { get; } = new("a second board", keys =>
    {
        FormKey<ImmutableArray<double>> size = keys.Optional(
            "size", new TupleKind("a size [along, across]", 2, Side, Side), "A rectangle by its sides: [along, across].");
        FormKey<double> round = keys.Optional("round", BoardKinds.Length("a diameter", 8, 200), "A disc by its diameter.");
        FormKey<double> thickness = keys.Defaulted("thickness", BoardKinds.Thickness, "Thickness of its laminate.", "1.6");
        FormKey<double> above = keys.Required("above", BoardKinds.Length("a height", 0, 60),
            "Highest thing on the side that looks to the LED board, wires' sockets with their plugs; 0 for none.");
        FormKey<double> below = keys.Defaulted("below", BoardKinds.Length("a height", 0, 60),
            "Highest thing on its other side, cut joints among them. Four places at its rim stay free for its seats.", "2");
        FormKey<ParsedOwnHoles> holes = keys.Optional("holes", Holes, "Its own screw holes, for a board on the floor.", "none");
        FormKey<SecondBoardHold> hold = keys.Defaulted(
            "hold",
            new WordKind<SecondBoardHold>(("auto", SecondBoardHold.Auto), ("screws", SecondBoardHold.Screws),
                ("clips", SecondBoardHold.Clips), ("strap", SecondBoardHold.Strap)),
            "How it is held on the floor: screws (posts with the housing's inserts under its holes), clips (posts that it snaps under), "
                + "strap (seats at its rim and a strap over it), or auto (the first of them that works).", "auto");
        FormKey<Point2> at = keys.Optional("at", BoardKinds.Point, "Its middle [x, y] in the ECAD's coordinates.",
            "where it costs least depth; on spacers, the middle of their holes");
        FormKey<Angle> turn = keys.Optional("turn", BoardKinds.Angle, "Board angle that its first side lies along.",
            "where it costs least depth; on spacers, 0");
        FormKey<double> watts = keys.Defaulted("watts", new NumberKind("a heat in watts", 0, 50),
            "Heat that it gives off in use; it is added to the housing's heat and to what the supply gives.", "0");
        FormKey<double> grams = keys.Optional("grams", new NumberKind("a mass in grams", 0.2, 1000), "Its mass with all on it.",
            "by its size");
        FormKey<bool> mains = keys.Defaulted("mains", BoardKinds.Flag,
            "Whether mains reaches it. No printed housing is made for that, and the checks stop it.", "false");
        FormKey<double> spacers = keys.Optional("spacers", BoardKinds.Length("a spacer's length", 3, 50),
            "Length of the threaded spacers that it hangs from the LED board by, at the holes that say 'for: spacer'.",
            "it lies on the tub's floor");
        keys.ExactlyOneOf(size, round);
        keys.AtMostOneOf(spacers, holes);
        return values => new ParsedSecondBoard(
            values.Get(size), values.Get(round), values.Get(thickness), values.Get(above), values.Get(below), values.Get(holes),
            values.Get(hold), values.Get(at), values.Get(turn), values.Get(watts), values.Get(grams), values.Get(mains),
            values.Get(spacers));
    });
}
