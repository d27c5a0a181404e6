using System.Collections.Immutable;
using System.Text;

namespace ShellForge.Formats.Gcode;

/// <summary>
/// Reads the G-code of any general-purpose slicer for printers that lay plastic lines. It measures on the moves what can be measured, and
/// takes the rest from comments. Memory stays small, time follows the length of the file.
/// </summary>
public static class GcodeReader
{
    private const int LongestMebibytes = 512;
    private const int LongestShown = 24;
    private const int LinesBetweenStops = 4096;

    /// <summary>Reads a whole file.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>What the file holds, or the first line that is no G-code; never throws on content.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> asked for it.</exception>
    /// <exception cref="IOException">The stream can't be read.</exception>
    public static GcodeReading Read(Stream stream, CancellationToken cancel = default)
    {
        var lines = new GcodeLines(stream);
        var comments = new GcodeComments();
        var moves = new GcodeMoves(comments);
        while (lines.Next(out ReadOnlySpan<byte> line))
        {
            if (lines.Number % LinesBetweenStops == 0)
            {
                cancel.ThrowIfCancellationRequested();
            }

            if (lines.Number == 1 && KindOfOther(line) is { } other)
            {
                return Refused(1, other);
            }

            if (lines.Length > (long)LongestMebibytes << 20)
            {
                return Refused(0, $"the file is longer than {LongestMebibytes} MiB");
            }

            if (Take(line, lines.Number, comments, moves) is { } wrong)
            {
                return Refused(lines.Number, wrong);
            }
        }

        return lines.TooLong ? Refused(lines.Number, "this line is longer than any of G-code")
            : moves.IsEmpty ? Refused(0, lines.Number == 0 ? "the file is empty" : "no line of this file lays plastic")
            : new GcodeReading(moves.File(), null);
    }

    private static GcodeReading Refused(long line, string message) => new(null, new GcodeFault(line, message));

    // Binary G-code begins with these four letters, and a ZIP archive with PK.
    private static string? KindOfOther(ReadOnlySpan<byte> first) =>
        first.StartsWith("GCDE"u8) ? "this is binary G-code; have your slicer write it as text"
        : first.StartsWith("PK\u0003\u0004"u8) ? "this is an archive, such as a 3MF file; have your slicer write plain G-code"
        : null;

    // A line is blank, a comment, or a command with its words: letters with numbers, or a macro's name with what it takes.
    private static string? Take(ReadOnlySpan<byte> line, long number, GcodeComments comments, GcodeMoves moves)
    {
        if (line.Contains((byte)0))
        {
            return "this is no text, and no G-code";
        }

        ReadOnlySpan<byte> rest = (number == 1 && line.StartsWith("\uFEFF"u8) ? line[3..] : line).Trim(" \t"u8);
        if (rest.IsEmpty || rest[0] is (byte)'(' or (byte)'%')
        {
            return null;
        }

        if (rest[0] == (byte)';')
        {
            comments.Take(rest[1..].Trim(" \t"u8));
            return null;
        }

        int comment = rest.IndexOf((byte)';');
        ReadOnlySpan<byte> words = GcodeWords.WithoutNumberAndSum(comment < 0 ? rest : rest[..comment].TrimEnd(" \t"u8));
        return GcodeWords.IsCommand(words) ? moves.Take(words, number) : $"'{Shown(rest)}' is no G-code";
    }

    private static string Shown(ReadOnlySpan<byte> text) =>
        ForeignText.Printable(Encoding.UTF8.GetString(text[..Math.Min(text.Length, LongestShown)]), LongestShown);
}
