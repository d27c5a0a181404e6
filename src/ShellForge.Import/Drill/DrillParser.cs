using System.Collections.Immutable;
using ShellForge.Import.Files;

namespace ShellForge.Import.Drill;

/// <summary>
/// Reads an Excellon or XNC program into steps whose numbers are still as written: which reading is right may only show when
/// the outline is known.
/// </summary>
internal sealed class DrillParser
{
    private readonly SourceText _source;
    private readonly EcadLog _log;
    private readonly DrillHeader _header = new();
    private readonly SortedDictionary<int, DrillTool> _tools = [];
    private readonly ImmutableArray<DrillStep>.Builder _steps = ImmutableArray.CreateBuilder<DrillStep>();
    private bool _inHeader;
    private bool _routing;
    private bool _down;
    private int _routeMode;
    private bool _incremental;
    private int _tool;
    private bool _allPoints = true;
    private bool _repeats;
    private int _line;

    private DrillParser(SourceText source, EcadLog log) => (_source, _log) = (source, log);

    /// <summary>Whether a text looks like a drill program: an M48 header, or tool definitions and bare coordinates.</summary>
    public static bool LooksLike(SourceText source)
    {
        int coordinates = 0;
        int definitions = 0;
        for (int n = 1; n <= Math.Min(source.LineCount, 400); n++)
        {
            ReadOnlySpan<char> text = source.Line(n).Trim();
            if (text is "M48")
            {
                return true;
            }

            if (text.EndsWith("*") || text.StartsWith("%FS", StringComparison.Ordinal))
            {
                return false;
            }

            bool isTool = text.Length > 2 && text[0] == 'T' && char.IsAsciiDigit(text[1]);
            definitions += isTool ? 1 : 0;
            coordinates += text.Length > 3 && text[0] is 'X' or 'Y' && (char.IsAsciiDigit(text[1]) || text[1] is '-' or '+' or '.') ? 1 : 0;
        }

        return definitions > 0 && coordinates > 0;
    }

