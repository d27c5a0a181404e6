using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Geometry.Solids;

/// <summary>A counter-clockwise outline in (r, z) turned about the z axis. Equal radii share one ring.</summary>
internal sealed class Revolution
{
    private readonly ImmutableArray<Point2> _profile;
    private readonly int _count;
    private readonly SourceBuilder _builder = new();
    private readonly int[][] _rings;

    public Revolution(ImmutableArray<Point2> profile, int count, Angle phase, RingSide side)
    {
        _profile = profile;
        _count = count;
        var ringOf = new Dictionary<double, ImmutableArray<Point2>>();
        _rings = [.. profile.Select(corner => Ring(corner, ringOf, phase, side))];
    }

    public SourceSolid ToSolid()
    {
        for (int i = 0; i < _profile.Length; i++)
        {
            int j = (i + 1) % _profile.Length;
            bool onAxis = _profile[i].X == 0 && _profile[j].X == 0;
            if (!onAxis)
            {
                AddBand(_rings[i], _rings[j], isLevel: _profile[i].Y == _profile[j].Y);
            }
        }

        return _builder.ToSolid();
    }

    private int[] Ring(Point2 corner, Dictionary<double, ImmutableArray<Point2>> ringOf, Angle phase, RingSide side)
    {
        if (corner.X < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(corner), corner.X, "A profile's radius can't be negative.");
        }

        if (corner.X == 0)
        {
            int pole = _builder.Corner(new Point3(0, 0, corner.Y));
            return [.. Enumerable.Repeat(pole, _count)];
        }

        if (!ringOf.TryGetValue(corner.X, out ImmutableArray<Point2> points))
        {
            points = new Ring(corner.X, side, _count, phase).Points;
            ringOf.Add(corner.X, points);
        }

        return [.. points.Select(p => _builder.Corner(new Point3(p.X, p.Y, corner.Y)))];
    }

    // Seen along the outline the body lies left, so outward is right: the band runs first ring, next corner, second ring.
    private void AddBand(int[] first, int[] second, bool isLevel)
    {
        int level = isLevel ? _builder.NewSheet() : -1;
        for (int k = 0; k < _count; k++)
        {
            int l = (k + 1) % _count;
            if (isLevel)
            {
                _builder.Triangle(first[k], first[l], second[l], level);
                _builder.Triangle(first[k], second[l], second[k], level);
            }
            else
            {
                _builder.Quad(first[k], first[l], second[l], second[k]);
            }
        }
    }
}
