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

    private readonly DrillProgram program;
    private readonly DrillReading reading;
    private readonly Dictionary<int, (double Diameter, Plating Plating, string Use)> tools = [];
    private readonly ImmutableArray<DrilledHole>.Builder holes = ImmutableArray.CreateBuilder<DrilledHole>();
    private readonly ImmutableArray<DrilledSlot>.Builder slots = ImmutableArray.CreateBuilder<DrilledSlot>();
    private readonly List<Point2> path = [];
    private DrillStep pathStart;
    private Point2 at;
    private Point2 zero;

    private DrillRun(DrillProgram program, DrillReading reading)
    {
        this.program = program;
        this.reading = reading;
        foreach (DrillTool t in program.Tools)
        {
            Plating plating = t.Plating != Plating.Unknown ? t.Plating : program.FilePlating;
            double diameter = t.DiameterMm ?? (t.Diameter.HasPoint ? t.Diameter.Value * reading.Unit : reading.Millimetres(t.Diameter));
            tools[t.Number] = (diameter, plating, t.Use);
        }
    }

    public static DrillFacts Run(DrillProgram program, DrillReading reading, EcadLog? log)
    {
        var run = new DrillRun(program, reading);
        var missing = new SortedSet<int>();
        foreach (DrillStep step in program.Steps)
        {
            if (!run.tools.ContainsKey(step.Tool) && step.Action is not (DrillAction.Move or DrillAction.SetZero) && missing.Add(step.Tool))
            {
                log?.Warn(program.File, step.Line, "drill-tool", $"tool T{step.Tool} has no diameter; its holes are left out", "a line like T1C0.8 in the header");
            }

            run.Take(step);
        }

        run.EndPath();
        string words = program.AllPoints ? $"{(reading.Unit == 1 ? "mm" : "inch")}, decimal points" : reading.InWords();
        return new DrillFacts(program.File, reading.Unit == 1 ? "mm" : "inch", words, run.holes.ToImmutable(), run.slots.ToImmutable());
    }

    private void Take(DrillStep step)
    {
        if (step.Action == DrillAction.SetZero)
        {
            // Coordinates after it count from this point of the ones before.
            zero += new Point2(step.HasX ? reading.Millimetres(step.X) : 0, step.HasY ? reading.Millimetres(step.Y) : 0);
            return;
        }

        Point2 origin = step.Incremental ? at : zero;
        Point2 to = new(
            step.HasX ? origin.X + reading.Millimetres(step.X) : at.X,
            step.HasY ? origin.Y + reading.Millimetres(step.Y) : at.Y);
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
                path.Add(to);
                EndPath();
                break;
            default:
                if (path.Count == 0)
                {
                    Begin(step);
                }

                Route(step, to);
                break;
        }

        at = to;
    }

    private void Begin(DrillStep step)
    {
        path.Add(at);
        pathStart = step;
    }

    private void Route(DrillStep step, Point2 to)
    {
        if (step.Action != DrillAction.Route)
        {
            bool counterClockwise = step.Action == DrillAction.RouteCounterClockwise;
            EdgeSegment? arc = ArcTo(step, to, counterClockwise);
            for (int i = 1; arc is { } a && i < ArcChords; i++)
            {
                path.Add(a.At((double)i / ArcChords));
            }
        }

        path.Add(to);
    }

    private EdgeSegment? ArcTo(DrillStep step, Point2 to, bool counterClockwise)
    {
        if (step.ArcRadius.Count > 0)
        {
            double radius = Math.Abs(reading.Millimetres(step.ArcRadius));
            Point2 chord = to - at;
            double half = chord.Length / 2;
            if (half <= 0 || radius < half)
            {
                return null;
            }

            double rise = Math.Sqrt((radius * radius) - (half * half));
            Point2 normal = (1 / (2 * half)) * new Point2(-chord.Y, chord.X);
            Point2 centre = at + (0.5 * chord) + ((counterClockwise ? rise : -rise) * normal);
            return EdgeSegment.ArcByCentre(at, to, centre, counterClockwise);
        }

        if (step.ArcI.Count > 0 || step.ArcJ.Count > 0)
        {
            Point2 centre = at + new Point2(
                step.ArcI.Count > 0 ? reading.Millimetres(step.ArcI) : 0,
                step.ArcJ.Count > 0 ? reading.Millimetres(step.ArcJ) : 0);
            return EdgeSegment.ArcByCentre(at, to, centre, counterClockwise);
        }

        return null;
    }

    private void EndPath()
    {
        if (path.Count >= 2 && tools.TryGetValue(pathStart.Tool, out (double Diameter, Plating Plating, string Use) tool) && tool.Diameter > 0)
        {
            // Longer paths are contours: their extent is looked at, not every point.
            Box2 box = Box2.Of(path);
            if (box.Size.Length < EcadTolerances.RoundSlot)
            {
                Hole(pathStart, path[0]);
            }
            else
            {
                slots.Add(new DrilledSlot([.. path.Count <= 2000 ? path : path.Take(2000)], tool.Diameter, tool.Plating, pathStart.Line));
            }
        }

        path.Clear();
    }

    private void Hole(DrillStep step, Point2 to)
    {
        if (tools.TryGetValue(step.Tool, out (double Diameter, Plating Plating, string Use) tool) && tool.Diameter > 0)
        {
            holes.Add(new DrilledHole(to, tool.Diameter, tool.Plating, tool.Use, step.Line));
        }
    }
}
