using ShellForge.Import.Files;

namespace ShellForge.Import.Dxf;

/// <summary>A group: a code on one line, its value on the next.</summary>
internal readonly record struct DxfGroup(int Code, int Line);

/// <summary>Reads groups one after the other.</summary>
internal sealed class DxfGroups(SourceText source, EcadLog log)
{
    private int _line = 1;

    /// <summary>The next group; false at the end or where the pairs are broken.</summary>
    public bool Next(out DxfGroup group)
    {
        group = default;
        while (_line < source.LineCount)
        {
            ReadOnlySpan<char> code = source.Line(_line).Trim();
            if (code.IsEmpty && _line + 1 >= source.LineCount)
            {
                return false;
            }

            if (!Numeral.TryParseInt(code, out int number))
            {
                log.Error(source.File, _line, "dxf-group", "no group code where one belongs", "a whole number, its value on the next line");
                return false;
            }

            group = new DxfGroup(number, _line + 1);
            _line += 2;
            return true;
        }

        return false;
    }

    public ReadOnlySpan<char> Value(DxfGroup group)
    {
        ReadOnlySpan<char> value = source.Line(group.Line);
        return value.Length > EcadLimits.LineCharacters ? default : value.Trim();
    }
}
