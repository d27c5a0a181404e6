using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Dxf;

/// <summary>An entity: its kind and the numbers and names of its groups, in their order.</summary>
internal sealed class DxfEntity(string kind, int line)
{
    private const int MostNumbers = 100_000;

    private List<(int Code, double Value)>? _numbers;
    private List<DxfEntity>? _vertices;

    public string Kind { get; } = kind;

    public int Line { get; } = line;

    public string Layer { get; private set; } = "";

    public string Name { get; private set; } = "";

    /// <summary>Groups whose value should have been a number and is none.</summary>
    public int BadNumbers { get; private set; }

    public IReadOnlyList<(int Code, double Value)> Numbers => _numbers ?? [];

    /// <summary>Vertices of an old polyline.</summary>
    public List<DxfEntity> Vertices => _vertices ??= [];

    public void Take(int code, ReadOnlySpan<char> value)
    {
        if (code == 8)
        {
            Layer = value.ToString();
        }
        else if (code == 2)
        {
            Name = value.ToString();
        }
        else if (code is (>= 10 and <= 59) or (>= 60 and <= 79) or (>= 210 and <= 239))
        {
            if (Numeral.TryParse(value, out double number))
            {
                _numbers ??= [];
                if (_numbers.Count < MostNumbers)
                {
                    _numbers.Add((code, number));
                }
                else
                {
                    // More than any curve of a board: the entity is left out as a whole.
                    BadNumbers++;
                }
            }
            else
            {
                BadNumbers++;
            }
        }
    }

    public double Number(int code, double otherwise = 0)
    {
        foreach ((int c, double v) in Numbers)
        {
            if (c == code)
            {
                return v;
            }
        }

        return otherwise;
    }

    public Point2 Point(int code = 10) => new(Number(code), Number(code + 10));

    public bool IsPaper => Number(67) == 1;

    /// <summary>The extrusion direction's z: -1 for a drawing seen from below, whose x runs the other way.</summary>
    public double ExtrusionZ => Number(230, 1);

    public bool IsTilted => Math.Abs(Number(210)) > EcadTolerances.SamePoint || Math.Abs(Number(220)) > EcadTolerances.SamePoint;
}
