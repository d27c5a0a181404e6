using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>
/// Roofs over the notches in a baffle's feet that would hang in the air: a roof held at both ends and no longer than a bridge stays level,
/// any other slopes up from what holds it, and what no slope reaches below the top is left out.
/// <code>
///   ████████████      ████████████      █████   ███
///   ███┌──┐█████      ███╱────╲███      ████╱   ███
///   ███│  │█████      ███│    │███      ███│    ███
///    a bridge            longer        beside a gap
/// </code>
/// </summary>
internal static class CarriedRoofs
{
    // Of the step out that prints a slope takes so much, so that rounding never goes past it.
    private const double ShareOfStep = 0.9;

    // What holds a roof is no farther from it than this, mm: more than rounding parts them by.
    private const double Touching = 0.05;

    // A cut goes past the faces of a wall by this, mm: its own face and the wall's, rounded apart, would leave hairs.
    private const double PastFaces = 0.1;

    // Walls are looked at with so much round a cut, mm.
    private const double Around = 3;

    // A slope stays over its own notch but for what goes past faces: farther apart than this, mm, slopes don't meet.
    private const double Apart = 0.5;

    /// <summary>What slopes cut, layer by layer, as notches over the ones that there are.</summary>
    /// <param name="draft">For layers, and what the printer lays in the air.</param>
    /// <param name="walls">Walls and bridges in plan at a height.</param>
    /// <param name="notches">The notches.</param>
    /// <param name="top">z of the walls' top.</param>
    public static ImmutableArray<BaffleNotch> Over(
        HousingDraft draft, Func<double, Region> walls, ImmutableArray<BaffleNotch> notches, double top)
    {
        double layer = draft.Basis.Layer;
        var limit = Angle.FromDegrees(draft.File.Print.Printer.OverhangDegrees);
        double step = ShareOfStep * layer * limit.Sin / limit.Cos;
        double bridge = draft.File.Print.Printer.BridgeNote;
        var slopes = ImmutableArray.CreateBuilder<BaffleNotch>();
        foreach (BaffleNotch[] group in Groups([.. notches.Where(notch => notch.Top < top - Layers.Slack)]))
        {
            Box2 box = Region.Union(group.Select(notch => notch.Outline)).Bounds.Grown(Around);
            var look = Region.Rectangle(box.Min, box.Max);
            var section = new Section(walls, look, [.. notches.Where(notch => notch.Outline.Bounds.Touches(box))]);
            Region cut = Region.Empty;
            Region below = Region.Empty;
            double next;
            for (double z = group.Min(notch => notch.Top); z < top - Layers.Slack; z = next)
            {
                next = draft.Basis.Up(z + (layer / 2));
                BaffleNotch[] starting = [.. group.Where(notch => notch.Top > z - (layer / 2) && notch.Top < z + (layer / 2))];
                if (cut.IsEmpty && starting.Length == 0)
                {
                    continue;
                }

                below = cut.IsEmpty ? section.At(z - (layer / 2)) : below;
                Region wanted = section.At(z + (layer / 2));
                Region carried = below.Offset(step);
                bool thin = !cut.IsEmpty && z > top - BaffleNotches.RoofLeast;
                Region over = Region.Union(starting.Select(notch => notch.Outline).Prepend(cut));
                cut = Region.Union(wanted.Intersect(over).Less(carried).Parts
                    .Where(piece => thin || !IsLaid(piece, carried, bridge, step)));
                if (cut.IsEmpty)
                {
                    continue;
                }

                cut = cut.Offset(PastFaces).Less(carried);
                Region slivers = Slivers.Beside(wanted.Less(cut), [cut], draft.Basis.LineWidth);
                double end = next > top - Layers.Slack ? draft.Stack.Front : next;

                // Into the room below it, but not to the middle of a layer, where a slicer looks.
                slopes.Add(new BaffleNotch(cut, end, group[0].For) { IsSlope = true, From = z - (layer / 4) });
                if (!slivers.IsEmpty)
                {
                    // What stands below a sliver would be left alone.
                    slopes.Add(new BaffleNotch(slivers, end, group[0].For) { IsSlope = true });
                    cut = cut.And(slivers);
                }

                below = wanted.Less(cut);
            }
        }

        return slopes.ToImmutable();
    }

    // A fleck is laid with the line that it hangs on, a bridge from end to end.
    private static bool IsLaid(Region piece, Region carried, double bridge, double step)
    {
        Point2 size = piece.Bounds.Size;
        return Math.Max(size.X, size.Y) < step
            || (Length(piece) <= bridge && carried.Intersect(piece.Offset(Touching)).Parts.Length > 1);
    }

    // Of the rectangle that has a piece's area and perimeter.
    private static double Length(Region piece)
    {
        double half = piece.Perimeter / 2;
        return (half + Math.Sqrt(Math.Max(0, (half * half) - (4 * piece.Area)))) / 2;
    }

    // Notches so near to one another that a slope over one may meet the next.
    private static List<BaffleNotch[]> Groups(BaffleNotch[] notches)
    {
        var groups = new List<BaffleNotch[]>();
        foreach (BaffleNotch notch in notches)
        {
            Box2 reach = notch.Outline.Bounds.Grown(Apart);
            BaffleNotch[][] met = [.. groups.Where(group => group.Any(other => other.Outline.Bounds.Touches(reach)))];
            groups.RemoveAll(met.Contains);
            groups.Add([.. met.SelectMany(group => group), notch]);
        }

        return groups;
    }

    // Walls near a group, less the notches that reach to a height; the same from one layer to the next but where a notch ends.
    private sealed class Section(Func<double, Region> walls, Region look, BaffleNotch[] notches)
    {
        private readonly List<(Region Walls, int Higher, Region Left)> _known = [];

        public Region At(double z)
        {
            Region all = walls(z);
            BaffleNotch[] higher = [.. notches.Where(notch => notch.IsAt(z))];
            int known = _known.FindIndex(one => ReferenceEquals(one.Walls, all) && one.Higher == higher.Length);
            if (known < 0)
            {
                known = _known.Count;
                _known.Add((all, higher.Length, all.Intersect(look).Less(Region.Union(higher.Select(notch => notch.Outline)))));
            }

            return _known[known].Left;
        }
    }
}
