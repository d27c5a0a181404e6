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

    /// <summary>Whether other coupons for other inserts lie beside it, so that its name says which it is for.</summary>
    public bool AmongOthers { get; init; }

    /// <summary>The connector that the plug at hand goes into; null where none was named.</summary>
    public PackageProfile? Plug { get; init; }

    /// <summary>The value that the steps lie around; null: the profile's own.</summary>
    public double? Around { get; init; }

    /// <summary>A filament as it is printed on a printer, with what was measured of both.</summary>
    public static FilamentProfile Measured(ProfileLibrary library, PrinterProfile printer, FilamentProfile filament) =>
        library.PairingOf(printer.Name, filament.Name)?.Of(filament) ?? filament;

    /// <summary>What a coupon of a kind is called in files.</summary>
    public string NameOf(CouponKind kind) => AmongOthers && kind.NeedsInsert ? $"{kind.Name}-{Insert!.Name}" : kind.Name;

    /// <summary>Lines and layers of the printer.</summary>
    public PrintBasis Basis => PrintBasis.Of(Printer);
}
