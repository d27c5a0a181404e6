using System.Collections.Immutable;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>Where something is: at a point, in polar coordinates, or several times on a pitch circle or in a grid.</summary>
internal sealed record ParsedPlacement(
    Parsed<Point2> At,
    Parsed<Point2> Polar,
    Parsed<double> Circle,
    Parsed<int> Count,
    Parsed<Angle> From,
    Parsed<Angle> Step,
    Parsed<bool> Clockwise,
    Parsed<ImmutableArray<int>> Skip,
    Parsed<ParsedGrid> Grid)
{
    /// <summary>Whether any place was said.</summary>
    public bool Given => At.Given || Polar.Given || Circle.Given || Grid.Given;

    /// <summary>Whether what is placed turns with its place.</summary>
    public bool IsPattern => Circle.Given || Grid.Given;
}

/// <summary>The keys for that, the same for holes, LEDs, parts and wires.</summary>
internal sealed class PlacementKeys
{
    /// <summary>Polar coordinates: [radius, angle].</summary>
    public static Kind<Point2> PolarKind { get; } = new MappedKind<ImmutableArray<double>, Point2>(
        new TupleKind("a position [radius, angle]", 2, new LengthKind("a radius", 0, 300), BoardKinds.Degrees),
        ra => Point2.Polar(ra[0], Angle.FromDegrees(ra[1])));

    private readonly FormKey<Point2> _at;
    private readonly FormKey<Point2> _polar;
    private readonly FormKey<double> _circle;
    private readonly FormKey<int> _count;
    private readonly FormKey<Angle> _from;
    private readonly FormKey<Angle> _step;
    private readonly FormKey<bool> _clockwise;
    private readonly FormKey<ImmutableArray<int>> _skip;
    private readonly FormKey<ParsedGrid> _grid;

    /// <summary>Declares the keys.</summary>
    /// <param name="keys">The form's keys.</param>
    /// <param name="needed">Whether a place must be said.</param>
    public PlacementKeys(FormKeys keys, bool needed)
    {
        _at = keys.Optional("at", BoardKinds.Point, "Position [x, y] in the ECAD's coordinates.");
        _polar = keys.Optional("polar", PolarKind, "Position [radius, angle] from the board's centre.");
        _circle = keys.Optional("circle", new LengthKind("the diameter of a pitch circle", 0.5, BoardKinds.LargestBoard),
            "Diameter of the pitch circle of a pattern.");
        _count = keys.Optional(
            "count", new CountKind("a count", 1, BoardKinds.Most), "Places on the circle, evenly spread, or on an arc of it.");
        _from = keys.Defaulted("from", BoardKinds.Angle, "Angle of the first place on the circle.", "0");
        _step = keys.Optional(
            "step",
            new MappedKind<double, Angle>(new NumberKind("an angle in degrees", 0.1, 180), Angle.FromDegrees),
            "Angle from one place to the next, for an arc.", "360 by the count, all round");
        _clockwise = keys.Defaulted("direction", new WordKind<bool>(("ccw", false), ("cw", true)),
            "Way round the circle, seen from the top.", "ccw");
        _skip = keys.Optional("skip", BoardKinds.Places, "Places on the circle that stay empty, counted from 1.");
        _grid = keys.Optional("grid", GridForm.Form, "Places in columns and rows.");
        if (needed)
        {
            keys.ExactlyOneOf(_at, _polar, _circle, _grid);
        }
        else
        {
            keys.AtMostOneOf(_at, _polar, _circle, _grid);
        }

        keys.Needs(_circle, _count);
        foreach (FormKey key in new FormKey[] { _count, _from, _step, _clockwise, _skip })
        {
            keys.Needs(key, _circle);
        }
    }

    /// <summary>What was said.</summary>
    public ParsedPlacement Said(FormValues values) => new(
        values.Get(_at),
        values.Get(_polar),
        values.Get(_circle),
        values.Get(_count),
        values.Get(_from),
        values.Get(_step),
        values.Get(_clockwise),
        values.Get(_skip),
        values.Get(_grid));
}
