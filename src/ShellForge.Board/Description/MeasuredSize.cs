namespace ShellForge.Board.Description;

/// <summary>A size that was measured on the batch at hand and stands in place of the nominal one.</summary>
/// <param name="Path">Dotted path of its key in the file, such as <c>board.measured.outer</c>.</param>
/// <param name="What">What it is, for people: "the board's outer diameter".</param>
/// <param name="Value">As measured, mm.</param>
/// <param name="Nominal">What file or profile say otherwise, mm; null where they say nothing.</param>
/// <param name="How">When and on which batch: "measured 2026-11-29, batch May".</param>
public sealed record MeasuredSize(string Path, string What, double Value, double? Nominal, string How);

/// <summary>A disc magnet.</summary>
/// <param name="Diameter">Diameter, mm.</param>
/// <param name="Height">Height, mm.</param>
public sealed record MagnetSize(double Diameter, double Height)
{
    /// <summary>The one that the mount takes: 8 x 3, of those that every seller has.</summary>
    public static MagnetSize Nominal { get; } = new(8, 3);
}
