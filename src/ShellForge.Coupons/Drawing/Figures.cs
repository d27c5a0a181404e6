using System.Globalization;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Marks;

namespace ShellForge.Coupons.Drawing;

/// <summary>Raised figures beside steps.</summary>
internal static class Figures
{
    // Height over the face they stand on, mm: three layers are read with a fingertip. Source: trade practice, 0.4 to 0.8.
    private const double Raised = 0.6;

    // How deep they start inside that face, mm, so that both fuse.
    private const double Root = 0.2;

    /// <summary>Height of figures, mm: as small as their printer draws them open.</summary>
    public static double Height(PrintBasis basis) => PrintedLettering.LeastHeight(basis);

    /// <summary>Room that a text takes in plan, mm.</summary>
    public static (double Width, double Height) Room(string text, PrintBasis basis) =>
        (PrintedLettering.Size(text, Height(basis), basis).Width, Height(basis));

    /// <summary>The mark for a gap below a millimetre: ".05".</summary>
    public static string Gap(double gap) => gap.ToString(".00", CultureInfo.InvariantCulture);

    /// <summary>The mark for a size that steps by hundredths: "4.00".</summary>
    public static string Hundredths(double size) => size.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>The mark for a size: "6.5", "8".</summary>
    public static string Size(double size) => size.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A text standing on a face.</summary>
    /// <param name="text">What it says.</param>
    /// <param name="middle">Middle of its capitals in plan.</param>
    /// <param name="onZ">The face, mm.</param>
    /// <param name="basis">The printer's lines and layers.</param>
    public static CouponMark On(string text, Point2 middle, double onZ, PrintBasis basis)
    {
        // The font's own middle lies between descender and capitals; figures have no descender.
        double height = Height(basis);
        double drop = (PrintedLettering.Size(text, height, basis).Tall - height) / 2;
        return new CouponMark(text, PrintedLettering.Of(text, height, basis).Moved(middle - new Point2(0, drop)), onZ,
            onZ + basis.UpDistance(Raised));
    }

    /// <summary>The solid of a text.</summary>
    public static Solid Solid(CouponMark mark) => Shapes.Extrude(mark.Strokes, mark.FromZ - Root, mark.ToZ);
}
