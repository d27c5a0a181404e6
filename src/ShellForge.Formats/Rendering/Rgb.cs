namespace ShellForge.Formats.Rendering;

/// <summary>A colour as a screen shows it: sRGB, 8 bits a channel.</summary>
public readonly record struct Rgb(byte R, byte G, byte B)
{
    /// <summary>White.</summary>
    public static Rgb White => new(255, 255, 255);

    /// <summary>The colour that lies a share of the way, from 0 to 1, towards another.</summary>
    public Rgb Towards(Rgb other, double share) => new(Mix(R, other.R, share), Mix(G, other.G, share), Mix(B, other.B, share));

    /// <summary>The colour under a light of so much of full strength; above 1 it fades to white.</summary>
    public Rgb Lit(double light) => light <= 1 ? new Rgb(0, 0, 0).Towards(this, light) : Towards(White, Math.Min(1, light - 1));

    private static byte Mix(byte from, byte to, double share) =>
        (byte)Math.Clamp(Math.Floor(from + ((to - from) * share) + 0.5), 0, 255);
}
