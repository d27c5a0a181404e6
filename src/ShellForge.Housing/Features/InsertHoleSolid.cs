using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>The room that a blind hole for an insert takes out of a post: bottom, straight or tapered side, lead-in.</summary>
public static class InsertHoleSolid
{
    /// <summary>The room of a hole.</summary>
    /// <param name="at">Its axis.</param>
    /// <param name="top">z of the post's top; the room reaches a little over it.</param>
    /// <param name="hole">Its sizes.</param>
    public static Solid Of(Point2 at, double top, InsertHolePlan hole)
    {
        double radius = hole.Diameter / 2;
        double mouth = hole.MouthDiameter / 2;
        double past = FeatureContribution.Overlap;
        double bottom = top - hole.Depth;
        var profile = ImmutableArray.CreateBuilder<Point2>();
        profile.Add(new Point2(0, bottom));
        if (hole.LeadIn > 0)
        {
            profile.Add(new Point2(radius, bottom));
            profile.Add(new Point2(mouth, top - hole.LeadIn));
            profile.Add(new Point2(mouth + hole.LeadIn + past, top + past));
        }
        else
        {
            double length = hole.Insert.Length + hole.SetBelow;
            double slope = (mouth - radius) / length;

            // In a post that is lower than its insert the cone ends at the hole's bottom.
            if (length < hole.Depth)
            {
                profile.Add(new Point2(radius, bottom));
                profile.Add(new Point2(radius, top - length));
            }
            else
            {
                profile.Add(new Point2(mouth - (slope * hole.Depth), bottom));
            }

            profile.Add(new Point2(mouth + (slope * past), top + past));
        }

        profile.Add(new Point2(0, top + past));
        return Shapes.Revolve(profile.ToImmutable(), Ring.CountFor(mouth + hole.LeadIn), Angle.Zero, RingSide.Outside)
            .Moved(Transform3.Shift(at.X, at.Y, 0));
    }
}
