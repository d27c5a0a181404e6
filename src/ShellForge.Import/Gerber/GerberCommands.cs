using ShellForge.Import.Files;

namespace ShellForge.Import.Gerber;

/// <summary>One command of a Gerber file: between stars, or between percent signs when extended.</summary>
internal readonly record struct GerberCommand(int Start, int Length, bool Extended);

/// <summary>Cuts a Gerber file into commands without copying it. Line ends mean nothing except inside a command's text.</summary>
internal static class GerberCommands
{
    public static IEnumerable<GerberCommand> Of(SourceText source, EcadLog log, CancellationToken ct)
    {
        string text = source.Text;
        bool extended = false;
        int start = 0;
        int count = 0;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (c == '%')
            {
                extended = !extended;
                start = i + 1;
            }
            else if (c == '*')
            {
                if (++count % 4096 == 0)
                {
                    ct.ThrowIfCancellationRequested();
                }

                if (i - start > EcadLimits.LineCharacters)
                {
                    log.Error(source.File, source.LineOf(start), "ecad-line-length", $"a command of {i - start} characters",
                        $"at most {EcadLimits.LineCharacters}");
                    yield break;
                }

                yield return new GerberCommand(start, i - start, extended);
                start = i + 1;
            }
        }

        if (text.AsSpan(start).Trim().Length > 0)
        {
            log.Warn(source.File, source.LineOf(start), "gerber-end", "the file ends inside a command");
        }
    }
}
