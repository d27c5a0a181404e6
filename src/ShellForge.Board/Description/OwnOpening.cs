using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Description;

/// <summary>The side of a housing that an opening goes through.</summary>
public enum OpenedSide
{
    /// <summary>The tub's wall.</summary>
    Wall,

    /// <summary>The tub's floor.</summary>
    Floor,

    /// <summary>The cover's front: bezel, or diffuser in the lit window.</summary>
    Front,
}

/// <summary>An opening that the maker wants for a purpose of their own: a sensor, a microphone, a lever, air.</summary>
public sealed record OwnOpening
{
    /// <summary>What it is called in messages and on drawings.</summary>
    public required string Name { get; init; }

    /// <summary>The side that it goes through.</summary>
    public required OpenedSide In { get; init; }

    /// <summary>Board angle at which it goes through the wall; null: through the wall nearest to its part.</summary>
    public Angle? Angle { get; init; }

    /// <summary>Its middle in plan; for one in the wall the part that it looks to. Null where an angle is said.</summary>
    public Point2? At { get; init; }

    /// <summary>Designator of the part or LED that it is for; null where it stands by itself.</summary>
    public string? PartRef { get; init; }

    /// <summary>z of its middle over the outer floor, mm, for one in the wall; null: not said.</summary>
    public double? Height { get; init; }

    /// <summary>Height of its middle over the board's front face, mm, negative below, for one in the wall; null: not said.</summary>
    public double? OverBoard { get; init; }

    /// <summary>Its outline as it shall come out.</summary>
    public required OpeningShape Shape { get; init; }

    /// <summary>Turn of its outline, counter-clockwise: seen from outside in a wall, from the LED side elsewhere.</summary>
    public Angle Turn { get; init; }

    /// <summary>Dotted path of the entry in the file.</summary>
    public string Path { get; init; } = "";
}

/// <summary>The outline of an opening: a rectangle whose corners are arcs, up to a circle.</summary>
/// <param name="Along">Along the wall, or along the board's x, mm.</param>
/// <param name="Across">Up the wall, or along the board's y, mm.</param>
/// <param name="Corner">Radius of the corners, mm, from 0 to half of the smaller size.</param>
public sealed record OpeningShape(double Along, double Across, double Corner)
{
    /// <summary>Whether it is a circle.</summary>
    public bool IsRound => Along == Across && 2 * Corner == Along;

    /// <summary>A circle.</summary>
    public static OpeningShape Round(double diameter) => new(diameter, diameter, diameter / 2);

    /// <summary>A slot with round ends, its longer size either way.</summary>
    public static OpeningShape Slot(double along, double across) => new(along, across, Math.Min(along, across) / 2);

    /// <summary>All its sizes larger by a length, mm.</summary>
    public OpeningShape Grown(double by) => new(
        Along + by, Across + by, Corner == 0 ? 0 : Math.Min(Corner + (by / 2), Math.Min(Along + by, Across + by) / 2));
}
