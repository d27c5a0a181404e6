using ShellForge.Output.Report;

namespace ShellForge.Output.Prints;

/// <summary>The maker's G-code in short, for a terminal.</summary>
public static class SlicedText
{
    /// <summary>Each file with the parts it prints, its time and its plastic beside ours; nothing where none was given.</summary>
    public static IEnumerable<(string File, string Time, string Plastic)> Of(HousingReport report) =>
        from sliced in report.Housing is { } housing ? SlicedDocument.AllOf(housing) ?? [] : []
        select ($"{sliced.File} ({SlicedWords.Parts(sliced)})", SlicedWords.Time(sliced), SlicedWords.Plastic(sliced));
}
