using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drill;
using ShellForge.Import.Files;
using ShellForge.Import.Gerber;
using ShellForge.Import.Idf;

namespace ShellForge.Import.Merging;

/// <summary>Puts the holes of all files together: each once, with what it is and how it lies to the edge.</summary>
internal sealed class HoleMerge(ImportedOutline? outline, EcadLog log)
{
    private readonly List<ImportedHole> _holes = [];
    private readonly List<ImportedSlot> _slots = [];
    private readonly Dictionary<(long, long), List<int>> _grid = [];
    private readonly SortedDictionary<string, (int Count, string Other)> _repeatedIn = new(StringComparer.Ordinal);

    public void Add(DrillFacts facts)
    {
        foreach (DrilledHole h in facts.Holes)
        {
            bool? plated = h.Plating == Plating.Unknown ? null : h.Plating == Plating.Plated;
            Add(h.At, h.Diameter, plated, h.Use, facts.File, h.Line);
        }

        foreach (DrilledSlot s in facts.Slots)
        {
            _slots.Add(new ImportedSlot(s.Path, s.Width, s.Length, s.Plating == Plating.Unknown ? null : s.Plating == Plating.Plated,
                facts.File, s.Line));
        }
    }

    public void Add(IdfBoardFacts facts)
    {
        foreach (IdfHole h in facts.Holes)
        {
            string use = h.Type switch
            {
                "MTG" => "mounting",
                "VIA" => "via",
                "PIN" => "pin",
                "TOOL" => "tooling",
                _ => h.Part.Length > 0 && !IsNobody(h.Part) ? "pin" : "",
            };
            Add(h.At, h.Diameter, h.Plated, use, facts.File, h.Line);
        }
    }

    /// <summary>A drill layer in Gerber form: flashes are holes, strokes are slots.</summary>
    public void Add(GerberFacts facts)
    {
        bool plated = !facts.FileFunction.StartsWith("Non", StringComparison.OrdinalIgnoreCase);
        foreach (GerberFlash f in facts.Flashes.Where(f => f.Diameter > 0))
        {
            Add(f.At, f.Diameter, plated, "", facts.File, f.Line);
        }

        foreach (Drawing.PenStroke s in facts.Strokes.Where(s => s.Width > 0 && s.Segment.Length > EcadTolerances.RoundSlot))
        {
            _slots.Add(new ImportedSlot([s.Segment.From, s.Segment.To], s.Width, Point2.Distance(s.Segment.From, s.Segment.To), plated,
                facts.File, s.Line));
        }
    }

    public (ImmutableArray<ImportedHole> Holes, ImmutableArray<ImportedSlot> Slots) Finish()
    {
        foreach ((string file, (int count, string other)) in _repeatedIn)
        {
            log.Note(file, 0, "ecad-repeated",
                $"{count} holes are listed in {(other == file ? "this file" : other)} already and count once");
        }

        List<ImportedHole> outside = _holes.FindAll(h => h.Kind == HoleKind.Outside);
        List<ImportedHole> notches = _holes.FindAll(h => h.Kind == HoleKind.Notch);
        foreach (ImportedHole n in notches.Where(n => n.Diameter >= EcadTolerances.SmallestMountingHole).Take(12))
        {
            log.Note(n.File, n.Line, "ecad-notch",
                $"the {Numeral.Text(n.Diameter)} mm hole at ({Numeral.Text(n.At.X)}, {Numeral.Text(n.At.Y)}) cuts the edge: a notch, no "
                    + $"screw hole");
        }

        if (outside.Count > 0)
        {
            OutsideWords(outside);
        }

        return ([.. _holes], [.. _slots]);
    }

    private void OutsideWords(List<ImportedHole> outside)
    {
        ImportedHole first = outside[0];
        if (outline is not null && outside.Count == _holes.Count && _holes.Count >= 3)
        {
            Box2 box = Box2.Of(_holes.Select(h => h.At));
            Point2 shift = outline.Outer.Bounds.Centre - box.Centre;
            log.Error(
                first.File, first.Line, "ecad-holes-outside",
                $"all {_holes.Count} holes lie outside the outline of {outline.File}: the files have different origins or units",
                $"export both with one origin; a shift of about ({Numeral.Text(shift.X, 1)}, {Numeral.Text(shift.Y, 1)}) mm would bring "
                    + $"the holes onto the board");
            return;
        }

        log.Warn(
            first.File, first.Line, "ecad-holes-outside",
            $"{outside.Count} of {_holes.Count} holes lie outside the outline, the first at ({Numeral.Text(first.At.X)}, "
                + $"{Numeral.Text(first.At.Y)}); they are left out of the board file");
    }

    private void Add(Point2 at, double diameter, bool? plated, string use, string file, int line)
    {
        if (Repeated(at, diameter) is { } same)
        {
            ImportedHole known = _holes[same];
            (int count, string _) = _repeatedIn.GetValueOrDefault(file);
            _repeatedIn[file] = (count + 1, known.File);
            if (known.Plated is null && plated is not null)
            {
                _holes[same] = known with { Plated = plated };
            }

            return;
        }

        _holes.Add(new ImportedHole(at, diameter, plated, Kind(at, diameter, plated, use), file, line));
    }

    private int? Repeated(Point2 at, double diameter)
    {
        (long X, long Y) cell = ((long)Math.Floor(at.X / EcadTolerances.SameHole), (long)Math.Floor(at.Y / EcadTolerances.SameHole));
        for (long dx = -1; dx <= 1; dx++)
        {
            for (long dy = -1; dy <= 1; dy++)
            {
                if (!_grid.TryGetValue((cell.X + dx, cell.Y + dy), out List<int>? near))
                {
                    continue;
                }

                foreach (int i in near)
                {
                    if (Point2.Distance(_holes[i].At, at) <= EcadTolerances.SameHole
                        && Math.Abs(_holes[i].Diameter - diameter) <= EcadTolerances.SameHole)
                    {
                        return i;
                    }
                }
            }
        }

        if (!_grid.TryGetValue(cell, out List<int>? here))
        {
            _grid[cell] = here = [];
        }

        // Many diameters on one spot are no board; the list stays short.
        if (here.Count < EcadLimits.Depth)
        {
            here.Add(_holes.Count);
        }

        return null;
    }

    private HoleKind Kind(Point2 at, double diameter, bool? plated, string use)
    {
        if (outline is not null)
        {
            double radius = diameter / 2;
            double edge = outline.Outer.Distance(at, radius);
            bool inside = outline.Outer.Contains(at);
            if (edge < radius - EcadTolerances.SamePoint)
            {
                return HoleKind.Notch;
            }

            if (!inside)
            {
                return HoleKind.Outside;
            }
        }

        return use switch
        {
            "mounting" when diameter >= EcadTolerances.SmallestMountingHole => HoleKind.Mounting,
            "mounting" => HoleKind.Tooling,
            "via" => HoleKind.Via,
            "tooling" => HoleKind.Tooling,
            "pin" => plated != false || diameter < EcadTolerances.SmallestMountingHole ? HoleKind.Pin : HoleKind.Mounting,
            _ => HoleGuess.Of(diameter, plated),
        };
    }

    private static bool IsNobody(string part) =>
        part.Equals("BOARD", StringComparison.OrdinalIgnoreCase) || part.Equals("NOREFDES", StringComparison.OrdinalIgnoreCase)
            || part.Equals("PANEL", StringComparison.OrdinalIgnoreCase);
}
