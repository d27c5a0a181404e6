using ShellForge.Board.Description;

namespace ShellForge.Planning.Remembering;

/// <summary>A circle of LEDs that is equal to another when all of it is, for keys.</summary>
/// <param name="Bare">The circle without its LEDs.</param>
/// <param name="Pixels">Its LEDs.</param>
public sealed record CircleContent(PixelCircle Bare, Listed<Pixel> Pixels)
{
    /// <summary>The circle.</summary>
    public PixelCircle Circle => Bare with { Pixels = Pixels.Things };

    /// <summary>A circle by its content.</summary>
    public static CircleContent Of(PixelCircle circle) => new(circle with { Pixels = [] }, new Listed<Pixel>(circle.Pixels));
}
