using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>Places in columns and rows, as said.</summary>
internal sealed record ParsedGrid(
    Parsed<int> Columns,
    Parsed<int> Rows,
    Parsed<Point2> Pitch,
    Parsed<Point2> At,
    Parsed<Angle> Turn,
    Parsed<GridCorner> First,
    Parsed<bool> ByColumns,
    Parsed<bool> Snake,
    Parsed<ImmutableArray<int>> Skip);

/// <summary>The value of `grid:`.</summary>
internal static class GridForm
{
    private static readonly Kind<double> OnePitch = BoardKinds.Length("a pitch", 0.5, 200);

    private static readonly Kind<Point2> Pitch = new ChoiceKind<Point2>(
        new MappedKind<double, Point2>(OnePitch, both => new Point2(both, both)),
        new MappedKind<ImmutableArray<double>, Point2>(
            new TupleKind("pitches [of columns, of rows]", 2, OnePitch, OnePitch), pair => new Point2(pair[0], pair[1])));

    /// <summary>The mapping.</summary>
    public static Form<ParsedGrid> Form { get; } = new("a grid", keys =>
    {
        FormKey<int> columns = keys.Required("columns", new CountKind("a number of columns", 1, 100), "Places from left to right.");
        FormKey<int> rows = keys.Required("rows", new CountKind("a number of rows", 1, 100), "Places from top to bottom.");
        FormKey<Point2> pitch = keys.Required("pitch", Pitch, "From one place to the next: for both, or [between columns, between rows].");
        FormKey<Point2> at = keys.Optional("at", BoardKinds.Point, "Its middle, in the ECAD's coordinates.", "the board's centre");
        FormKey<Angle> turn = keys.Defaulted("turn", BoardKinds.Angle, "Turn of the whole grid about its middle.", "0");
        FormKey<GridCorner> first = keys.Defaulted(
            "first",
            new WordKind<GridCorner>([.. GridCorner.All.Select(corner => (corner.Word, corner))]),
            "The corner that is counted first.", GridCorner.All[0].Word);
        FormKey<bool> byColumns = keys.Defaulted(
            "along", new WordKind<bool>(("rows", false), ("columns", true)), "What is counted through first.", "rows");
        FormKey<bool> snake = keys.Defaulted(
            "snake", BoardKinds.Flag, "Whether every second line is counted backwards, as data runs through most panels.", "false");
        FormKey<ImmutableArray<int>> skip = keys.Optional("skip", BoardKinds.Places, "Places that stay empty, counted from 1.");
        return values => new ParsedGrid(
            values.Get(columns),
            values.Get(rows),
            values.Get(pitch),
            values.Get(at),
            values.Get(turn),
            values.Get(first),
            values.Get(byColumns),
            values.Get(snake),
            values.Get(skip));
    });
}
