namespace ShellForge.Sweep.Rows;

/// <summary>What came of a variant.</summary>
public static class VariantOutcome
{
    /// <summary>There is a housing; its verdict says whether to print it.</summary>
    public const string Made = "made";

    /// <summary>The board file with these values can't be used.</summary>
    public const string Refused = "refused";

    /// <summary>A defect of the program.</summary>
    public const string Failed = "failed";
}

/// <summary>A variant as the index tells it. Lengths in mm.</summary>
public sealed record VariantRow
{
    /// <summary>Hash over everything that decided it.</summary>
    public required string Key { get; init; }

    /// <summary>Name of its folder.</summary>
    public required string Folder { get; init; }

    /// <summary>The code in names and parts.</summary>
    public required string Code { get; init; }

    /// <summary>Bare name of the board file.</summary>
    public required string Board { get; init; }

    /// <summary>The case that it is; null for a combination.</summary>
    public string? Case { get; init; }

    /// <summary>What tells it from the others, value by path.</summary>
    public required IReadOnlyList<NamedText> Values { get; init; }

    /// <summary>One of <see cref="VariantOutcome"/>.</summary>
    public required string Outcome { get; init; }

    /// <summary>Why there is no housing: one line each.</summary>
    public IReadOnlyList<string> Faults { get; init; } = [];

    /// <summary>What was made; null where nothing was.</summary>
    public HousingFigures? Housing { get; init; }
}

/// <summary>A text by name.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Text">The text.</param>
public sealed record NamedText(string Name, string Text);

/// <summary>A count by name.</summary>
/// <param name="Item">What is counted.</param>
/// <param name="Count">How many.</param>
public sealed record NamedCount(string Item, int Count);

/// <summary>A written part.</summary>
public sealed record PartFigures
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Its filament.</summary>
    public required string Filament { get; init; }

    /// <summary>The part that it is printed together with; null for a job of its own.</summary>
    public string? PrintedWith { get; init; }

    /// <summary>Grams of plastic.</summary>
    public required double Grams { get; init; }

    /// <summary>Colour of the filament on screens, <c>#rrggbb</c>.</summary>
    public required string Colour { get; init; }

    /// <summary>Least corner in print orientation, mm: x, y, z. Parts that are printed together lie in one frame.</summary>
    public required IReadOnlyList<double> At { get; init; }

    /// <summary>Extent in print orientation, mm: x, y, z.</summary>
    public required IReadOnlyList<double> Size { get; init; }

    /// <summary>Hash of its triangles: equal parts have equal ones.</summary>
    public required string Shape { get; init; }
}

/// <summary>A finding.</summary>
public sealed record FindingFigures
{
    /// <summary>Name of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>stop, warn or note.</summary>
    public required string Severity { get; init; }

    /// <summary>What it is about.</summary>
    public required string Subject { get; init; }

    /// <summary>What is the matter.</summary>
    public required string Message { get; init; }
}

/// <summary>A housing in figures.</summary>
public sealed record HousingFigures
{
    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>print, mind-warnings or do-not-print.</summary>
    public required string Verdict { get; init; }

    /// <summary>Extent of the closed housing, mm: x, y, z.</summary>
    public required IReadOnlyList<double> Size { get; init; }

    /// <summary>Grams of plastic.</summary>
    public required double Grams { get; init; }

    /// <summary>Minutes on the printer.</summary>
    public required double Minutes { get; init; }

    /// <summary>Price of the filament; null where the plan names no price for one of them.</summary>
    public double? Cost { get; init; }

    /// <summary>Findings of severity stop.</summary>
    public required int Stops { get; init; }

    /// <summary>Findings of severity warn.</summary>
    public required int Warnings { get; init; }

    /// <summary>Least distance between something on the board and a part, mm; null where nothing is near.</summary>
    public double? Clearance { get; init; }

    /// <summary>Dimmest over mean light along the LEDs, 0 to 1; null where nothing is lit.</summary>
    public double? Evenness { get; init; }

    /// <summary>Warmest plastic as planned, degrees Celsius.</summary>
    public required double WarmestPlastic { get; init; }

    /// <summary>How far that is below the plastic's limit, kelvin.</summary>
    public required double HeatMargin { get; init; }

    /// <summary>Screws of all kinds.</summary>
    public required int Screws { get; init; }

    /// <summary>Its printer.</summary>
    public required string Printer { get; init; }

    /// <summary>The printer's bed, mm: x, y.</summary>
    public required IReadOnlyList<double> Bed { get; init; }

    /// <summary>Rim of the bed that is kept free, mm.</summary>
    public required double BedMargin { get; init; }

    /// <summary>The parts.</summary>
    public required IReadOnlyList<PartFigures> Parts { get; init; }

    /// <summary>The findings, worst first.</summary>
    public required IReadOnlyList<FindingFigures> Findings { get; init; }

    /// <summary>What to have at hand.</summary>
    public required IReadOnlyList<NamedCount> Shopping { get; init; }

    /// <summary>The value of every decision, by path; reasons stand in the variant's report.</summary>
    public required IReadOnlyList<NamedText> Resolved { get; init; }
}
