using System.Globalization;

namespace ShellForge.Output.Page;

/// <summary>Colours of edges and cut faces, made from a part's own colour so that both stand off from it.</summary>
internal static class PageColours
{
    // Rust, ochre, slate, sage, plum: apart in hue and in brightness.
    private static readonly (int Red, int Green, int Blue)[] CutTones =
        [(0xc2, 0x58, 0x2c), (0xe0, 0xae, 0x4c), (0x4d, 0x7e, 0xa8), (0x8f, 0xb0, 0x84), (0x93, 0x5f, 0x88)];

    /// <summary>Edge lines: dark on light parts, light on dark ones.</summary>
    public static string Edge(string colour) => Mixed(colour, Brightness(colour) < 0.25 ? 0xb8 : 0x20, 0.75);

    /// <summary>
    /// Cut faces: towards a tone of their own, so that a cut reads as a cut on black and on white plastic and two black parts that touch
    /// stay apart.
    /// </summary>
    /// <param name="colour">The body's own colour.</param>
    /// <param name="place">Its place among the bodies: neighbours get unlike tones.</param>
    public static string Cut(string colour, int place)
    {
        (int red, int green, int blue) = Parts(colour);
        (int toRed, int toGreen, int toBlue) = CutTones[place % CutTones.Length];
        return Hex((red + (3 * toRed)) / 4, (green + (3 * toGreen)) / 4, (blue + (3 * toBlue)) / 4);
    }

    private static string Mixed(string colour, int grey, double share)
    {
        (int red, int green, int blue) = Parts(colour);
        return Hex(Mix(red), Mix(green), Mix(blue));

        int Mix(int channel) => (int)Math.Round((channel * (1 - share)) + (grey * share), MidpointRounding.AwayFromZero);
    }

    private static double Brightness(string colour)
    {
        (int red, int green, int blue) = Parts(colour);
        return ((0.2126 * red) + (0.7152 * green) + (0.0722 * blue)) / 255;
    }

    private static (int Red, int Green, int Blue) Parts(string colour)
    {
        int value = int.Parse(colour.AsSpan(1), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return (value >> 16, (value >> 8) & 255, value & 255);
    }

    private static string Hex(int red, int green, int blue) =>
        string.Create(CultureInfo.InvariantCulture, $"#{red:x2}{green:x2}{blue:x2}");
}
