using ShellForge.Board.Yaml.Resolving;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Merging;

/// <summary>Whether a loop crosses itself, looked at as the board file's reader does, arcs as chords.</summary>
internal static class SelfCrossing
{
    private const int ChordsPerQuarter = 4;

    // Beyond it the board file's reader looks itself; here the time is bounded.
    private const int MostCorners = 5000;

    /// <summary>A place where it does, in file coordinates; null when it doesn't, or is too detailed or too large to look at.</summary>
    public static Point2? Of(OutlineLoop loop)
    {
        Point2 middle = loop.Bounds.Centre;
        if (loop.Circle is not null || loop.Segments.Count > MostCorners / (2 * ChordsPerQuarter)
            || loop.Bounds.Size.Length / 2 >= Lattice.LimitMillimetres)
        {
            return null;
        }

        var corners = new List<Point2>();
        foreach (EdgeSegment s in loop.Segments.Where(s => s.Length > 4 * EcadTolerances.SamePoint))
        {
            int chords = s.IsArc ? Math.Max(2, (int)Math.Ceiling(Math.Abs(s.SweepDegrees) / 90 * ChordsPerQuarter)) : 1;
            for (int i = 0; i < chords; i++)
            {
                corners.Add(s.At((double)i / chords) - middle);
            }
        }

        return corners.Count >= 3 && corners.TrueForAll(p => p.Length < Lattice.LimitMillimetres)
            && OutlinePath.Crossing(corners) is { } there ? there + middle : null;
    }
}
