
namespace ShellForge.Import.Files;

/// <summary>
/// What an import reads at most. A board with a thousand parts needs a hundredth of this; what asks for more is no hand-over
/// file of one board, and refusing keeps any input within two seconds and 300 MB.
/// </summary>
public static class EcadLimits
{
    /// <summary>Largest single file in bytes.</summary>
    public const int FileBytes = 12 * 1024 * 1024;

    /// <summary>Largest sum of all files in bytes.</summary>
    public const int AllBytes = 24 * 1024 * 1024;

    /// <summary>Most files of one import; a fabrication folder holds about 30.</summary>
    public const int Files = 200;

    /// <summary>Longest line or command in characters.</summary>
    public const int LineCharacters = 20_000;

    /// <summary>Most lines of one file.</summary>
    public const int Lines = 1_500_000;

    /// <summary>Most sections of an IDF file, and entities of a DXF drawing, blocks written out.</summary>
    public const int Sections = 150_000;

    /// <summary>Most strokes of one drawing.</summary>
    public const int Strokes = 100_000;

    /// <summary>Most holes of one board.</summary>
    public const int Holes = 200_000;

    /// <summary>Most parts of one board.</summary>
    public const int Parts = 50_000;

    /// <summary>Most closed loops of one drawing.</summary>
    public const int Loops = 20_000;

    /// <summary>Deepest nesting of blocks and of groups in any file.</summary>
    public const int Depth = 16;

    /// <summary>Most diagnostics kept per file; the rest is counted.</summary>
    public const int DiagnosticsPerFile = 40;
}
