using System.Globalization;

namespace ShellForge.Output.Page;

/// <summary>Colours of edges and cut faces, made from a part's own colour so that both stand off from it.</summary>
internal static class PageColours
{
    /// <summary>Edge lines: dark on light parts, light on dark ones.</summary>
    public static string Edge(string colour) => Mixed(colour, Brightness(colour) < 0.25 ? 0xb8 : 0x20, 0.75);

    /// <summary>Cut faces: towards a warm mid tone, so that a cut reads as a cut on black and on white plastic.</summary>
    public static string Cut(string colour)
    {
        (int red, int green, int blue) = Parts(colour);
        return Hex((red + (2 * 0xc8)) / 3, (green + (2 * 0x6a)) / 3, (blue + (2 * 0x3c)) / 3);
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
