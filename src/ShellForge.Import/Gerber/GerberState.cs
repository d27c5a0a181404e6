using System.Collections.Immutable;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Gerber;

/// <summary>What is known while a Gerber file is read: format, apertures, attributes, and what was drawn so far.</summary>
internal sealed class GerberState(SourceText source, EcadLog log)
{
    private readonly Dictionary<int, (double Width, bool Profile)> _apertures = [];
    private readonly ImmutableArray<PenStroke>.Builder _strokes = ImmutableArray.CreateBuilder<PenStroke>();
    private readonly ImmutableArray<GerberFlash>.Builder _flashes = ImmutableArray.CreateBuilder<GerberFlash>();
    private bool _apertureAttributeProfile;
    private bool _profileDrawn;
    private bool _stepAndRepeat;
    private int _strokeCount;
    private int _flashCount;
    private bool _unitAssumed;

    public GerberFormat Format { get; } = new();

    public List<string> Titles { get; } = [];

    public string FileFunction { get; private set; } = "";

    public int Offset { get; set; }

    public bool InMacro { get; set; }

    public double? CommentUnit { get; set; }

    public bool UnitFromComment => CommentUnit is not null;

    public int Line => source.LineOf(Offset);

    public bool KeepsStrokes => !IsForeignLayer;

    private bool IsForeignLayer =>
        FileFunction.StartsWith("Copper", StringComparison.OrdinalIgnoreCase)
        || FileFunction.StartsWith("Soldermask", StringComparison.OrdinalIgnoreCase)
        || FileFunction.StartsWith("Legend", StringComparison.OrdinalIgnoreCase)
        || FileFunction.StartsWith("Paste", StringComparison.OrdinalIgnoreCase);

    public void Warn(string code, string message, string? expected = null) => log.Warn(source.File, Line, code, message, expected);

    public void Error(string code, string message, string? expected = null) => log.Error(source.File, Line, code, message, expected);

    public void Unit(double? unit, ReadOnlySpan<char> text)
    {
        if (unit is null)
        {
            Warn("gerber-unit", $"unit command '{Cut(text)}' can't be read", "MOMM or MOIN");
        }
        else if (_strokeCount > 0 && Format.Unit is { } before && before != unit)
        {
            Error("gerber-unit", "the unit changes in the middle of the drawing", "one unit per file");
        }
        else
        {
            Format.Unit = unit;
        }
    }

    /// <summary>Millimetres per file unit. Without any statement inch is what old files mean, and that is said.</summary>
    public double UnitOrAssumed()
    {
        if (Format.Unit is { } stated)
        {
            return stated;
        }

        if (!_unitAssumed)
        {
            _unitAssumed = true;
            Warn(
                "gerber-unit",
                CommentUnit is null ? "no unit is stated; inch is assumed, as old files mean it" : "the unit stands in a comment only",
                "check the size");
        }

        Format.Unit = CommentUnit ?? 25.4;
        return Format.Unit.Value;
    }

    public void Aperture(ReadOnlySpan<char> definition)
    {
        // D10C,0.254X0.1: number, shape, first size.
        int i = 1;
        while (i < definition.Length && char.IsAsciiDigit(definition[i]))
        {
            i++;
        }

        if (definition.Length < 2 || definition[0] != 'D' || !Numeral.TryParseInt(definition[1..i], out int number))
        {
            Warn("gerber-aperture", $"aperture '{Cut(definition)}' can't be read");
            return;
        }

        int comma = definition.IndexOf(',');
        double size = 0;
        if (comma > 0)
        {
            ReadOnlySpan<char> sizes = definition[(comma + 1)..];
            int cross = sizes.IndexOf('X');
            _ = Numeral.TryParse(cross >= 0 ? sizes[..cross] : sizes, out size);
        }

        if (_apertures.Count < 10_000)
        {
            _apertures[number] = (size, _apertureAttributeProfile);
        }
    }

    public void Attribute(string code, ReadOnlySpan<char> rest)
    {
        rest = rest.TrimStart('.').Trim();
        if (code == "TF" && rest.StartsWith("FileFunction,", StringComparison.OrdinalIgnoreCase))
        {
            FileFunction = rest["FileFunction,".Length..].TrimEnd('*').ToString();
        }
        else if (code == "TA" && rest.StartsWith("AperFunction", StringComparison.OrdinalIgnoreCase))
        {
            _apertureAttributeProfile = rest.Contains("Profile", StringComparison.OrdinalIgnoreCase);
        }
    }

    public void StepAndRepeat(ReadOnlySpan<char> rest)
    {
        // X1Y1 and nothing at all both end a repetition.
        foreach (string axis in new[] { "X", "Y" })
        {
            int at = rest.IndexOf(axis, StringComparison.Ordinal);
            if (at < 0)
            {
                continue;
            }

            int end = at + 1;
            while (end < rest.Length && char.IsAsciiDigit(rest[end]))
            {
                end++;
            }

            if (Numeral.TryParseInt(rest[(at + 1)..end], out int times) && times > 1)
            {
                _stepAndRepeat = true;
            }
        }
    }

    /// <summary>Keeps a stroke; false when the file holds more than a drawing of one board can.</summary>
    public bool Add(EdgeSegment segment, int aperture, int group)
    {
        _strokeCount++;
        _apertures.TryGetValue(aperture, out (double Width, bool Profile) pen);
        _profileDrawn |= pen.Profile;
        if (!KeepsStrokes || _strokes.Count >= EcadLimits.Strokes)
        {
            return _strokeCount < 50 * EcadLimits.Strokes;
        }

        _strokes.Add(new PenStroke(segment, Line, pen.Width * (Format.Unit ?? 1), group));
        return true;
    }

    public void AddFlash(ShellForge.Geometry.Numerics.Point2 at, int aperture)
    {
        _flashCount++;
        if (KeepsStrokes && _flashes.Count < EcadLimits.Holes)
        {
            _apertures.TryGetValue(aperture, out (double Width, bool Profile) pen);
            _flashes.Add(new GerberFlash(at, pen.Width * (Format.Unit ?? 1), Line));
        }
    }

    public GerberFacts Facts() => new(
        source.File,
        Format.Unit is null ? "unknown" : Format.Unit == 1 ? "mm" : "inch",
        FileFunction,
        _profileDrawn,
        [.. Titles],
        _strokes.ToImmutable(),
        _strokeCount,
        _flashes.ToImmutable(),
        _flashCount,
        _stepAndRepeat);

    public static string Cut(ReadOnlySpan<char> text) => text.Length <= 40 ? text.ToString() : string.Concat(text[..37], "...");
}
