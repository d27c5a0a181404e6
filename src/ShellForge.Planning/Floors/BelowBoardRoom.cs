using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Floors;

/// <summary>The room between floor and board, with what hangs into it: answers how high something on the floor may rise.</summary>
internal sealed class BelowBoardRoom
{
    private readonly ImmutableArray<PartEnvelope> _hanging;
    private readonly BoardLevels _levels;
    private readonly Region _board;
    private readonly ImmutableArray<Region> _ways;

    /// <summary>The room of a board over a floor, in which ways to openings stay free.</summary>
    /// <param name="tub">Floor, walls and board.</param>
    /// <param name="without">Designator of a part that does not count; null: all do.</param>
    public BelowBoardRoom(TubDraft tub, string? without = null)
    {
        (BoardFile file, _, ShellPlan shell, BoardLevels levels, ImmutableArray<OpeningPlan> openings) = tub;
        _ways =
        [
            .. openings.Select(opening => opening.TakenInside).Append(tub.Bay?.Taken ?? Region.Empty)
                .Append(tub.SecondBoard?.Taken ?? Region.Empty).Where(way => !way.IsEmpty),
        ];
        _levels = levels;
        Shell = shell;
        _hanging = [.. PartEnvelope.OnBottom(file.Board).Where(part => part.Ref != without)];
        Wires = [.. file.Board.Wires.Where(w => w.Side == BoardSide.Bottom)];
        _board = file.Board.Outline.Region;
    }

    /// <summary>The walls round it.</summary>
    public ShellPlan Shell { get; }

    /// <summary>Leads soldered on the back.</summary>
    public ImmutableArray<WireLead> Wires { get; }

    /// <summary>The laminate over it.</summary>
    public Region Board => _board;

    /// <summary>
    /// z up to which something with this outline may rise without coming near a part, a solder blob or the way through an opening; the
    /// board's bottom when nothing is near.
    /// </summary>
    public double Ceiling(Region outline)
    {
        double ceiling = _levels.BoardBottom;
        foreach (PartEnvelope part in _hanging)
        {
            if (part.Outline.Distance(outline) < PlanRules.Beside)
            {
                ceiling = Math.Min(ceiling, _levels.BoardBottom - (part.To ?? PlanRules.UnknownHeight) - PlanRules.Beside);
            }
        }

        foreach (WireLead wire in Wires)
        {
            if (outline.Distance(wire.At) < wire.Diameter + PlanRules.Beside)
            {
                ceiling = Math.Min(ceiling, _levels.BoardBottom - PlanRules.WireBlob);
            }
        }

        return _ways.Any(way => way.Distance(outline) < PlanRules.Beside) ? Math.Min(ceiling, _levels.FloorTop) : ceiling;
    }

    /// <summary>Width of the thickest bundle of leads, mm; 0 when there is none.</summary>
    public double Bundle => Wires.Select(w => w.Diameter * (1 + Math.Sqrt(w.Conductors - 1))).DefaultIfEmpty(0).Max();
}
