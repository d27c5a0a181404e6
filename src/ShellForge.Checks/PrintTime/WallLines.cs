using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.PrintTime;

/// <summary>
/// The lines along the outlines of a section. Lines lie side by side at <see cref="Spacing"/>; where a wall holds no whole count of them, a
/// slicer widens its lines or lays one more in the middle, so that the plastic is that of the area.
/// </summary>
internal sealed class WallLines
{
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
    public static WallLines Of(Region section, PrinterProfile printer, double height)
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
}
