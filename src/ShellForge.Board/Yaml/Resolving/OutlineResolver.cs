using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Turns the outline, measured sizes and cutouts into the board's edge.</summary>
internal sealed class OutlineResolver(ParsedBoard board, DiagnosticSink sink)
{
    // Boards narrower than this everywhere hold neither a hole nor an LED, mm.
    private const double Narrowest = 2;

    // Some fifty full circles in chords.
    private const int MostPoints = 20_000;

    /// <summary>The board's centre in the file's coordinates: circles and polar places are counted about it.</summary>
    public Point2 Centre { get; private set; } = board.Centre.Or(Point2.Origin);

    /// <summary>
    /// Where plans have their origin, in the file's coordinates: the centre, unless that lies off the board or hard at its edge. Directions
    /// are looked at from there, and each has to meet the board's edge.
    /// </summary>
    public Point2 Origin { get; private set; } = board.Centre.Or(Point2.Origin);

    /// <summary>The outline, centred; null when it cannot be made, which then has been told.</summary>
    public BoardOutline? Resolve()
    {
        if (!board.Outline.Given)
        {
            return null;
        }

        ParsedOutline said = board.Outline.Value;
        BoardOutline? outline =
            said.Disc.Given ? Disc(said.Disc)
            : said.Ring.Given ? Ring(said.Ring)
            : said.Polygon.Given ? Polygon(said.Polygon)
            : said.Arcs.Given ? Polygon(said.Arcs)
            : null;
        return outline is null ? null : WithCutouts(outline);
    }

    private ParsedMeasured? Measured => board.Measured.Given ? board.Measured.Value : null;

    private DiscOutline Disc(Parsed<double> diameter)
    {
        if (Measured is { Bore.Given: true } measured)
        {
            sink.Error(measured.Bore.Place, "measured-without-bore", "a bore was measured, but the outline has none",
                "expected an outline {ring: ...}");
        }

        return new DiscOutline(Measured is { Outer.Given: true } m ? m.Outer.Value : diameter.Value);
    }

    private RingOutline? Ring(Parsed<ParsedRing> ring)
    {
        if (!ring.Value.Outer.Given || !ring.Value.Bore.Given)
        {
            return null;
        }

        Parsed<double> outer = Measured is { Outer.Given: true } o ? o.Outer : ring.Value.Outer;
        Parsed<double> bore = Measured is { Bore.Given: true } b ? b.Bore : ring.Value.Bore;
        if (outer.Value - bore.Value < 2 * Narrowest)
        {
            sink.Error(
                bore.Place,
                "bore-too-wide",
                $"a bore of {NumberText.Written(bore.Value)} leaves no ring in an outer diameter of {NumberText.Written(outer.Value)}",
                $"expected at most {NumberText.Written(Math.Max(0, outer.Value - (2 * Narrowest)))}");
            return null;
        }

        return new RingOutline(outer.Value, bore.Value);
    }

    private PolygonOutline? Polygon(Parsed<ImmutableArray<OutlineCorner>> corners)
    {
        if (Measured is { } measured && (measured.Outer.Given || measured.Bore.Given))
        {
            Parsed<double> which = measured.Outer.Given ? measured.Outer : measured.Bore;
            sink.Error(which.Place, "measured-without-circle", "a diameter was measured, but the outline is no disc or ring",
                "expected measured sizes of what the outline has");
        }

        ImmutableArray<Point2> points = OutlinePath.Points(corners.Value);
        if (!board.Centre.Given && points.Length > 0)
        {
            Centre = new Point2(
                (points.Min(p => p.X) + points.Max(p => p.X)) / 2, (points.Min(p => p.Y) + points.Max(p => p.Y)) / 2);
            Origin = Centre;
        }

        if (Shape(corners, points) is not { } region)
        {
            return null;
        }

        Region inner = region.Grown(-Narrowest / 2);
        if (inner.IsEmpty)
        {
            sink.Error(
                corners.Place, "outline-too-narrow", $"the outline is nowhere {NumberText.Written(Narrowest)} mm wide",
                "expected the outline of a whole board");
            return null;
        }

        Point2 shift = PlanOrigin.In(region, inner);
        if (IsTooLarge(corners, points.Select(p => p - Origin - shift), "a place well inside it", ""))
        {
            return null;
        }

        Origin += shift;
        return new PolygonOutline(shift == Point2.Origin ? region : region.Moved(-1 * shift));
    }

