using System.Globalization;
using System.Text;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Step;

/// <summary>
/// The entities of an exchange file, each with its number. Equal directions, points and vectors are one entity. The head carries a
/// fixed date, so the same part gives the same bytes.
/// </summary>
internal sealed class StepText
{
    // Entities share a line until it is so long: a line each makes a file larger by a fortieth.
    private const int LineLength = 400;

    private readonly List<string> _entities = [];
    private readonly Dictionary<(long X, long Y, long Z), List<Point3>> _directions = [];
    private readonly Dictionary<string, int> _known = new(StringComparer.Ordinal);

    /// <summary>Adds an entity.</summary>
    /// <returns>Its number, as others refer to it until the file is written.</returns>
    public int Add(string entity)
    {
        _entities.Add(entity);
        return _entities.Count;
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

    /// <summary>A direction of any length, or one from before that leads to within a lattice step of where it does.</summary>
    /// <param name="d">The direction.</param>
    /// <param name="reach">How far it is followed, mm.</param>
    public (int Number, Point3 Unit) Direction(Point3 d, double reach)
    {
        Point3 unit = 1 / d.Length * d;
        const double cells = 1000;
        (long, long, long) cell = ((long)Math.Round(cells * unit.X), (long)Math.Round(cells * unit.Y), (long)Math.Round(cells * unit.Z));
        if (!_directions.TryGetValue(cell, out List<Point3>? near))
        {
            _directions.Add(cell, near = []);
        }

        int before = near.FindIndex(other => reach * Point3.Distance(other, unit) <= Lattice.Step);
        if (before < 0)
        {
            before = near.Count;
            near.Add(unit);
        }

        return (Direction(near[before]), near[before]);
    }

    /// <summary>A frame with its z along one direction.</summary>
    public int Frame(Point3 at, Point3 z, Point3 x) => Shared($"AXIS2_PLACEMENT_3D('',#{Point(at)},#{Direction(z)},#{Direction(x)})");

    /// <summary>A list of references.</summary>
    public static string List(IEnumerable<int> numbers) => "(" + string.Join(",", numbers.Select(n => $"#{n}")) + ")";

    /// <summary>A frame with its z along one direction, turned about it as readers like.</summary>
    public int Frame(Point3 at, int z) => Shared($"AXIS2_PLACEMENT_3D('',#{Point(at)},#{z},$)");

    /// <summary>
    /// A length, to a hundredth of a micrometre: the lattice is coarser. Rounding to it moved every length by up to a step: one that
    /// close to a tenth of a micrometre was made that long.
    /// </summary>
    public static string Length(double value)
    {
        double made = Math.Round(value, 4);
        return Real(value, Math.Abs(made - value) <= Lattice.Step ? "0.####" : "0.#####");
    }

    /// <summary>A part of a direction or an angle in radians: over a hand's width it strays by a hundredth of a micrometre.</summary>
    public static string Share(double value) => Real(value, "0.#######");

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
        {Lines()}ENDSEC;
        END-ISO-10303-21;

        """;

    // What is referred to most gets the shortest numbers: half of a file is references.
    private StringBuilder Lines()
    {
        int[] uses = new int[_entities.Count];
        foreach (string entity in _entities)
        {
            Rewritten(entity, number =>
            {
                uses[number - 1]++;
                return number;
            });
        }

        int[] order = [.. Enumerable.Range(0, uses.Length).OrderByDescending(i => uses[i])];
        int[] numbers = new int[uses.Length];
        for (int i = 0; i < order.Length; i++)
        {
            numbers[order[i]] = i + 1;
        }

        var lines = new StringBuilder();
        int from = 0;
        foreach (int i in order)
        {
            lines.Append(CultureInfo.InvariantCulture, $"#{numbers[i]}={Rewritten(_entities[i], number => numbers[number - 1])};");
            if (lines.Length - from >= LineLength)
            {
                lines.Append('\n');
                from = lines.Length;
            }
        }

        return lines.Length > from ? lines.Append('\n') : lines;
    }

    // Each reference outside quotes replaced by another number.
    private static StringBuilder Rewritten(string entity, Func<int, int> number)
    {
        var written = new StringBuilder(entity.Length);
        bool quoted = false;
        for (int i = 0; i < entity.Length; i++)
        {
            written.Append(entity[i]);
            quoted ^= entity[i] == '\'';
            if (entity[i] == '#' && !quoted)
            {
                int digits = i + 1;
                int before = 0;
                while (digits < entity.Length && char.IsAsciiDigit(entity[digits]))
                {
                    before = (10 * before) + (entity[digits++] - '0');
                }

                written.Append(CultureInfo.InvariantCulture, $"{number(before)}");
                i = digits - 1;
            }
        }

        return written;
    }
}
