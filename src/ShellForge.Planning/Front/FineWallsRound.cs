using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Front;

/// <summary>
/// Walls while they are mended beside one cut after the other. Each looks at what lies round its cut alone, and all that is added and taken
/// goes into the whole at once: a ring of 240 cells would otherwise be laid over itself anew for each of them.
/// </summary>
/// <param name="inside">Where walls may be thickened.</param>
/// <param name="posts">What goes through the baffle.</param>
/// <param name="taken">What stands beside the walls.</param>
/// <param name="line">Width of a line, mm.</param>
/// <param name="two">Width of a wall of two lines, mm.</param>
internal sealed class FineWallsRound(Region inside, Region posts, Region[] taken, double line, double two)
{
    // What is looked at round a cut reaches farther than slivers of it and two lines beside them, mm.
    private const double Around = 5;

    // Walls of two lines that lie on the lattice and along chords are narrower by so much at most, as a share.
    private const double Chords = 0.05;

    private readonly List<Mended> _mended = [];

    /// <summary>The walls as they were when all was settled last.</summary>
    public Region Left { get; set; } = Region.Empty;

    /// <summary>What was added.</summary>
    public Region Thicker { get; private set; } = Region.Empty;

    /// <summary>
    /// Mends the walls beside some cuts: thickens what they leave finer than two lines, where slicers stretch one line or strew dots, and
    /// gives what is finer than one even so and has to go.
    /// </summary>
    public Region Beside(IReadOnlyCollection<Region> cuts)
    {
        if (cuts.Count == 0 || Left.IsEmpty)
        {
            return Region.Empty;
        }

        var cut = Region.Union(cuts);
        Box2 window = cut.Bounds.Grown(Around + two);
        Region left = Left.Intersect(Region.Rectangle(window.Min, window.Max));
        foreach (Mended earlier in _mended.Where(each => each.Box.Touches(window)))
        {
            left = left.And(earlier.Free).Less(earlier.Less);
        }

        Region slivers = Slivers.Beside(left, cuts, (1 - Chords) * two);
        if (slivers.IsEmpty)
        {
            return Region.Empty;
        }

        Region wide = slivers.Offset(two);
        Region free = wide.Intersect(inside).Less(cut).Less(posts)
            .Less(Region.Union(taken.Where(body => body.Bounds.Touches(wide.Bounds))));
        Region less = Slivers.Beside(left.And(free), cuts, line);
        Region added = free.Less(less);
        for (int i = 0; i < _mended.Count; i++)
        {
            // The last word on a place holds.
            if (_mended[i].Box.Touches(window))
            {
                _mended[i] = _mended[i] with { Free = _mended[i].Free.Less(less), Less = _mended[i].Less.Less(free) };
            }
        }

        _mended.Add(new Mended(window, added, less, added));
        return less;
    }

    /// <summary>Lays all that was added and taken over the walls.</summary>
    public void Settle()
    {
        if (_mended.Count == 0)
        {
            return;
        }

        Left = Left.And(Region.Union(_mended.Select(each => each.Free))).Less(Region.Union(_mended.Select(each => each.Less)));
        Thicker = Thicker.And(Region.Union(_mended.Select(each => each.Added)));
        _mended.Clear();
    }

    // What was added stays added over a later cut, which is not as high as the walls.
    private sealed record Mended(Box2 Box, Region Free, Region Less, Region Added);
}
