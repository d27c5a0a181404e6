using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Index;

/// <summary>A figure of a housing as a column of the index: one list for table, plots, CSV and wishes.</summary>
/// <param name="Name">Name in files, with its unit.</param>
/// <param name="Title">Title on the page.</param>
/// <param name="Unit">Unit on the page; empty for none.</param>
/// <param name="Format">How the number is written on the page.</param>
/// <param name="Of">The figure; null where the housing has none.</param>
public sealed record IndexColumn(string Name, string Title, string Unit, string Format, Func<HousingFigures, double?> Of)
{
    /// <summary>All columns, in the order in which they are shown.</summary>
    public static ImmutableArray<IndexColumn> All { get; } =
    [
        new("stops", "stops", "", "0", h => h.Stops),
        new("warnings", "warnings", "", "0", h => h.Warnings),
        new("x_mm", "along x", "mm", "0.0", h => h.Size[0]),
        new("y_mm", "along y", "mm", "0.0", h => h.Size[1]),
        new("z_mm", "height", "mm", "0.0", h => h.Size[2]),
        new("grams", "plastic", "g", "0.0", h => h.Grams),
        new("minutes", "printing", "min", "0", h => h.Minutes),
        new("cost", "filament", "price", "0.00", h => h.Cost),
        new("clearance_mm", "tightest gap", "mm", "0.00", h => h.Clearance),
        new("evenness", "evenness", "", "0.00", h => h.Evenness),
        new("warmest_celsius", "warmest plastic", "\u00b0C", "0.0", h => h.WarmestPlastic),
        new("heat_margin_kelvin", "below its limit", "K", "0.0", h => h.HeatMargin),
        new("screws", "screws", "", "0", h => h.Screws),
    ];

    /// <summary>The figure as the page shows it; a dash where there is none.</summary>
    public string Shown(HousingFigures housing) =>
        Of(housing) is { } value ? value.ToString(Format, CultureInfo.InvariantCulture) : "\u2013";
}
