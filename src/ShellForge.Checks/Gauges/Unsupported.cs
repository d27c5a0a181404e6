using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>What holds an unsupported piece of a layer.</summary>
internal enum Hold
{
    /// <summary>Nothing: it starts in the air.</summary>
    None,

    /// <summary>One side.</summary>
    Cantilever,

    /// <summary>Both sides.</summary>
    Bridge,
}

/// <summary>A piece of a layer with nothing below it.</summary>
/// <param name="Hold">What holds it.</param>
/// <param name="Reach">Span of a bridge, or the farthest point's distance from what holds a cantilever, mm; size of an island.</param>
/// <param name="At">A point in it.</param>
/// <param name="Area">Its area, mm2.</param>
internal readonly record struct UnsupportedPiece(Hold Hold, double Reach, Point2 At, double Area);

/// <summary>Looks at one layer over the one below.</summary>
internal static class Unsupported
{
    // Flecks that together are longer than so many lines of plastic belong to one overhang.
    private const double FlecksInARow = 3;

    // Between a half and the whole of a span.
    private const double HalfwayHeld = 0.75;

    // A piece that is narrower than this share of a step is the edge of a slope, not a gap between two ends.
    private const double LeastSpan = 0.25;

    private const int Directions = 12;
    private const int LinesAcross = 24;

    /// <summary>A scan line's end lies on supported material when it is this near, mm.</summary>
    private const double EndReach = 0.05;

    /// <summary>Mean width up to which a piece is a strip, mm: four lines, drawn along it from end to end.</summary>
    private const double WidestStrip = 1.8;

    /// <summary>Share of scan lines that must be held at both ends: rounded ends of slots always leave a few that are not.</summary>
    private const double HeldShare = 0.9;

    /// <summary>Pieces of a layer that stand out over the layer below by more than the overhang that prints.</summary>
    /// <param name="layer">Section of the layer.</param>
    /// <param name="below">Section of the layer below.</param>
    /// <param name="stepOut">How far a layer may stand out over the one below, mm.</param>
    /// <param name="line">Width of a line of plastic, mm: what is smaller than one in every direction is laid with the line that it hangs
    /// on.</param>
    public static ImmutableArray<UnsupportedPiece> Of(Region layer, Region below, double stepOut, double line)
    {
        if (Carried.IsAll(layer, below, stepOut * PrintTolerances.OverhangShare))
        {
            return [];
        }

        // What is carried is not taken out of the layer: rounding would leave hairs along its outline that seem to hold a piece.
        Region carried = below.IsEmpty ? below : below.Grown(stepOut * PrintTolerances.OverhangShare);
        Region free = layer.Without(carried);
        if (free.IsEmpty)
        {
            return [];
        }

        ImmutableArray<UnsupportedPiece>.Builder pieces = ImmutableArray.CreateBuilder<UnsupportedPiece>();
        var small = new List<UnsupportedPiece>();
        double flecks = 0;
        foreach (Region piece in free.Parts)
        {
            if (carried.IsEmpty || piece.Distance(carried) > EndReach)
            {
                Point2 size = piece.Bounds.Size;
                pieces.Add(new UnsupportedPiece(Hold.None, Math.Max(size.X, size.Y), ThinFeatures.InnerPoint(piece), piece.Area));
                continue;
            }

            double overhang = piece.Loops.SelectMany(loop => loop).Max(below.Distance);
            if (piece.Area < PrintTolerances.Area && overhang < 2 * stepOut)
            {
                // A sliver along a chamfer: the overhang's angle decides, not its area. Where two slants meet it is a fleck.
                double extent = Math.Max(piece.Bounds.Size.X, piece.Bounds.Size.Y);
                flecks += extent;
                if (extent >= line)
                {
                    pieces.Add(new UnsupportedPiece(Hold.Cantilever, overhang, ThinFeatures.InnerPoint(piece), piece.Area));
                }
                else
                {
                    small.Add(new UnsupportedPiece(Hold.Cantilever, overhang, ThinFeatures.InnerPoint(piece), piece.Area));
                }

                continue;
            }

            // What is carried reaches a step past the layer below. Held at both ends, the middle of a span s lies s / 2 and a step off;
            // held at one, its end lies s and a step off: halfway between decides.
            double? span = SmallestSpan(piece, carried) ?? SpanAlongStrip(piece, carried);
            pieces.Add(
                span is double bridge
                    && (bridge > overhang || (bridge > LeastSpan * stepOut && overhang < (HalfwayHeld * bridge) + stepOut))
                ? new UnsupportedPiece(Hold.Bridge, bridge, ThinFeatures.InnerPoint(piece), piece.Area)
                : new UnsupportedPiece(Hold.Cantilever, overhang, ThinFeatures.InnerPoint(piece), piece.Area));
        }

        // Many flecks in a row are one overhang that the corners of its outline break up.
        if (flecks > FlecksInARow * line)
        {
            pieces.AddRange(small);
        }

        return pieces.ToImmutable();
    }

    // A narrow strip that is held at both ends, such as the roof of a notch in a curved wall: straight scan lines leave it sideways. It is
    // as long as the rectangle of its area and outline.
    private static double? SpanAlongStrip(Region piece, Region carried)
    {
        double width = 2 * piece.Area / piece.Perimeter;
        return width <= WidestStrip && carried.Intersect(piece.Grown(EndReach)).Parts.Length >= 2
            ? ((piece.Perimeter / 2) + ThinFeatures.SidesDifference(piece)) / 2
            : null;
    }

    // A slicer lays a bridge in the direction that needs the least span. Null when no direction is held at both ends.
    private static double? SmallestSpan(Region piece, Region carried)
    {
        double? best = null;
        for (int d = 0; d < Directions; d++)
        {
            if (SpanAlong(Angle.FromDegrees(180.0 * d / Directions), piece, carried) is double span && (best is null || span < best))
            {
                best = span;
            }
        }

        return best;
    }

    // The piece's corners are turned until the direction lies along x; the ends of the scan lines are turned back.
    private static double? SpanAlong(Angle direction, Region piece, Region carried)
    {
        ImmutableArray<Point2>[] loops =
            [.. piece.Loops.Select(loop => loop.Select(corner => corner.Turned(Angle.Zero - direction)).ToImmutableArray())];
        Box2 bounds = Box2.Of(loops.SelectMany(loop => loop));
        int lines = 0;
        int heldLines = 0;
        double span = 0;
        for (int i = 0; i < LinesAcross; i++)
        {
            double y = bounds.Min.Y + (bounds.Size.Y * (i + 0.5) / LinesAcross);
            double[] crossings = ScanLines.Crossings(loops, y);
            for (int c = 0; c + 1 < crossings.Length; c += 2)
            {
                lines++;
                if (IsHeld(crossings[c]) && IsHeld(crossings[c + 1]))
                {
                    heldLines++;
                    span = Math.Max(span, crossings[c + 1] - crossings[c]);
                }
            }

            bool IsHeld(double x)
            {
                Point2 end = new Point2(x, y).Turned(direction);
                return carried.IsNearOutline(end, EndReach) || carried.Contains(end);
            }
        }

        return lines > 0 && heldLines >= HeldShare * lines ? span : null;
    }
}
