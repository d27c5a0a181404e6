using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Gerber;

/// <summary>
/// The pen: words of G, X, Y, I, J and D. Everything not repeated stays in force, also the drawing code itself, as old files
/// count on.
/// </summary>
internal sealed class GerberPlotter(GerberState state)
{
    private Point2 _pen;
    private Point2 _shift;
    private Point2 _scale = new(1, 1);
    private bool _swapped;
    private int _interpolation = 1;
    private int _drawing = 2;
    private int _aperture;
    private bool _inRegion;
    private int _group;
    private int _nextGroup = 1;
    private bool? _multiQuadrant;
    private bool _assumedFormat;

    /// <summary>Takes one word; false at the end of the file.</summary>
    public bool Word(ReadOnlySpan<char> text)
    {
        double? x = null, y = null;
        double i = 0, j = 0;
        bool hasPlace = false;
        int? code = null;
        for (int at = 0; at < text.Length;)
        {
            char letter = text[at++];
            if (char.IsWhiteSpace(letter))
            {
                continue;
            }

            int start = at;
            while (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] is '-' or '+' or '.'))
            {
                at++;
            }

            ReadOnlySpan<char> number = text[start..at];
            switch (letter)
            {
                case 'G':
                    if (Numeral.TryParseInt(number, out int g) && g == 4)
                    {
                        return true;
                    }

                    Mode(g);
                    break;
                case 'X' or 'Y' or 'I' or 'J':
                    if (!Coordinate(number, out double value))
                    {
                        state.Error("gerber-number", $"'{letter}{GerberState.Cut(number)}' is no coordinate");
                        return true;
                    }

                    hasPlace = true;
                    (x, y, i, j) = letter switch
                    {
                        'X' => (value, y, i, j),
                        'Y' => (x, value, i, j),
                        'I' => (x, y, value, j),
                        _ => (x, y, i, value),
                    };
                    break;
                case 'D':
                    if (!Numeral.TryParseInt(number, out int d) || d < 0)
                    {
                        state.Error("gerber-number", $"'D{GerberState.Cut(number)}' is no code");
                        return true;
                    }

                    if (d >= 10)
                    {
                        _aperture = d;
                    }
                    else
                    {
                        code = d;
                    }

                    break;
                case 'M':
                    return !(Numeral.TryParseInt(number, out int m) && m is 0 or 2 or 30);
                case 'N':
                    break;
                default:
                    state.Warn("gerber-word", $"'{GerberState.Cut(text)}' is no Gerber command and is left out");
                    return true;
            }
        }

        if (!hasPlace && code is null)
        {
            return true;
        }

        _drawing = code is 1 or 2 or 3 ? code.Value : _drawing;
        return Move(x, y, new Point2(i, j), hasPlace);
    }

    /// <summary>Old image transformations: offset, scale, mirror, axis swap.</summary>
    public void Transform(string code, ReadOnlySpan<char> rest)
    {
        double a = Argument(rest, 'A', code == "SF" ? 1 : 0);
        double b = Argument(rest, 'B', code == "SF" ? 1 : 0);
        switch (code)
        {
            case "OF":
                _shift = new Point2(a * (state.Format.Unit ?? 1), b * (state.Format.Unit ?? 1));
                break;
            case "SF":
                _scale = new Point2(_scale.X * (a == 0 ? 1 : a), _scale.Y * (b == 0 ? 1 : b));
                break;
            case "MI":
                _scale = new Point2(a == 1 ? -Math.Abs(_scale.X) : _scale.X, b == 1 ? -Math.Abs(_scale.Y) : _scale.Y);
                break;
            default:
                _swapped = rest.StartsWith("AYBX", StringComparison.Ordinal);
                break;
        }

        if (code != "AS" && (_scale != new Point2(1, 1) || _shift != default))
        {
            state.Warn("gerber-transform", $"the old image command {code} moves or scales the drawing and is applied");
        }
    }

    private static double Argument(ReadOnlySpan<char> rest, char name, double otherwise)
    {
        int at = rest.IndexOf(name);
        if (at < 0)
        {
            return otherwise;
        }

        int end = at + 1;
        while (end < rest.Length && (char.IsAsciiDigit(rest[end]) || rest[end] is '-' or '+' or '.'))
        {
            end++;
        }

        return Numeral.TryParse(rest[(at + 1)..end], out double value) ? value : otherwise;
    }

    private void Mode(int g)
    {
        switch (g)
        {
            case 0 or 1 or 10 or 11 or 12:
                _interpolation = 1;
                break;
            case 2 or 3:
                _interpolation = g;
                break;
            case 36:
                _inRegion = true;
                _group = _nextGroup++;
                break;
            case 37:
                _inRegion = false;
                _group = 0;
                break;
            case 70 or 71:
                state.Unit(g == 70 ? 25.4 : 1, "G70/G71");
                break;
            case 74 or 75:
                _multiQuadrant = g == 75;
                break;
            case 90 or 91:
                state.Format.Incremental = g == 91;
                break;
            case 54 or 55:
                break;
            default:
                state.Warn("gerber-word", $"G{g} is no Gerber code and is left out");
                break;
        }
    }

    private bool Coordinate(ReadOnlySpan<char> digits, out double value)
    {
        if (!state.Format.Stated && !_assumedFormat && !digits.Contains('.'))
        {
            _assumedFormat = true;
            state.Warn("gerber-format", "no format command; 2 digits before and 4 after the point are assumed", "check the size");
        }

        bool read = state.Format.TryCoordinate(digits, out value);
        value *= read ? state.UnitOrAssumed() : 0;
        return read && Math.Abs(value) <= EcadTolerances.LargestCoordinate;
    }

    private bool Move(double? x, double? y, Point2 offset, bool hasPlace)
    {
        (x, y, offset) = _swapped ? (y, x, new Point2(offset.Y, offset.X)) : (x, y, offset);
        Point2 from = _pen;
        Point2 origin = state.Format.Incremental ? _pen : _shift;
        Point2 to = new(
            x is { } vx ? origin.X + (vx * _scale.X) : _pen.X,
            y is { } vy ? origin.Y + (vy * _scale.Y) : _pen.Y);
        if (Math.Abs(to.X) > EcadTolerances.LargestCoordinate || Math.Abs(to.Y) > EcadTolerances.LargestCoordinate)
        {
            state.Error("ecad-number", "a coordinate beyond a kilometre");
            return false;
        }

        _pen = to;
        switch (_drawing)
        {
            case 2:
                _group = _inRegion ? _nextGroup++ : 0;
                return true;
            case 3:
                state.AddFlash(to, _aperture);
                return true;
            default:
                if (!hasPlace)
                {
                    return true;
                }

                EdgeSegment? segment = _interpolation == 1 ? EdgeSegment.Line(from, to)
                    : Arc(from, to, new Point2(offset.X * _scale.X, offset.Y * _scale.Y));
                return segment is not { } s || state.Add(s, _aperture, _group);
        }
    }

    private EdgeSegment? Arc(Point2 from, Point2 to, Point2 offset)
    {
        // A mirrored image turns the other way round.
        bool counterClockwise = (_interpolation == 3) != (_scale.X * _scale.Y < 0);
        if (_multiQuadrant ?? true)
        {
            return GerberArc.Through(from, to, from + offset, counterClockwise, state);
        }

        return GerberArc.SingleQuadrant(from, to, offset, counterClockwise, state);
    }
}
