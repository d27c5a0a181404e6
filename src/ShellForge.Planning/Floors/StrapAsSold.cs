using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Floors;

/// <summary>A strap that holds something on the floor, as sold, mm, and the slot that it goes through.</summary>
/// <param name="Width">Width.</param>
/// <param name="Thickness">Of one layer.</param>
/// <param name="Closed">What it takes over the thing that it holds: two layers, or a tie with its head.</param>
/// <param name="Beside">What stands beside it where it goes down.</param>
internal sealed record StrapAsSold(double Width, double Thickness, double Closed, double Beside)
{
    /// <summary>Lowest wall over a slot, mm: it bridges it and takes the strap's pull.</summary>
    public const double LeastLintel = 2.0;

    private const double Play = 1.0;

    // What a bridge of a strap's width sags, and the strap's play under it, mm. Typical.
    private const double UnderLintel = 0.4;

    // A bridge stays so much shorter than the longest that comes out clean, mm.
    private const double UnderBridge = 0.5;

    /// <summary>Hook and loop, 10 wide. Typical.</summary>
    public static StrapAsSold HookAndLoop { get; } = new(10, 1.6, 3.2, 3);

    /// <summary>A cable tie, 4.8 wide. Typical.</summary>
    public static StrapAsSold Tie { get; } = new(4.8, 1.3, 2.0, 4);

    /// <summary>Width of its slot, mm.</summary>
    public double Slot => Width + Play;

    /// <summary>Height of its slot's upright sides, mm: whole layers.</summary>
    public double SlotHeight(PrintBasis basis) => basis.UpDistance(Thickness + UnderLintel);

    /// <summary>
    /// Width of the slot's level roof, and how far it lies over the sides, mm: where a bridge of the whole slot would sag, slants shorten
    /// it.
    /// </summary>
    public (double Roof, double Rise) Roof(Given given)
    {
        double roof = Math.Min(Slot, given.File.Print.Printer.BridgeNote - UnderBridge);
        Angle lean = RoofSlant.For(given.File.Print.Printer.OverhangDegrees).Lean;
        return (roof, given.Basis.UpDistance((Slot - roof) / 2 * lean.Cos / lean.Sin));
    }
}
