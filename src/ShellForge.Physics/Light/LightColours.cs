namespace ShellForge.Physics.Light;

/// <summary>Numbers of light as colours of a screen, 0 to 255 for red, green and blue.</summary>
public static class LightColours
{
    // Stops of the false colours: dark blue, violet, red, orange, pale yellow, lightness rising all the way.
    private static readonly (double R, double G, double B)[] Stops =
        [(8, 8, 40), (60, 20, 120), (150, 40, 110), (220, 80, 50), (250, 170, 40), (255, 250, 190)];

    /// <summary>False colour of a share of the brightest, 0 to 1.</summary>
    public static (byte R, byte G, byte B) False(double share)
    {
        double place = Math.Clamp(double.IsFinite(share) ? share : 0, 0, 1) * (Stops.Length - 1);
        int below = Math.Min((int)place, Stops.Length - 2);
        double part = place - below;
        (double r, double g, double b) = Stops[below];
        (double r2, double g2, double b2) = Stops[below + 1];
        return (Byte(r + (part * (r2 - r))), Byte(g + (part * (g2 - g))), Byte(b + (part * (b2 - b))));
    }

    /// <summary>
    /// A light of linear red, green and blue, 1 being white, as a screen has to show it for the eye to see the same ratios.
    /// Source: sRGB, IEC 61966-2-1.
    /// </summary>
    public static (byte R, byte G, byte B) Seen(double red, double green, double blue) => (Encoded(red), Encoded(green), Encoded(blue));

    private static byte Encoded(double linear)
    {
        double x = Math.Clamp(double.IsFinite(linear) ? linear : 0, 0, 1);
        return Byte(255 * (x <= 0.0031308 ? 12.92 * x : (1.055 * Math.Pow(x, 1 / 2.4)) - 0.055));
    }

    private static byte Byte(double value) => (byte)Math.Clamp(Math.Floor(value + 0.5), 0, 255);
}
