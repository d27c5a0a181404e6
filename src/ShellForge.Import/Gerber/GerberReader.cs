using ShellForge.Import.Files;

namespace ShellForge.Import.Gerber;

/// <summary>Reads a Gerber drawing of any age into strokes and flashes: extended commands here, drawing commands in the plotter.</summary>
internal static class GerberReader
{
    /// <summary>
    /// Whether a text looks like Gerber: most of its first lines are commands that end in a star or stand in percent signs.
    /// </summary>
    public static bool LooksLike(SourceText source)
    {
        int lines = 0;
        int commands = 0;
        bool telling = false;
        for (int n = 1; n <= source.LineCount && lines < 60; n++)
        {
            ReadOnlySpan<char> line = source.Line(n).Trim();
            if (line.IsEmpty)
            {
                continue;
            }

            lines++;
            bool isCommand = line[^1] == '*' || line.EndsWith("*%") || line[0] == '%';
            commands += isCommand ? 1 : 0;
            telling |= line.StartsWith("%FS", StringComparison.Ordinal) || line.StartsWith("%MO", StringComparison.Ordinal)
                || line.StartsWith("%AD", StringComparison.Ordinal) || line.StartsWith("%TF", StringComparison.Ordinal)
                || (isCommand && line[0] is 'G' or 'X' or 'Y' or 'D' && line.Length > 2 && (char.IsAsciiDigit(line[1]) || line[1] == '-'));
        }

        return telling && commands * 2 >= lines;
    }

    public static GerberFacts Read(SourceText source, EcadLog log, CancellationToken ct)
    {
        var state = new GerberState(source, log);
        var plotter = new GerberPlotter(state);
        foreach (GerberCommand command in GerberCommands.Of(source, log, ct))
        {
            ReadOnlySpan<char> text = source.Text.AsSpan(command.Start, command.Length).Trim();
            if (text.IsEmpty)
            {
                continue;
            }

            state.Offset = command.Start;
            if (command.Extended)
            {
                Extended(state, plotter, text);
            }
            else if (text.StartsWith("G04", StringComparison.Ordinal) || text.StartsWith("G4 ", StringComparison.Ordinal))
            {
                Comment(state, text);
            }
            else if (!plotter.Word(text))
            {
                break;
            }
        }

        return state.Facts();
    }

    private static void Extended(GerberState state, GerberPlotter plotter, ReadOnlySpan<char> text)
    {
        if (state.InMacro && !char.IsAsciiLetterUpper(text[0]))
        {
            return;
        }

        state.InMacro = false;
        string code = text.Length >= 2 ? text[..2].ToString() : "";
        ReadOnlySpan<char> rest = text.Length >= 2 ? text[2..] : default;
        switch (code)
        {
            case "FS":
                if (!state.Format.Read(rest))
                {
                    state.Warn("gerber-format", $"format command '{GerberState.Cut(text)}' can't be read");
                }

                break;
            case "MO":
                state.Unit(rest.StartsWith("MM", StringComparison.Ordinal) ? 1
                    : rest.StartsWith("IN", StringComparison.Ordinal) ? 25.4 : null, text);
                break;
            case "AD":
                state.Aperture(rest);
                break;
            case "AM":
                state.InMacro = true;
                break;
            case "TF":
            case "TA":
            case "TO":
                state.Attribute(code, rest);
                break;
            case "LN":
            case "IN":
                state.Titles.Add(rest.ToString());
                break;
            case "OF":
            case "SF":
            case "MI":
            case "AS":
                plotter.Transform(code, rest);
                break;
            case "SR":
                state.StepAndRepeat(rest);
                break;
            case "LM":
            case "LR":
            case "LS":
            case "AB":
                break;
            default:
                // Old files wrap plain words in percent signs too.
                if (text[0] is 'G' or 'X' or 'Y' or 'D' && text.Length > 1 && (char.IsAsciiDigit(text[1]) || text[1] is '-' or '+'))
                {
                    plotter.Word(text);
                }

                break;
        }
    }

    private static void Comment(GerberState state, ReadOnlySpan<char> text)
    {
        int mark = text.IndexOf("#@!", StringComparison.Ordinal);
        if (mark >= 0)
        {
            ReadOnlySpan<char> attribute = text[(mark + 3)..].Trim();
            if (attribute.Length > 2 && attribute[0] == 'T')
            {
                state.Attribute(attribute[..2].ToString(), attribute[2..]);
            }

            return;
        }

        if (text.Contains("layer", StringComparison.OrdinalIgnoreCase) && state.Titles.Count < EcadLimits.Depth)
        {
            state.Titles.Add(text[3..].Trim().ToString());
        }

        if (state.Format.Unit is null && !state.UnitFromComment)
        {
            // Some writers say it in words only; a unit command later wins.
            state.CommentUnit = text.Contains("inch", StringComparison.OrdinalIgnoreCase) ? 25.4
                : text.Contains("millimet", StringComparison.OrdinalIgnoreCase)
                    || text.Contains("unit mm", StringComparison.OrdinalIgnoreCase) ? 1
                : state.CommentUnit;
        }
    }
}
