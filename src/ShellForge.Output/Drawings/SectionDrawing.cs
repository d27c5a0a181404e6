using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Formats.Rendering;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Looks;
using ShellForge.Planning;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Drawings;

/// <summary>
/// The assembled housing cut upright along its axis: each printed part hatched in its own way, the board with its parts in grey, screws
/// whole as drawings show them; what is seen behind the cut in narrow lines, what is hidden left out; heights running from the outer floor.
/// </summary>
public static class SectionDrawing
{
    // Sheet mm on each side: the overall height to the left, named heights to the right, diameters below.
    private static readonly (double Left, double Above, double Right, double Below) Room = (22, 12, 62, 34);

    private static readonly Fill[] Hatches = [Fill.HatchRising, Fill.HatchFalling, Fill.HatchClose, Fill.HatchCloseFalling];

    private const double RowSpacing = 8;
    private const double LevelSpacing = 4;

    /// <summary>
    /// Through the first opening in the wall, else through what holds the board's rim, the cable exit, another opening or the first boss.
    /// </summary>
    public static SvgSheet Of(HousingUnderCheck housing, ImmutableArray<BoardMesh> board)
    {
        HousingPlan plan = housing.Plan;
        IEnumerable<(Angle Direction, string Through)> wanted =
        [
            .. plan.Openings.Where(opening => opening.InWall is not null).Select(opening => opening.Section),
            .. plan.Hold.Holder is { } holder ? [holder.Section] : Array.Empty<(Angle, string)>(),
            .. plan.CableExits.Select(exit => (exit.At, exit.Spoken)),
            .. BatteryHands.Section(plan),
            .. SecondBoardHands.Section(plan),
            .. plan.Openings.Select(opening => opening.Section),
            .. plan.Bosses.Where(boss => boss.At != Point2.Origin).Select(boss => (Angle.Of(boss.At), boss.Name)),
            (Angle.Zero, "the axis"),
        ];
        (Angle direction, string through) = wanted.First();
        return Of(housing, board, direction, through);
    }

    /// <summary>Through a screw; null where the housing has none off its axis.</summary>
    public static SvgSheet? ThroughScrew(HousingUnderCheck housing, ImmutableArray<BoardMesh> board)
    {
        ScrewJointPlan? screw = housing.Plan.Screws.FirstOrDefault(s => s.At != Point2.Origin);
        return screw is null ? null
            : Of(housing, board, Angle.Of(screw.At), $"{screw.Name}, which holds the {screw.Through}");
    }

    private static SvgSheet Of(HousingUnderCheck housing, ImmutableArray<BoardMesh> board, Angle direction, string through)
    {
        HousingPlan plan = housing.Plan;
        Point3 right = new(direction.Cos, direction.Sin, 0);
        double reach = plan.Shell.Round?.Outer ?? plan.Source.Board.Outline.OuterRadius + plan.Shell.BoardEdgeGap + plan.Shell.Wall;
        reach = Math.Max(reach, plan.Shell.Lobes.Select(lobe => lobe.At.Length + lobe.Radius).DefaultIfEmpty().Max());
        Box2 extent = new(new Point2(-reach, 0), new Point2(reach, plan.Stack.Front));
        DrawingSheet sheet = DrawingSheet.For(extent, Room, housing.Board.Name, $"section through {through}");

        MadePart[] parts = [.. housing.SoundParts.Where(part => part.Plan.IsOfHousing)];
        sheet.Svg.Lines(
            VisibleEdges.Behind(parts.Select(part => part.AssembledMesh).Concat(board.Select(body => body.Mesh)), right,
                new Point3(0, 0, 1))
                .Select(line => (sheet.At(line.From), sheet.At(line.To))), Stroke.Thin);
        foreach (BoardMesh body in board)
        {
            sheet.Svg.Area(sheet.At(Cut(body.Mesh, right)), Stroke.Thin, Fill.Grey);
        }

        int hatch = 0;
        foreach (MadePart part in parts)
        {
            ImmutableArray<ImmutableArray<Point2>> loops = Cut(part.AssembledMesh, right);
            sheet.Svg.Area(sheet.At(loops), Stroke.Outline, Fill.Blank);
            sheet.Svg.Area(sheet.At(loops), Stroke.Outline, Hatches[hatch++ % Hatches.Length]);
        }

        FastenerView.Draw(sheet, plan, direction);
        sheet.Svg.Line(sheet.At(0, -3 / sheet.Scale), sheet.At(0, plan.Stack.Front + (3 / sheet.Scale)), Stroke.Centre);
        DrawHeights(sheet, plan, extent);
        DrawWidths(sheet, plan, extent);
        return sheet.Svg;
    }

    private static ImmutableArray<ImmutableArray<Point2>> Cut(Geometry.Solids.Mesh mesh, Point3 right) =>
        PlaneCut.Loops(mesh, default, right, new Point3(0, 0, 1));

    private static void DrawHeights(DrawingSheet sheet, HousingPlan plan, Box2 extent)
    {
        StackPlan stack = plan.Stack;
        double left = sheet.At(extent.Min).X - RowSpacing;
        DimensionLines.Vertical(
            sheet.Svg, sheet.At(extent.Min), sheet.At(extent.Min.X, stack.Front), left, DimensionLines.Value(stack.Front));

        (double Z, string Name)[] levels =
        [
            (0, "outer floor"),
            (stack.FloorTop, "floor"),
            (stack.BoardBottom, "board bottom"),
            (stack.BoardTop, "board top"),
            (stack.PartingLine, "parting line"),
            (stack.LedWindow, "LED window"),
            (stack.DiffuserInner, "diffuser inside"),
            (stack.Front, "front"),
        ];
        double edge = sheet.At(extent.Max).X;
        double lowest = double.PositiveInfinity;
        foreach ((double z, string name) in levels.OrderBy(level => level.Z))
        {
            // Running dimensions from the floor: the label moves up where its neighbour would cover it.
            double y = sheet.At(0, z).Y;
            double labelY = Math.Min(y, lowest - LevelSpacing);
            lowest = labelY;
            sheet.Svg.Polyline(
                [new Point2(edge + 1, y), new Point2(edge + 4, y), new Point2(edge + 9, labelY), new Point2(edge + 12, labelY)],
                Stroke.Thin);
            sheet.Svg.Lettering(
                new Point2(edge + 13, labelY + 0.9), $"{DimensionLines.Value(z)}  {name}", DimensionLines.TextHeight, TextAnchor.Start);
        }
    }

    private static void DrawWidths(DrawingSheet sheet, HousingPlan plan, Box2 extent)
    {
        double row = sheet.At(extent.Min).Y + RowSpacing;
        foreach ((double radius, double z, string what) in Widths(plan).OrderBy(width => width.Radius))
        {
            DimensionLines.Horizontal(
                sheet.Svg, sheet.At(-radius, z), sheet.At(radius, z), row, $"{what}\u00D8{DimensionLines.Value(2 * radius)}");
            row += RowSpacing;
        }
    }

    private static IEnumerable<(double Radius, double Z, string What)> Widths(HousingPlan plan)
    {
        if (plan.Shell.Round is not { } round)
        {
            yield break;
        }

        if (round.HasBore)
        {
            yield return (round.BoreInner, 0, "bore ");
        }

        yield return (plan.Source.Board.Outline.OuterRadius, plan.Stack.BoardBottom, "board ");
        yield return (round.Outer, 0, "");
    }
}