    private BoardOutline? WithCutouts(BoardOutline outline)
    {
        if (!board.Cutouts.Given || board.Cutouts.Value.IsEmpty)
        {
            return outline;
        }

        Region cut = Region.Union(board.Cutouts.Value.Select(Cutout).OfType<Region>());
        Region rest = outline.Region.Less(cut);
        if (rest.Parts.Length != 1)
        {
            sink.Error(
                board.Cutouts.Place,
                "cutouts-split-board",
                rest.IsEmpty ? "the cutouts leave nothing of the board" : $"the cutouts cut the board into {rest.Parts.Length} pieces",
                "expected one piece");
            return null;
        }

        return outline switch
        {
            DiscOutline disc => disc with { Cutouts = cut },
            RingOutline ring => ring with { Cutouts = cut },
            _ => new PolygonOutline(rest),
        };
    }

    private Region? Cutout(ParsedCutout said)
    {
        if (said.Circle.Given)
        {
            Point2 at = (said.At.Given ? said.At.Value : Centre) - Origin;
            double radius = said.Circle.Value / 2;
            if (at.Length + radius > BoardKinds.LargestBoard / 2)
            {
                sink.Error(said.Circle.Place, "cutout-off-board", "the cutout lies far from the board",
                    "expected coordinates about the board's centre");
                return null;
            }

            return Region.Disc(at, Geometry.Planar.Ring.Hole(radius));
        }

        Parsed<ImmutableArray<OutlineCorner>> corners = said.Polygon.Given ? said.Polygon : said.Arcs;
        return corners.Given ? Shape(corners, OutlinePath.Points(corners.Value)) : null;
    }

    private Region? Shape(Parsed<ImmutableArray<OutlineCorner>> said, ImmutableArray<Point2> points)
    {
        Point2[] centred = [.. points.Select(p => p - Origin)];
        if (centred.Length < 3)
        {
            sink.Error(said.Place, "outline-without-area", "the outline has no area", "expected at least three corners, or two and an arc");
            return null;
        }

        if (centred.Length > MostPoints)
        {
            sink.Error(said.Place, "outline-too-detailed", $"the outline has {centred.Length} chords", $"expected at most {MostPoints}");
            return null;
        }

        if (IsTooLarge(said, centred, "the board's centre", "; does `centre:` fit?"))
        {
            return null;
        }

        // What is looked at for crossings is what the region is made of: rounding may make two sides meet.
        centred = [.. centred.Select(Lattice.Snap)];
        if (OutlinePath.Crossing(centred) is { } crossing)
        {
            Point2 there = crossing + Origin;
            sink.Error(
                said.Place,
                "outline-crosses-itself",
                $"the outline crosses or touches itself near [{NumberText.Written(Math.Round(there.X, 3))}, "
                    + $"{NumberText.Written(Math.Round(there.Y, 3))}]",
                "expected corners in order round the board");
            return null;
        }

        return Region.Polygon(centred);
    }

    // Whether an outline reaches farther than a plan can follow; then that is told.
    private bool IsTooLarge(Parsed<ImmutableArray<OutlineCorner>> said, IEnumerable<Point2> points, string from, string question)
    {
        double farthest = points.Max(p => p.Length);
        if (farthest <= BoardKinds.LargestBoard / 2)
        {
            return false;
        }

        sink.Error(
            said.Place,
            "outline-too-large",
            $"the outline reaches {NumberText.Written(Math.Round(farthest, 2))} mm from {from}",
            $"expected at most {NumberText.Written(BoardKinds.LargestBoard / 2)}{question}");
        return true;
    }
}
