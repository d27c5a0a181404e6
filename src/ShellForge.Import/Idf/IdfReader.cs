using System.Collections.Immutable;
using ShellForge.Import.Files;

namespace ShellForge.Import.Idf;

/// <summary>
/// Reads IDF 2.0 and 3.0 board and library files. Unknown sections are passed over; a record that can't be read is named and
/// left out. Records of version 2 are shorter than those of version 3, so the version decides which field is which.
/// </summary>
internal static class IdfReader
{
    /// <summary>Reads the header: kind, version word, and the unit of a board; null when there is none.</summary>
    public static IdfHeader? Header(SourceText text)
    {
        for (int n = 1; n <= Math.Min(text.LineCount, 200); n++)
        {
            ReadOnlySpan<char> line = text.Line(n).Trim();
            if (line.IsEmpty || line[0] == '#')
            {
                continue;
            }

            if (!line.StartsWith(".HEADER", StringComparison.OrdinalIgnoreCase))
            {
                return null;
            }

            List<string> kind = NextRecord(text, ref n);
            List<string> name = NextRecord(text, ref n);
            return new IdfHeader(
                kind.Count > 0 ? kind[0].ToUpperInvariant() : "",
                kind.Count > 1 ? kind[1] : "",
                name.Count > 1 ? name[^1] : "",
                n);
        }

        return null;
    }

    public static IdfBoardFacts? Board(SourceText text, EcadLog log, CancellationToken ct)
    {
        if (Header(text) is not { } header)
        {
            log.Error(text.File, 1, "idf-header", "no .HEADER section", "an IDF board file begins with .HEADER");
            return null;
        }

        if (header.MajorVersion is not (2 or 3))
        {
            log.Error(
                text.File, header.Line, "idf-version", $"IDF version '{header.Version}' is not read",
                "version 2.0 or 3.0: choose it in the export dialog");
            return null;
        }

        if (IdfRecord.UnitOf(header.Unit) is not { } unit)
        {
            log.Error(text.File, header.Line, "idf-unit", $"unknown unit '{header.Unit}'",
                "MM or THOU at the end of the header's third line");
            return null;
        }

        var board = new IdfBoardSections(text.File, unit, header.MajorVersion, log);
        foreach ((string section, string owner, int line,
            List<(int Line, string Text)> records) in Sections(text, header.Line + 1, log, ct))
        {
            board.Take(section, owner, line, records);
        }

        return board.Facts(header);
    }

    public static IdfLibraryFacts Library(SourceText text, EcadLog log, CancellationToken ct)
    {
        IdfHeader? header = Header(text);
        var packages = ImmutableArray.CreateBuilder<IdfPackage>();
        foreach ((string section, string _, int line, List<(int Line, string Text)> records) in Sections(text, header?.Line ?? 1, log, ct))
        {
            if (section is "ELECTRICAL" or "MECHANICAL"
                && packages.Count < EcadLimits.Parts
                && IdfLibraryPackage.Read(text.File, section == "MECHANICAL", line, records, log) is { } package)
            {
                packages.Add(package);
            }
        }

        return new IdfLibraryFacts(text.File, packages.ToImmutable());
    }

    private static List<string> NextRecord(SourceText text, ref int n)
    {
        while (n < text.LineCount)
        {
            n++;
            ReadOnlySpan<char> line = text.Line(n).Trim();
            if (!line.IsEmpty && line[0] != '#')
            {
                if (line[0] == '.')
                {
                    n--;
                    return [];
                }

                return IdfRecord.Fields(line);
            }
        }

        return [];
    }

    private static IEnumerable<(string Section, string Owner, int Line, List<(int Line, string Text)> Records)> Sections(
        SourceText text, int fromLine, EcadLog log, CancellationToken ct)
    {
        string? section = null;
        string owner = "";
        int sectionLine = 0;
        int sections = 0;
        var records = new List<(int Line, string Text)>();
        for (int n = Math.Max(fromLine, 1); n <= text.LineCount; n++)
        {
            ct.ThrowIfCancellationRequested();
            string line = LineText(text, n, log);
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            if (line[0] != '.')
            {
                if (section is not null)
                {
                    records.Add((n, line));
                }

                continue;
            }

            string word = line[1..].Split((char[]?)null, 2, StringSplitOptions.RemoveEmptyEntries).FirstOrDefault("").ToUpperInvariant();
            bool isEnd = word.StartsWith("END_", StringComparison.Ordinal);
            if (++sections > EcadLimits.Sections)
            {
                log.Error(text.File, n, "ecad-too-many", $"more than {EcadLimits.Sections} section lines");
                yield break;
            }

            if (section is not null)
            {
                if (!isEnd)
                {
                    log.Warn(text.File, n, "idf-section-end", $"section .{section} of line {sectionLine} has no end");
                }

                yield return (section, owner, sectionLine, records);
                records = [];
            }

            List<string> fields = IdfRecord.Fields(line);
            (section, owner, sectionLine) = isEnd ? (null, "", 0) : (word, fields.Count > 1 ? fields[1] : "", n);
        }

        if (section is not null)
        {
            log.Warn(text.File, text.LineCount, "idf-section-end", $"the file ends inside section .{section} of line {sectionLine}");
            yield return (section, owner, sectionLine, records);
        }
    }

    private static string LineText(SourceText text, int n, EcadLog log)
    {
        ReadOnlySpan<char> line = text.Line(n);
        if (line.Length > EcadLimits.LineCharacters)
        {
            log.Error(text.File, n, "ecad-line-length", $"a line of {line.Length} characters", $"at most {EcadLimits.LineCharacters}");
            return "";
        }

        return line.Trim().ToString();
    }
}

/// <summary>The header of an IDF file.</summary>
internal sealed record IdfHeader(string Kind, string Version, string Unit, int Line)
{
    /// <summary>The number before the point; 0 when it can't be read.</summary>
    public int MajorVersion => Numeral.TryParse(Version, out double v) ? (int)Math.Clamp(v, 0, 99) : 0;
}
