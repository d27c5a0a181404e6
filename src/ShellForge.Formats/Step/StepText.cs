using System.Globalization;
using System.Text;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// The lines of an exchange file, each an entity with its number. Equal directions, points and vectors are one entity. The head carries a
/// fixed date, so the same part gives the same bytes.
/// </summary>
internal sealed class StepText
{
    private readonly StringBuilder _lines = new();
    private readonly Dictionary<string, int> _known = new(StringComparer.Ordinal);
    private int _count;

    /// <summary>Adds an entity.</summary>
    /// <returns>Its number, as others refer to it.</returns>
    public int Add(string entity)
    {
        _lines.Append(CultureInfo.InvariantCulture, $"#{++_count}={entity};\n");
        return _count;
    }

    /// <summary>Adds an entity, or finds the one that reads the same.</summary>
    public int Shared(string entity)
    {
        if (!_known.TryGetValue(entity, out int number))
        {
            number = Add(entity);
            _known.Add(entity, number);
        }

        return number;
    }

    /// <summary>A point, mm.</summary>
    public int Point(Point3 p) => Shared($"CARTESIAN_POINT('',({Length(p.X)},{Length(p.Y)},{Length(p.Z)}))");

    /// <summary>A direction of any length.</summary>
    public int Direction(Point3 d)
    {
        Point3 unit = 1 / d.Length * d;
        return Shared($"DIRECTION('',({Share(unit.X)},{Share(unit.Y)},{Share(unit.Z)}))");
    }

    /// <summary>A frame with its z along one direction.</summary>
    public int Frame(Point3 at, Point3 z, Point3 x) => Shared($"AXIS2_PLACEMENT_3D('',#{Point(at)},#{Direction(z)},#{Direction(x)})");

    /// <summary>A list of references.</summary>
    public static string List(IEnumerable<int> numbers) => "(" + string.Join(",", numbers.Select(n => $"#{n}")) + ")";

    /// <summary>A frame with its z along one direction, turned about it as readers like.</summary>
    public int Frame(Point3 at, Point3 z) => Shared($"AXIS2_PLACEMENT_3D('',#{Point(at)},#{Direction(z)},$)");

    /// <summary>A length, to a hundredth of a micrometre: the lattice is coarser.</summary>
    public static string Length(double value) => Real(value, "0.#####");

    /// <summary>A part of a direction or an angle in radians: over a metre it strays by a nanometre.</summary>
    public static string Share(double value) => Real(value, "0.#########");

    // As short as the standard has numbers: a point belongs to them, digits after it do not.
    private static string Real(double value, string digits)
    {
        string text = value.ToString(digits, CultureInfo.InvariantCulture);
        return text == "-0" ? "0." : text.Contains('.', StringComparison.Ordinal) ? text : text + ".";
    }

    /// <summary>Text between quotes: letters that the format does not have are left out of it as the standard says.</summary>
    public static string Quoted(string text)
    {
        var quoted = new StringBuilder("'");
        foreach (char c in text)
        {
            quoted.Append(c switch
            {
                '\'' => "''",
                '\\' => "\\\\",
                < ' ' or > '~' => string.Create(CultureInfo.InvariantCulture, $"\\X2\\{(int)c:X4}\\X0\\"),
                _ => c.ToString(),
            });
        }

        return quoted.Append('\'').ToString();
    }

    /// <summary>The whole file.</summary>
    public string File(string name) =>
        $"""
        ISO-10303-21;
        HEADER;
        FILE_DESCRIPTION(('housing part'),'2;1');
        FILE_NAME({Quoted(name)},'1980-01-01T00:00:00',(''),(''),'ShellForge','ShellForge','');
        FILE_SCHEMA(('AUTOMOTIVE_DESIGN'));
        ENDSEC;
        DATA;
        {_lines}ENDSEC;
        END-ISO-10303-21;

        """;
}
