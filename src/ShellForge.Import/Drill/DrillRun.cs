using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Drill;

/// <summary>Runs a drill program under one reading of its numbers.</summary>
internal sealed class DrillRun
{
    // A routed arc becomes so many chords: slots are shown and checked, not milled from this.
    private const int ArcChords = 8;

    private readonly DrillProgram _program;
    private readonly DrillReading _reading;
    private readonly Dictionary<int, (double Diameter, Plating Plating, string Use)> _tools = [];
    private readonly ImmutableArray<DrilledHole>.Builder _holes = ImmutableArray.CreateBuilder<DrilledHole>();
    private readonly ImmutableArray<DrilledSlot>.Builder _slots = ImmutableArray.CreateBuilder<DrilledSlot>();
    private readonly List<Point2> _path = [];
    private DrillStep _pathStart;
    private Point2 _at;
    private Point2 _zero;

    private DrillRun(DrillProgram program, DrillReading reading)
    {
        _program = program;
        _reading = reading;
        foreach (DrillTool t in program.Tools)
        {
            Plating plating = t.Plating != Plating.Unknown ? t.Plating : program.FilePlating;
            double diameter = t.DiameterMm ?? (t.Diameter.HasPoint ? t.Diameter.Value * reading.Unit : reading.Millimetres(t.Diameter));
            _tools[t.Number] = (diameter, plating, t.Use);
        }
    }

    public static DrillFacts Run(DrillProgram program, DrillReading reading, EcadLog? log)
    {
        var run = new DrillRun(program, reading);
        var missing = new SortedSet<int>();
        foreach (DrillStep step in program.Steps)
        {
            if (!run._tools.ContainsKey(step.Tool) && step.Action is not (DrillAction.Move or DrillAction.SetZero)
                && missing.Add(step.Tool))
            {
                log?.Warn(program.File, step.Line, "drill-tool", $"tool T{step.Tool} has no diameter; its holes are left out",
                    "a line like T1C0.8 in the header");
            }

            run.Take(step);
        }

        run.EndPath();
        string words = program.AllPoints ? $"{(reading.Unit == 1 ? "mm" : "inch")}, decimal points" : reading.InWords();
        return new DrillFacts(program.File, reading.Unit == 1 ? "mm" : "inch", words, run._holes.ToImmutable(), run._slots.ToImmutable());
    }

    private void Take(DrillStep step)
    {
        if (step.Action == DrillAction.SetZero)
        {
            // Coordinates after it count from this point of the ones before.
            _zero += new Point2(step.HasX ? _reading.Millimetres(step.X) : 0, step.HasY ? _reading.Millimetres(step.Y) : 0);
            return;
        }

        Point2 origin = step.Incremental ? _at : _zero;
        Point2 to = new(
            step.HasX ? origin.X + _reading.Millimetres(step.X) : _at.X,
            step.HasY ? origin.Y + _reading.Millimetres(step.Y) : _at.Y);
        if (!(Math.Abs(to.X) <= EcadTolerances.LargestCoordinate && Math.Abs(to.Y) <= EcadTolerances.LargestCoordinate))
        {
            return;
        }

        switch (step.Action)
        {
            case DrillAction.Move:
                EndPath();
                break;
            case DrillAction.Hit:
                EndPath();
                Hole(step, to);
                break;
            case DrillAction.SlotEnd:
                EndPath();
                Begin(step);
                _path.Add(to);
                EndPath();
                break;
            default:
                if (_path.Count == 0)
                {
                    Begin(step);
                }

                Route(step, to);
                break;
        }

        _at = to;
    }

    private void Begin(DrillStep step)
    {
        _path.Add(_at);
        _pathStart = step;
    }

    private void Route(DrillStep step, Point2 to)
    {
        if (step.Action != DrillAction.Route)
        {
            bool counterClockwise = step.Action == DrillAction.RouteCounterClockwise;
            EdgeSegment? arc = ArcTo(step, to, counterClockwise);
            for (int i = 1; arc is { } a && i < ArcChords; i++)
            {
                _path.Add(a.At((double)i / ArcChords));
            }
        }

        _path.Add(to);
    }

    private EdgeSegment? ArcTo(DrillStep step, Point2 to, bool counterClockwise)
    {
        if (step.ArcRadius.Count > 0)
        {
            double radius = Math.Abs(_reading.Millimetres(step.ArcRadius));
            Point2 chord = to - _at;
            double half = chord.Length / 2;
            if (half <= 0 || radius < half)
            {
                return null;
            }

            double rise = Math.Sqrt((radius * radius) - (half * half));
            Point2 normal = (1 / (2 * half)) * new Point2(-chord.Y, chord.X);
            Point2 centre = _at + (0.5 * chord) + ((counterClockwise ? rise : -rise) * normal);
            return EdgeSegment.ArcByCentre(_at, to, centre, counterClockwise);
        }

        if (step.ArcI.Count > 0 || step.ArcJ.Count > 0)
        {
            Point2 centre = _at + new Point2(
                step.ArcI.Count > 0 ? _reading.Millimetres(step.ArcI) : 0,
                step.ArcJ.Count > 0 ? _reading.Millimetres(step.ArcJ) : 0);
            return EdgeSegment.ArcByCentre(_at, to, centre, counterClockwise);
        }

        return null;
    }

    private void EndPath()
    {
        if (_path.Count >= 2 && _tools.TryGetValue(_pathStart.Tool, out (double Diameter, Plating Plating, string Use) tool)
            && tool.Diameter > 0)
        {
            // Longer paths are contours: their extent is looked at, not every point.
            Box2 box = Box2.Of(_path);
            if (box.Size.Length < EcadTolerances.RoundSlot)
            {
                Hole(_pathStart, _path[0]);
            }
            else
            {
                _slots.Add(new DrilledSlot([.. _path.Count <= 2000 ? _path : _path.Take(2000)], tool.Diameter, tool.Plating,
                    _pathStart.Line));
            }
        }

        _path.Clear();
    }

    private void Hole(DrillStep step, Point2 to)
    {
        if (_tools.TryGetValue(step.Tool, out (double Diameter, Plating Plating, string Use) tool) && tool.Diameter > 0)
        {
            _holes.Add(new DrilledHole(to, tool.Diameter, tool.Plating, tool.Use, step.Line));
        }
    }
}
