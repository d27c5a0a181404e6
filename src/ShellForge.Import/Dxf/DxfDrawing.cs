using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Dxf;

/// <summary>Draws entities into strokes, blocks included. Depth and number are bounded: a block may contain itself.</summary>
internal sealed class DxfDrawing(string file, Dictionary<string, DxfBlock> blocks, EcadLog log, CancellationToken ct)
{
    private readonly ImmutableArray<DxfStroke>.Builder _strokes = ImmutableArray.CreateBuilder<DxfStroke>();
    private readonly SortedDictionary<string, int> _ignored = new(StringComparer.Ordinal);
    private int _drawn;
    private bool _full;

    public ImmutableArray<DxfStroke> Strokes => _strokes.ToImmutable();

    public ImmutableSortedDictionary<string, int> Ignored => _ignored.ToImmutableSortedDictionary(StringComparer.Ordinal);

    public void Draw(List<DxfEntity> entities) => Draw(entities, DxfPlacement.Identity, "", 0);

    private void Draw(List<DxfEntity> entities, DxfPlacement placement, string layer, int depth)
    {
        foreach (DxfEntity e in entities)
        {
            if (_full)
            {
                return;
            }

            // Inserts multiply: what is visited is bounded, not only what is kept.
            if (++_drawn > EcadLimits.Sections)
            {
                TooMany(e);
                return;
            }

            if (_drawn % 1024 == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            if (e.IsPaper)
            {
                continue;
            }

            if (e.BadNumbers > 0)
            {
                log.Warn(file, e.Line, "dxf-number", $"{e.Kind}: a value that is no number; the entity is left out");
                continue;
            }

            // An entity of layer 0 in a block takes the layer of the insert.
            string here = depth > 0 && e.Layer is "0" or "" ? layer : e.Layer;
            DxfPlacement map = placement;
            if (e.IsTilted)
            {
                log.Warn(file, e.Line, "dxf-tilted", $"{e.Kind}: not drawn in the plane of the board; left out");
                continue;
            }

            if (e.ExtrusionZ < 0 && e.Kind is not ("LINE" or "SPLINE" or "ELLIPSE"))
            {
                // Lines, splines and ellipses are given in world coordinates whatever their extrusion.
                map = DxfPlacement.MirrorX.Then(placement);
            }

            if (e.Kind == "INSERT")
            {
                Insert(e, map, here, depth);
                continue;
            }

            if (DxfShapes.Segments(e, file, log) is { } segments)
            {
                Keep(e, segments, map, here);
            }
            else
            {
                _ignored[e.Kind] = _ignored.GetValueOrDefault(e.Kind) + 1;
            }
        }
    }

    private void Insert(DxfEntity e, DxfPlacement map, string layer, int depth)
    {
        if (!blocks.TryGetValue(e.Name, out DxfBlock? block))
        {
            log.Warn(file, e.Line, "dxf-block", $"block '{e.Name}' is inserted but not defined");
            return;
        }

        if (depth >= EcadLimits.Depth)
        {
            _strokes.Clear();
            log.Error(file, e.Line, "dxf-depth", $"blocks nested deeper than {EcadLimits.Depth}", "no block contains itself");
            _full = true;
            return;
        }

        int columns = (int)Math.Clamp(e.Number(70, 1), 1, EcadLimits.Strokes);
        int rows = (int)Math.Clamp(e.Number(71, 1), 1, EcadLimits.Strokes);
        Angle turn = Angle.FromDegrees(e.Number(50));
        for (int r = 0; r < rows && !_full; r++)
        {
            for (int c = 0; c < columns && !_full; c++)
            {
                if (++_drawn > EcadLimits.Sections)
                {
                    TooMany(e);
                    return;
                }

                Point2 at = e.Point() + new Point2(c * e.Number(44), r * e.Number(45)).Turned(turn);
                DxfPlacement own = DxfPlacement.Insert(block.Head.Point(), new Point2(e.Number(41, 1), e.Number(42, 1)), turn, at);
                Draw(block.Entities, own.Then(map), layer, depth + 1);
            }
        }
    }

    private void Keep(DxfEntity e, List<EdgeSegment> segments, DxfPlacement map, string layer)
    {
        if (_full)
        {
            return;
        }

        var placed = new List<EdgeSegment>(segments.Count);
        foreach (EdgeSegment s in segments)
        {
            map.Append(placed, s);
        }

        foreach (EdgeSegment s in placed)
        {
            if (!InRange(s.From) || !InRange(s.To) || (s.IsArc && !InRange(s.Centre)))
            {
                log.Warn(file, e.Line, "ecad-number", $"{e.Kind}: a coordinate beyond a kilometre; left out");
                return;
            }

            if (_strokes.Count >= EcadLimits.Strokes)
            {
                TooMany(e);
                return;
            }

            _strokes.Add(new DxfStroke(new PenStroke(s, e.Line), layer));
        }
    }

    private void TooMany(DxfEntity e)
    {
        // Part of a drawing is none: what was kept goes too, and nothing is looked for in it.
        _full = true;
        _strokes.Clear();
        log.Error(file, e.Line, "ecad-too-many", $"more than {EcadLimits.Strokes} strokes", "export the board edge alone");
    }

    private static bool InRange(Point2 p) =>
        Math.Abs(p.X) <= EcadTolerances.LargestCoordinate && Math.Abs(p.Y) <= EcadTolerances.LargestCoordinate;
}
