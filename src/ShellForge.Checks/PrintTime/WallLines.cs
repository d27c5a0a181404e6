using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Remembering;

namespace ShellForge.Checks.PrintTime;

/// <summary>
/// The lines along the outlines of a section. Lines lie side by side at <see cref="Spacing"/>; where a wall holds no whole count of them, a
/// slicer widens its lines or lays one more in the middle, so that the plastic is that of the area.
/// </summary>
internal sealed class WallLines
{
    // What a line takes beside its points, and a point, about.
    private const long BytesOfLine = 64;
    private const long BytesOfPoint = 16;

    private WallLines(ImmutableArray<LaidLine> loops, Region inside, double area) => (Loops, Inside, Area) = (loops, inside, area);

    /// <summary>The loops, from the outside in.</summary>
    public ImmutableArray<LaidLine> Loops { get; }

    /// <summary>Where strokes of skin and infill run: their middles reach to its outline.</summary>
    public Region Inside { get; }

    /// <summary>Area of the section that the lines fill, mm2.</summary>
    public double Area { get; }

    /// <summary>Distance of lines side by side, mm: rounded sides overlap so that no gap is left.</summary>
    public static double Spacing(PrinterProfile printer, double height) => printer.LineWidth - (height * (1 - (Math.PI / 4)));

    /// <summary>The lines of a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="height">Height of its layer, mm.</param>
    /// <param name="memory">Knows the lines of sections that were laid before.</param>
    public static WallLines Of(Region section, PrinterProfile printer, double height, WorkMemory memory) =>
        memory.Of(new LinesKey(section, printer.LineWidth, printer.Motion.Perimeters, height),
            () => Of(section, printer, height), lines => RegionWeight.Of(section) + lines.Bytes);

    private static WallLines Of(Region section, PrinterProfile printer, double height)
    {
        // Infill reaches into the innermost line by a share of a line, to bind; typical of slicers.
        const double overlapInLines = 0.25;
        double spacing = Spacing(printer, height);
        double outer = (printer.LineWidth - spacing) / 2;
        int count = (int)printer.Motion.Perimeters;
        var loops = ImmutableArray.CreateBuilder<LaidLine>();
        for (int i = 0; i < count; i++)
        {
            Region middle = section.Grown(-(outer + ((i + 0.5) * spacing)));
            if (middle.IsEmpty)
            {
                break;
            }

            loops.AddRange(middle.Loops.Select(loop => new LaidLine(i == 0 ? LineKind.Outer : LineKind.Inner, [.. loop, loop[0]])));
        }

        double inset = (0.5 - overlapInLines) * spacing;
        Region inside = section.Grown(-(outer + (count * spacing) + inset));
        double within = inside.IsEmpty ? 0 : inside.Area + (inset * inside.Perimeter);
        return new WallLines(loops.ToImmutable(), inside, section.Area - (outer * section.Perimeter) - within);
    }

    /// <summary>The same with the stretches that have nothing below told apart: they are laid as threads in air.</summary>
    /// <param name="section">This section.</param>
    /// <param name="below">The section of the layer below.</param>
    /// <param name="printer">The printer.</param>
    public WallLines Over(Region section, Region below, PrinterProfile printer)
    {
        // Lines hold as long as their middle is no farther out than half a nozzle; typical of slicers.
        double reach = printer.Nozzle / 2;
        double step = printer.LineWidth;
        return Hatch.Of(section, step).Less(Hatch.Of(below, step), reach).Area > 0
            ? new WallLines([.. Loops.SelectMany(loop => Told(loop, below, reach))], Inside, Area)
            : this;
    }

    private long Bytes => RegionWeight.Of(Inside) + Loops.Sum(loop => BytesOfLine + (BytesOfPoint * loop.Points.Length));

    private static IEnumerable<LaidLine> Told(LaidLine loop, Region below, double reach)
    {
        // Long sides are looked at every millimetre.
        const double look = 1;
        var points = new List<Point2> { loop.Points[0] };
        for (int i = 1; i < loop.Points.Length; i++)
        {
            (Point2 from, Point2 to) = (loop.Points[i - 1], loop.Points[i]);
            int parts = Math.Max(1, (int)Math.Ceiling(Point2.Distance(from, to) / look));
            points.AddRange(Enumerable.Range(1, parts).Select(k => k == parts ? to : from + ((double)k / parts * (to - from))));
        }

        bool[] hangs =
            [.. Enumerable.Range(1, points.Count - 1).Select(i => 0.5 * (points[i - 1] + points[i]))
                .Select(middle => !below.Contains(middle) && !below.IsNearOutline(middle, reach))];
        if (!hangs.Contains(true))
        {
            yield return loop;
            yield break;
        }

        for (int from = 0; from < hangs.Length;)
        {
            int to = from + 1;
            while (to < hangs.Length && hangs[to] == hangs[from])
            {
                to++;
            }

            yield return new LaidLine(hangs[from] ? LineKind.Bridge : loop.Kind, [.. points[from..(to + 1)]]);
            from = to;
        }
    }

    private sealed record LinesKey(Region Section, double LineWidth, double Perimeters, double Height);
}
