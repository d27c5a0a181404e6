using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;

namespace ShellForge.Coupons;

/// <summary>What a coupon is drawn for.</summary>
/// <param name="Printer">The printer.</param>
/// <param name="Filament">The filament.</param>
public sealed record CouponWish(PrinterProfile Printer, FilamentProfile Filament)
{
    /// <summary>The insert in the drawer; null where none was named.</summary>
    public InsertProfile? Insert { get; init; }

    /// <summary>The connector that the plug at hand goes into; null where none was named.</summary>
    public PackageProfile? Plug { get; init; }

    /// <summary>The value that the steps lie around; null: the profile's own.</summary>
    public double? Around { get; init; }

    /// <summary>Lines and layers of the printer.</summary>
    public PrintBasis Basis => PrintBasis.Of(Printer);
}
