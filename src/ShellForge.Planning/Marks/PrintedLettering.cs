using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Marks;

/// <summary>Lettering that a printer draws: strokes never narrower than a line, and room for a line between them.</summary>
public static class PrintedLettering
{
    /// <summary>Least width of a stroke, mm. Source: trade practice for raised and engraved text.</summary>
    public const double StrokeLeast = 0.6;

    // Source: the same; widths of strokes are a share of the height between two ends.
    private const double StrokeShare = 0.16;
    private const double StrokeMost = 1.2;

    // From stroke to stroke within most letters, in grid units: what is left between them must be a line of plastic.
    private const double Counter = 2;

    // Half a line, and a little that arcs drawn with corners and shrinkage take.
    private const double HairShare = 0.53;

    // Diameter of a dot: two lines, and what the corners of its polygon take, mm.
    private const double DotLines = 2;
    private const double DotOver = 0.1;

    /// <summary>The least height at which the room between strokes stays as wide as a line, rounded up to a tenth, mm.</summary>
    public static double LeastHeight(PrintBasis basis)
    {
        double stroke = Stroke(0, basis);
        return PlanRules.UpToTenth(stroke + (StrokeFont.CapHeight / Counter * (stroke + basis.LineWidth)));
    }

    /// <summary>Width of a line of text, and its height from the deepest descender to the top of capitals, mm.</summary>
    /// <param name="text">Printable ASCII.</param>
    /// <param name="height">Height of capitals, mm.</param>
    /// <param name="basis">The printer's lines.</param>
    public static (double Width, double Tall) Size(string text, double height, PrintBasis basis)
    {
        _ = StrokeFont.Strokes(text, out double units);
        double stroke = Stroke(height, basis);
        double unit = (height - stroke) / StrokeFont.CapHeight;
        return ((units * unit) + stroke, height + (StrokeFont.Descent * unit));
    }

    /// <summary>A line of text in plan, its middle at the origin, read along +x.</summary>
    /// <param name="text">Printable ASCII; unknown characters leave a blank.</param>
    /// <param name="height">Height of capitals, mm.</param>
    /// <param name="basis">The printer's lines.</param>
    public static Region Of(string text, double height, PrintBasis basis)
    {
        ImmutableArray<ImmutableArray<Point2>> strokes = StrokeFont.Strokes(text, out double units);
        double stroke = Stroke(height, basis);
        double unit = (height - stroke) / StrokeFont.CapHeight;
        Point2 start = new(-units * unit / 2, -((StrokeFont.CapHeight - StrokeFont.Descent) * unit / 2));
        return WithoutHairs(Region.Union(strokes.SelectMany(corners => corners.Length == 1
            ? [Dot(corners[0], strokes, unit, start, stroke, basis.LineWidth)]
            : Drawn(corners, unit, start, stroke))), basis.LineWidth);
    }

    // Never narrower than a line, which the slicer would leave out.
    private static double Stroke(double height, PrintBasis basis) =>
        Math.Clamp(StrokeShare * height, Math.Max(StrokeLeast, basis.LineWidth), Math.Max(StrokeMost, basis.LineWidth));

    // Where strokes meet at a point, what is left between them gets finer than a line: it is filled up, as the printer would.
    private static Region WithoutHairs(Region strokes, double line) =>
        OutlineOffsets.WithoutSlivers(strokes.Offset(HairShare * line).Offset(-HairShare * line).And(strokes));

    // A dot as small as a stroke is wide has no room for a turn of the nozzle: slicers leave it out now and then. It grows to two lines and
    // a little, as far as its neighbours leave it free.
    private static Region Dot(
        Point2 corner, ImmutableArray<ImmutableArray<Point2>> strokes, double unit, Point2 start, double stroke, double line)
    {
        double nearest =
            strokes.SelectMany(other => other).Where(other => other != corner).Select(other => Point2.Distance(other, corner))
                .DefaultIfEmpty(StrokeFont.CapHeight).Min();
        double free = 2 * ((nearest * unit) - (stroke / 2) - line);
        Point2 at = Lattice.Snap(start + (unit * corner));
        return Region.Slot(at, at, Math.Max(stroke, Math.Min((DotLines * line) + DotOver, free)));
    }

    private static IEnumerable<Region> Drawn(ImmutableArray<Point2> corners, double unit, Point2 start, double stroke)
    {
        for (int i = 0; i + 1 < corners.Length; i++)
        {
            Point2 from = start + (unit * corners[i]);
            Point2 to = start + (unit * corners[i + 1]);
            yield return Region.Slot(Lattice.Snap(from), Lattice.Snap(to), stroke);
        }
    }
}
