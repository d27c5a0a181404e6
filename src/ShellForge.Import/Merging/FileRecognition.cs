using ShellForge.Import.Drill;
using ShellForge.Import.Dxf;
using ShellForge.Import.Files;
using ShellForge.Import.Gerber;
using ShellForge.Import.Idf;
using ShellForge.Import.Placement;

namespace ShellForge.Import.Merging;

/// <summary>What a file is, by its content; the name of a foreign kind where it is known.</summary>
internal sealed record RecognisedFile(EcadFile File, SourceText? Text, FileKind Kind, string Words, bool IsTooLong = false);

/// <summary>Recognises files by content. Names lie: a drill file may end in .TXT, a Gerber in .xln.</summary>
internal static class FileRecognition
{
    private static readonly (byte[] Mark, string Words)[] Marks =
    [
        ([0x50, 0x4B, 0x03, 0x04], "a ZIP archive: unpack it and import the folder"),
        ([0x1F, 0x8B], "a packed archive: unpack it and import the folder"),
        ([0x37, 0x7A, 0xBC, 0xAF], "a packed archive: unpack it and import the folder"),
        ([0x52, 0x61, 0x72, 0x21], "a packed archive: unpack it and import the folder"),
        ([0x25, 0x50, 0x44, 0x46], "a PDF document: it holds no geometry that can be trusted"),
        ([0x89, 0x50, 0x4E, 0x47], "a picture"),
        ([0xFF, 0xD8, 0xFF], "a picture"),
        ([0x47, 0x49, 0x46, 0x38], "a picture"),
        ([0x42, 0x4D], "a picture"),
        ([0xD0, 0xCF, 0x11, 0xE0], "a document of an old office or layout program: export hand-over files from it"),
    ];

    public static RecognisedFile Of(EcadFile file)
    {
        ReadOnlySpan<byte> bytes = file.Bytes.Span;
        if (DxfReader.IsBinary(bytes))
        {
            return new RecognisedFile(file, null, FileKind.DxfBinary, "binary DXF");
        }

        foreach ((byte[] mark, string words) in Marks)
        {
            if (bytes.StartsWith(mark) && !(mark.Length == 2 && IsText(bytes)))
            {
                return new RecognisedFile(file, null, FileKind.Unknown, words);
            }
        }

        if (bytes.IsEmpty)
        {
            return new RecognisedFile(file, null, FileKind.Unknown, "an empty file");
        }

        SourceText text = SourceText.Decode(file);
        if (text.Text.AsSpan(0, Math.Min(text.Text.Length, 4096)).Contains('\0'))
        {
            return new RecognisedFile(file, null, FileKind.Unknown, "a binary file");
        }

        if (text.HasTooManyLines)
        {
            return new RecognisedFile(file, null, FileKind.Unknown,
                $"a text of more than {EcadLimits.Lines} lines: no hand-over file of one board", IsTooLong: true);
        }

        (FileKind kind, string name) = OfText(text);
        return new RecognisedFile(file, text, kind, name);
    }

    private static (FileKind Kind, string Words) OfText(SourceText text)
    {
        ReadOnlySpan<char> start = text.Text.AsSpan().TrimStart();
        if (IdfReader.Header(text) is { } header)
        {
            return header.Kind switch
            {
                "BOARD_FILE" => (FileKind.IdfBoard, "IDF board"),
                "PANEL_FILE" => (FileKind.IdfPanel, "IDF panel"),
                "LIBRARY_FILE" => (FileKind.IdfLibrary, "IDF library"),
                _ => (FileKind.Unknown, $"an IDF file of unknown kind '{header.Kind}'"),
            };
        }

        if (DxfReader.LooksLike(text))
        {
            return (FileKind.Dxf, "DXF");
        }

        if (JobFileReader.LooksLike(text))
        {
            return (FileKind.JobFile, "Gerber job file");
        }

        if (start.StartsWith("ISO-10303-21", StringComparison.Ordinal))
        {
            return (FileKind.Unknown, "a STEP model: export the board edge as DXF or Gerber, or the board as IDF");
        }

        if (start.StartsWith("(") && start.Contains("(layers", StringComparison.Ordinal))
        {
            return (FileKind.Unknown, "a layout program's own board file: export hand-over files from it");
        }

        if (start.StartsWith("<") || start.StartsWith("{") || start.StartsWith("["))
        {
            return (FileKind.Accompanying, "markup or data of another kind");
        }

        return GerberReader.LooksLike(text) ? (FileKind.Gerber, "Gerber")
            : DrillParser.LooksLike(text) ? (FileKind.Drill, "drill")
            : !IsProse(text) && PlacementReader.LooksLike(text) ? (FileKind.Placement, "placement list")
            : (FileKind.Accompanying, "a text");
    }

    // Markdown and other prose has tables too, but no list begins with a heading.
    private static bool IsProse(SourceText text)
    {
        for (int n = 1; n <= Math.Min(text.LineCount, 40); n++)
        {
            ReadOnlySpan<char> line = text.Line(n);
            if (line.StartsWith("```") || line.StartsWith("|--") || line.StartsWith("| --") || line.StartsWith("|:-"))
            {
                return true;
            }
        }

        ReadOnlySpan<char> first = text.Line(1);
        return first.StartsWith("# ") && text.LineCount > 1 && text.Line(2).Trim().IsEmpty && !first.Contains(',')
            && !first.Contains("ref", StringComparison.OrdinalIgnoreCase);
    }

    private static bool IsText(ReadOnlySpan<byte> bytes) => !bytes[..Math.Min(bytes.Length, 4096)].Contains((byte)0);
}
