using ShellForge.Import.Files;

namespace ShellForge.Import.Dxf;

/// <summary>The few header variables that matter: version, drawing unit, old measurement flag.</summary>
internal sealed class DxfHeader
{
    private string _variable = "";

    public string Version { get; private set; } = "";

    public double? Unit { get; private set; }

    public bool? Metric { get; private set; }

    public void Take(int code, ReadOnlySpan<char> value)
    {
        if (code == 9)
        {
            _variable = value.ToString().ToUpperInvariant();
        }
        else if (_variable == "$ACADVER" && code == 1)
        {
            Version = value.ToString();
        }
        else if (_variable == "$INSUNITS" && Numeral.TryParseInt(value, out int unit))
        {
            Unit = UnitOf(unit);
        }
        else if (_variable == "$MEASUREMENT" && Numeral.TryParseInt(value, out int metric))
        {
            Metric = metric == 1;
        }
    }

    // Codes of the published format reference, those a board can be drawn in.
    private static double? UnitOf(int code) => code switch
    {
        1 => 25.4,
        2 => 304.8,
        4 => 1,
        5 => 10,
        6 => 1000,
        8 => 0.0000254,
        9 => 0.0254,
        10 => 914.4,
        13 => 0.001,
        14 => 100,
        _ => null,
    };
}