    public static DrillProgram Parse(SourceText source, EcadLog log, CancellationToken ct)
    {
        var parser = new DrillParser(source, log);
        for (int n = 1; n <= source.LineCount; n++)
        {
            if (n % 4096 == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            if (!parser.Take(n))
            {
                break;
            }
        }

        return parser.Program();
    }

    private DrillProgram Program()
    {
        foreach ((int from, Plating plating) in _header.FromTool)
        {
            foreach (DrillTool t in _tools.Values.Where(t => t.Number >= from).ToList())
            {
                _tools[t.Number] = t with { Plating = plating };
            }
        }

        Plating file = _header.File != Plating.Unknown ? _header.File : FromName(_source.File);
        return new DrillProgram(_source.File, _header.Stated, file, [.. _tools.Values], _steps.ToImmutable(), _allPoints, _repeats);
    }

    // Names are the last resort: some exporters write plating nowhere else.
    private static Plating FromName(string file)
    {
        string name = Path.GetFileName(file).ToUpperInvariant();
        return name.Contains("NPTH", StringComparison.Ordinal) || name.Contains("NONPLATED", StringComparison.Ordinal)
            || name.Contains("NON-PLATED", StringComparison.Ordinal) || name.Contains("NON_PLATED", StringComparison.Ordinal) ? Plating.Bare
            : name.Contains("PTH", StringComparison.Ordinal) || name.Contains("PLATED", StringComparison.Ordinal) ? Plating.Plated
            : Plating.Unknown;
    }

    private bool Take(int n)
    {
        _line = n;
        ReadOnlySpan<char> text = _source.Line(n).Trim();
        if (text.Length > EcadLimits.LineCharacters)
        {
            _log.Error(_source.File, n, "ecad-line-length", $"a line of {text.Length} characters", $"at most {EcadLimits.LineCharacters}");
            return false;
        }

        if (text.IsEmpty)
        {
            return true;
        }

        if (text[0] == ';')
        {
            _header.Comment(text[1..]);
            DrillComments.HoleSize(text[1..], _header.Current, n, _tools);
            return true;
        }

        if (text is "M48")
        {
            _inHeader = true;
            return true;
        }

        if (text is "%" or "M95")
        {
            // A lone percent sign ends a header; before M48 it is the start mark of a paper tape.
            _inHeader = false;
            return true;
        }

        if (_header.UnitLine(text))
        {
            return true;
        }

        switch (text[0])
        {
            case 'T' when text.Length > 1 && char.IsAsciiDigit(text[1]):
                return ToolLine(text);
            case 'M':
                return MachineWord(text);
            case 'X' or 'Y' or 'G' or 'R' or 'A' or 'I' or 'J' when !_inHeader || text[0] is 'X' or 'Y' or 'G':
                return Motion(text);
            default:
                // FMAT, ICI, VER, ATC, OM48 and the like: header words that say nothing about the holes.
                if (text.StartsWith("ICI,ON", StringComparison.OrdinalIgnoreCase))
                {
                    _incremental = true;
                }

                return true;
        }
    }

    private bool ToolLine(ReadOnlySpan<char> text)
    {
        int at = 1;
        if (!DrillNumbers.TryScan(text, ref at, out RawNumber number) || number.HasPoint || number.Negative || number.Digits > 100_000)
        {
            _log.Warn(_source.File, _line, "drill-tool", $"tool '{Cut(text)}' can't be read");
            return true;
        }

        int selected = (int)number.Digits;
        RawNumber? diameter = null;
        while (at < text.Length)
        {
            char letter = text[at++];
            if (letter is 'C' or 'F' or 'S' or 'B' or 'H' or 'Z')
            {
                if (DrillNumbers.TryScan(text, ref at, out RawNumber value) && letter == 'C')
                {
                    diameter = value;
                }
            }
            else if (letter is 'X' or 'Y')
            {
                _tool = selected;
                return Motion(text[(at - 1)..]);
            }
        }

        if (diameter is { } d)
        {
            _tools[selected] = new DrillTool(selected, d, null, _header.Current, _header.Use, _line);
        }

        if (!_inHeader || diameter is null)
        {
            _tool = selected;
        }

        return true;
    }

    private bool MachineWord(ReadOnlySpan<char> text)
    {
        int at = 1;
        if (!DrillNumbers.TryScan(text, ref at, out RawNumber code) || code.HasPoint)
        {
            return true;
        }

        switch (code.Digits)
        {
            case 0 or 30:
                return false;
            case 15:
                _down = true;
                return true;
            case 16 or 17:
                _down = false;
                return true;
            case 25:
                _repeats = true;
                return true;
            case 2 when at < text.Length:
                _repeats = true;
                return true;
            case 2:
                // Bare, it ends a repeated pattern; without one it ends the program, as in Gerber.
                return _repeats;
            default:
                return true;
        }
    }

    // Letters in any order, as the machine takes them; what is not repeated stays in force.
    private bool Motion(ReadOnlySpan<char> text)
    {
        var words = default(DrillWords);
        int at = 0;
        while (at < text.Length)
        {
            char letter = char.ToUpperInvariant(text[at++]);
            if (char.IsWhiteSpace(letter) || letter == ',')
            {
                continue;
            }

            if (!DrillNumbers.TryScan(text, ref at, out RawNumber number))
            {
                _log.Warn(_source.File, _line, "drill-word", $"'{Cut(text)}' can't be read and is left out");
                return true;
            }

            if (letter == 'G' && number.Digits == 85)
            {
                // Left of G85 stands the slot's start, right of it the end.
                if (!Add(DrillAction.Move, words))
                {
                    return false;
                }

                words = default;
                words.IsSlot = true;
                continue;
            }

            if (letter == 'G')
            {
                words.Code = (int)Math.Min(number.Digits, 999);
                words.HasCode = true;
                continue;
            }

            if (!words.Set(letter, number))
            {
                _log.Warn(_source.File, _line, "drill-word", $"'{Cut(text)}' can't be read and is left out");
                return true;
            }
        }

        return Act(words, text);
    }

    private bool Act(DrillWords words, ReadOnlySpan<char> text)
    {
        if (words.HasCode)
        {
            switch (words.Code)
            {
                case 0:
                    (_routing, _routeMode, _down) = (true, 0, false);
                    break;
                case 1 or 2 or 3:
                    (_routing, _routeMode) = (true, words.Code);
                    break;
                case 5 or 81:
                    (_routing, _routeMode, _down) = (false, 0, false);
                    break;
                case 90 or 91:
                    _incremental = words.Code == 91;
                    break;
                case 92 or 93:
                    return Add(DrillAction.SetZero, words);
                case 4 or 7 or 40 or 41 or 42:
                    break;
                default:
                    _log.Warn(_source.File, _line, "drill-word", $"'{Cut(text)}' is not supported and is left out",
                        "holes, slots (G85) and routed slots (G00 to G03)");
                    return true;
            }
        }

        if (!words.HasX && !words.HasY)
        {
            return true;
        }

        DrillAction action = words.IsSlot ? DrillAction.SlotEnd
            : !_routing ? DrillAction.Hit
            : !_down || _routeMode == 0 ? DrillAction.Move
            : _routeMode == 2 ? DrillAction.RouteClockwise
            : _routeMode == 3 ? DrillAction.RouteCounterClockwise
            : DrillAction.Route;
        int times = words.HasRepeat ? Math.Clamp((int)Math.Min(words.Repeat.Digits, int.MaxValue), 0, int.MaxValue) : 1;
        if (words.HasRepeat && times > EcadLimits.Holes)
        {
            _log.Error(_source.File, _line, "ecad-too-many", $"a hole repeated {times} times", $"at most {EcadLimits.Holes} holes");
            return false;
        }

        for (int i = 0; i < times; i++)
        {
            if (!Add(action, words))
            {
                return false;
            }
        }

        return true;
    }

    private bool Add(DrillAction action, DrillWords words)
    {
        if (action == DrillAction.Move && !words.HasX && !words.HasY && !words.IsSlot)
        {
            return true;
        }

        if (_steps.Count >= EcadLimits.Holes)
        {
            _log.Error(_source.File, _line, "ecad-too-many", $"more than {EcadLimits.Holes} holes");
            return false;
        }

        _allPoints &= (!words.HasX || words.X.HasPoint || words.X.Digits == 0) && (!words.HasY || words.Y.HasPoint || words.Y.Digits == 0);
        _steps.Add(new DrillStep(
            action, words.X, words.Y, words.HasX, words.HasY, words.I, words.J, words.A, _incremental || words.HasRepeat, _tool, _line));
        return true;
    }

    private static string Cut(ReadOnlySpan<char> text) => text.Length <= 40 ? text.ToString() : string.Concat(text[..37], "...");

    private struct DrillWords
    {
        public RawNumber X, Y, I, J, A, Repeat;
        public bool HasX, HasY, HasRepeat, HasCode, IsSlot;
        public int Code;

        public bool Set(char letter, RawNumber number)
        {
            switch (letter)
            {
                case 'X':
                    (X, HasX) = (number, true);
                    return true;
                case 'Y':
                    (Y, HasY) = (number, true);
                    return true;
                case 'I':
                    I = number;
                    return true;
                case 'J':
                    J = number;
                    return true;
                case 'A':
                    A = number;
                    return true;
                case 'R':
                    (Repeat, HasRepeat) = (number, true);
                    return true;
                case 'Z' or 'F' or 'S':
                    return true;
                default:
                    return false;
            }
        }
    }
}
