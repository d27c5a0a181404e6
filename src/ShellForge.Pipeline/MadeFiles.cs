using System.Collections.Immutable;
using ShellForge.Output.Defects;
using ShellForge.Output.Files;

namespace ShellForge.Pipeline;

/// <summary>The files of a made housing, as <c>make</c> leaves them in a folder.</summary>
public static class MadeFiles
{
    /// <summary>All of them, those of a defect first.</summary>
    /// <param name="made">What was made.</param>
    /// <param name="drawn">What shows it.</param>
    /// <param name="boardText">The text of its board file.</param>
    public static ImmutableArray<OutputFile> Of(MadeHousing made, DrawnFiles drawn, string boardText) =>
        [.. DefectFiles.Of(made.Housing, boardText), .. HousingFiles.Of(drawn, made.Report)];
}
