using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;

namespace ShellForge.Housing.Features;

/// <summary>
/// Cutters that take a 45 degree chamfer off edges that lie on the bed, so that the spread of the first layers ends inside the part's
/// outline. They go on past bed and wall by <see cref="OutlineOffsets.ChamferReach"/>.
/// </summary>
internal static class BedChamfers
{
    /// <summary>Cutters for all outlines of a body's face on the bed: outer edges and holes.</summary>
    /// <param name="face">The face on the bed, in plan.</param>
    /// <param name="bedZ">z of the bed in the assembled frame.</param>
    /// <param name="leg">Leg of the chamfer, mm; 0 for none.</param>
    /// <param name="towardsViewer">Whether the bed lies on the viewer's side (the body printed face down), otherwise on the far
    /// side.</param>
    public static IEnumerable<Solid> OfBody(Region face, double bedZ, double leg, bool towardsViewer)
    {
        if (leg <= 0 || face.IsEmpty)
        {
            yield break;
        }

        foreach (ImmutableArray<Point2> loop in face.Loops)
        {
            bool isHole = Area(loop) < 0;
            ImmutableArray<Point2> ccw = isHole ? [.. loop.Reverse()] : loop;
            if (Along(ccw, bedZ, leg, towardsViewer, isHole) is Solid cutter)
            {
                yield return cutter;
            }
        }
    }

    /// <summary>The cutter along one outline; null when its corners are too tight.</summary>
    private static Solid? Along(ImmutableArray<Point2> ccw, double bedZ, double leg, bool towardsViewer, bool isHole)
    {
        double reach = OutlineOffsets.ChamferReach;
        double sign = isHole ? 1 : -1;

        // What is kept stands out of the slab at both ends: no two caps lie in one plane, whichever way the part is turned.
        double past = isHole ? 0 : FeatureContribution.Overlap;
        ImmutableArray<Point2>? inBody = OutlineOffsets.Mitred(ccw, -sign * (reach + past));
        ImmutableArray<Point2>? pastBed = OutlineOffsets.Mitred(ccw, sign * (leg + reach + past));
        if (inBody is not ImmutableArray<Point2> far || pastBed is not ImmutableArray<Point2> near)
        {
            return null;
        }

        // The slope meets the outline a leg inside the body and goes on by the reach, there and past the bed.
        double direction = towardsViewer ? 1 : -1;
        double farZ = bedZ - (direction * (leg + reach));
        double nearZ = bedZ + (direction * reach);
        double farEnd = farZ - (direction * past);
        double nearEnd = nearZ + (direction * past);
        Solid slope = farEnd < nearEnd ? Shapes.Loft(far, farEnd, near, nearEnd) : Shapes.Loft(near, nearEnd, far, farEnd);
        if (isHole)
        {
            return slope;
        }

        ImmutableArray<Point2>? beyond = OutlineOffsets.Mitred(ccw, 2 * (reach + past));
        return beyond is not ImmutableArray<Point2> outside
            ? null
            : Shapes.Extrude(Region.Polygon(outside), Math.Min(farZ, nearZ), Math.Max(farZ, nearZ)).Less(slope);
    }

    private static double Area(ImmutableArray<Point2> loop)
    {
        double twice = 0;
        for (int i = 0; i < loop.Length; i++)
        {
            twice += Point2.Cross(loop[i], loop[(i + 1) % loop.Length]);
        }

        return twice / 2;
    }
}
