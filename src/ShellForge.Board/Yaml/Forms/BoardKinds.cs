using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>Kinds that several forms of the board file share.</summary>
internal static class BoardKinds
{
    /// <summary>
    /// Largest board across, mm: with its housing, a plug before it and a stand under it it stays inside the lattice, and no common bed is
    /// larger.
    /// </summary>
    public const double LargestBoard = 360;

    /// <summary>Positions on one circle, corners of an outline, entries of a list: far above any real board.</summary>
    public const int Most = 1000;

    /// <summary>A coordinate as the ECAD gives it, which may count from the corner of its sheet.</summary>
    public static Kind<double> Coordinate { get; } = new LengthKind("a coordinate", -2000, 2000);

    /// <summary>A position: [x, y].</summary>
    public static Kind<Point2> Point { get; } = new MappedKind<ImmutableArray<double>, Point2>(
        new TupleKind("a position [x, y]", 2, Coordinate, Coordinate), xy => new Point2(xy[0], xy[1]));

    /// <summary>Thickness of a board.</summary>
    public static Kind<double> Thickness { get; } = new LengthKind("a board's thickness", 0.2, 6);

    /// <summary>A number of degrees.</summary>
    public static Kind<double> Degrees { get; } = new NumberKind("an angle in degrees", -720, 720);

    /// <summary>An angle, counter-clockwise.</summary>
    public static Kind<Angle> Angle { get; } =
        new MappedKind<double, Angle>(Degrees, Geometry.Numerics.Angle.FromDegrees);

    /// <summary>A side of the board.</summary>
    public static Kind<BoardSide> Side { get; } = new WordKind<BoardSide>(("top", BoardSide.Top), ("bottom", BoardSide.Bottom));

    /// <summary>true or false.</summary>
    public static Kind<bool> Flag { get; } = new FlagKind();

    /// <summary>A name or a designator.</summary>
    public static Kind<string> Name { get; } = new TextKind("a name", 60);

    /// <summary>Places of a pattern that stay empty, counted from 1.</summary>
    public static Kind<ImmutableArray<int>> Places { get; } =
        new ListKind<int>("places to leave out", new CountKind("a place, counted from 1", 1, Most), 1, Most);

    /// <summary>A length.</summary>
    public static Kind<double> Length(string what, double least, double most) => new LengthKind(what, least, most);

    /// <summary>A length, or the word auto, which leaves it to the plan.</summary>
    public static Kind<double?> LengthOrAuto(string what, double least, double most) => LengthOr("auto", what, least, most);

    /// <summary>A length, or a word that stands for none.</summary>
    public static Kind<double?> LengthOr(string word, string what, double least, double most) => new ChoiceKind<double?>(
        new WordKind<double?>((word, null)),
        new MappedKind<double, double?>(new LengthKind(what, least, most), length => length));
}
