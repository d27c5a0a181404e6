using System.Globalization;
using ShellForge.Formats.Rendering;
using ShellForge.Output.Page;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Assembly;

/// <summary>Colours of pictures on white paper.</summary>
internal static class PictureColours
{
    // Black plastic drawn black hides its own edges, white plastic on white paper its outline: both move a step towards grey.
    private const double BlackLift = 0.3;
    private const double WhiteSink = 0.06;

    /// <summary>A body as pictures on paper show it.</summary>
    public static PicturedPart Part(PageBody body) =>
        new(body.Mesh, body.BelongsTo == PartNames.Board ? Of(body.Colour) : OfPlastic(body.Colour));

    /// <summary>The colour of a small thing.</summary>
    public static Rgb Of(HandMaterial material) => material switch
    {
        HandMaterial.Steel => new Rgb(150, 156, 164),
        HandMaterial.Brass => new Rgb(196, 158, 62),
        HandMaterial.Magnet => new Rgb(98, 104, 118),
        HandMaterial.Plastic => new Rgb(226, 222, 210),
        HandMaterial.Laminate => Of("#1f5d3a"),
        HandMaterial.Battery => new Rgb(70, 128, 170),
        _ => throw new ArgumentOutOfRangeException(nameof(material), material, "a material without a colour"),
    };

    /// <summary>A colour given as <c>#rrggbb</c>.</summary>
    public static Rgb Of(string colour)
    {
        int value = int.Parse(colour.AsSpan(1), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return new Rgb((byte)(value >> 16), (byte)(value >> 8), (byte)value);
    }

    /// <summary>The colour of a filament so that creases and shade show on it.</summary>
    public static Rgb OfPlastic(string colour)
    {
        Rgb own = Of(colour);
        double brightness = ((0.2126 * own.R) + (0.7152 * own.G) + (0.0722 * own.B)) / 255;
        return brightness < 0.25
            ? own.Towards(new Rgb(168, 176, 186), BlackLift + (0.25 - brightness))
            : own.Towards(new Rgb(96, 96, 88), brightness > 0.8 ? WhiteSink : 0);
    }
}
