using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Draft;

/// <summary>The lit window of a round field of LEDs as two radii about the axis, mm.</summary>
/// <param name="Inner">Inner radius; 0 when the middle is lit too.</param>
/// <param name="Outer">Outer radius.</param>
/// <param name="Clipped">What kept it from being as wide as wanted; null when nothing did.</param>
internal sealed record LitBand(double Inner, double Outer, string? Clipped)
{
    // An island in the window smaller than this across is left out, mm: it could not be printed cleanly.
    internal const double SmallestIslandRadius = 3;

    // A window narrower than this is none, mm.
    private const double SmallestWidth = 1.5;

    // What an LED's own light window must be cleared by, mm.
    private const double LedMargin = 0.5;

    /// <summary>Smallest radius of a window about the middle that is worth one, mm.</summary>
    public const double LeastRadius = 2;

    /// <summary>Whether there is room for a window at all: outlines may pass the middle closely, or leave it outside.</summary>
    public bool HasRoom => Outer >= LeastRadius && Outer - Inner >= SmallestWidth;

    /// <summary>Width, mm.</summary>
    public double Width => Outer - Inner;

    /// <summary>Least width of a window that cuts off no LED's own light, mm; 0 without LEDs.</summary>
    public static double LeastWidth(CircuitBoard board) =>
        Circles(board).Select(circle => circle.Led.WindowWidth + (2 * LedMargin)).DefaultIfEmpty(0).Max();

    /// <summary>The circles that shine to the front.</summary>
    public static IEnumerable<PixelCircle> Circles(CircuitBoard board) =>
        board.PixelCircles.Where(circle => !circle.Pixels.IsEmpty);

    /// <summary>Distance from an LED to its neighbour on the circle; for a single LED half again its body.</summary>
    public static double PitchOf(PixelCircle circle) =>
        circle.Count > 1 && circle.Diameter > circle.Led.Length ? circle.Pitch : 1.5 * circle.Led.Length;

    /// <summary>Directions halfway between LEDs of the outermost circle, spread as evenly as they allow; at most so many.</summary>
    public static IEnumerable<Angle> BetweenLeds(BoardFile file, int count)
    {
        double[] at = [.. Circles(file.Board).OrderBy(circle => circle.Diameter).LastOrDefault()?.Pixels
            .Select(pixel => Angle.Of(pixel.At).Normalized.Degrees).Order() ?? Enumerable.Empty<double>()];
        double[] between = [.. at.Select((degrees, i) => (degrees + (i + 1 < at.Length ? at[i + 1] : at[0] + 360)) / 2)];
        return Enumerable.Range(0, count)
            .Select(i => file.Up + Angle.FromDegrees((i + 0.5) * 360 / count))
            .Select(wanted => between.Length < 2 ? wanted
                : between.Select(Angle.FromDegrees).MinBy(near => Angle.Between(near, wanted).Degrees))
            .DistinctBy(direction => Math.Round(direction.Normalized.Degrees, 3));
    }

    /// <summary>The band for a board.</summary>
    /// <param name="board">The board with its LEDs.</param>
    /// <param name="width">Width asked for about each pitch circle, mm; null: one pitch, beyond which light falls off.</param>
    /// <param name="least">Smallest radius the cover allows, mm; 0 without a bore.</param>
    /// <param name="most">Largest radius the cover allows, mm.</param>
    /// <param name="islandHeld">Whether a piece of bezel inside the window would be held by anything.</param>
    public static LitBand Of(CircuitBoard board, double? width, double least, double most, bool islandHeld)
    {
        double inner = double.PositiveInfinity;
        double outer = 0;
        foreach (PixelCircle circle in Circles(board))
        {
            LedProfile led = circle.Led;
            double half = Math.Max(width ?? PitchOf(circle), led.WindowWidth + (2 * LedMargin)) / 2;
            inner = Math.Min(inner, (circle.Diameter / 2) - half);
            outer = Math.Max(outer, (circle.Diameter / 2) + half);
        }

        if (outer == 0)
        {
            return new LitBand(least, most, "the board has no LEDs: the window is all that walls leave");
        }

        string? clipped = null;
        if (outer > most)
        {
            outer = most;
            clipped = "the cover's outer wall and the baffle's rim";
        }

        if (inner < least)
        {
            inner = least;
            clipped = clipped is null ? "the cover's bore wall and the baffle's rim" : "the cover's walls and the baffle's rims";
        }

        if (least == 0 && (inner < SmallestIslandRadius || !islandHeld))
        {
            inner = 0;
        }

        return outer - inner < SmallestWidth
            ? new LitBand(least, most, "hardly any room between the walls: the window is all that they leave")
            : new LitBand(inner, outer, clipped);
    }
}
