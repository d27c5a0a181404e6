using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Description;

/// <summary>A second board in the housing: loose on the tub's floor, or on spacers behind the LED board.</summary>
public sealed record SecondBoardSpec
{
    /// <summary>What leads say that go to it, and what it is called.</summary>
    public const string WireWord = "second-board";

    /// <summary>Along its own x, mm; the diameter where it is round.</summary>
    public required double Length { get; init; }

    /// <summary>Along its own y, mm.</summary>
    public required double Width { get; init; }

    /// <summary>Whether it is a disc.</summary>
    public bool Round { get; init; }

    /// <summary>Thickness of its laminate, mm.</summary>
    public required double Thickness { get; init; }

    /// <summary>Highest thing on the side that looks to the LED board, mm.</summary>
    public required double Above { get; init; }

    /// <summary>Highest thing on its other side, joints included, mm.</summary>
    public required double Below { get; init; }

    /// <summary>Its screw holes, seen from its middle.</summary>
    public ImmutableArray<Point2> Holes { get; init; } = [];

    /// <summary>Diameter of those, mm.</summary>
    public double HoleDiameter { get; init; }

    /// <summary>How it is held on the floor.</summary>
    public SecondBoardHold Hold { get; init; }

    /// <summary>Its middle, mm from the LED board's centre; null: the plan looks for a place.</summary>
    public Point2? At { get; init; }

    /// <summary>Direction of its x as a board angle; null: the plan chooses.</summary>
    public Angle? Turn { get; init; }

    /// <summary>Heat that it gives off in use, W.</summary>
    public double Watts { get; init; }

    /// <summary>Mass with what stands on it, g.</summary>
    public required double Grams { get; init; }

    /// <summary>Whether mains reaches it.</summary>
    public bool Mains { get; init; }

    /// <summary>Length of the spacers that it hangs from the LED board by, mm; null: it lies on the floor.</summary>
    public double? Spacers { get; init; }

    /// <summary>What it is called by its size.</summary>
    public string Size => Round ? string.Create(CultureInfo.InvariantCulture, $"\u00D8{Length:0.##}")
        : string.Create(CultureInfo.InvariantCulture, $"{Length:0.##} x {Width:0.##}");
}

/// <summary>How a loose second board is held.</summary>
public enum SecondBoardHold
{
    /// <summary>The plan decides: by its holes, the filament and the room.</summary>
    Auto,

    /// <summary>Screws into inserts in posts under its holes.</summary>
    Screws,

    /// <summary>Posts with hooks that it snaps under.</summary>
    Clips,

    /// <summary>Seats at its rim and a strap over it.</summary>
    Strap,
}
