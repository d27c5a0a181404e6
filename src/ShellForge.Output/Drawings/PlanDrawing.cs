using ShellForge.Checks.Gauges;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Drawings;

/// <summary>
/// The tub seen by the viewer with cover and board taken off, cut level through bosses and ports: what is cut is hatched, what lies
/// below is outlined, the board is drawn in phantom lines.
/// </summary>
public static class PlanDrawing
{
    // Sheet mm on each side: rows of dimensions below, leaders with their text to the left and right.
    private static readonly (double Left, double Above, double Right, double Below) Room = (44, 8, 44, 22);

    private const double RowSpacing = 8;
    private const double CentreLineOverhang = 3;

    /// <summary>The drawing.</summary>
    public static SvgSheet Of(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        Box2 extent = plan.Shell.Footprint.Bounds;
        DrawingSheet sheet = DrawingSheet.For(
            extent,
            Room with
            {
                Left = Room.Left + (RowSpacing * RowsLeft(plan, extent)),
                Below = Room.Below + (RowSpacing * (plan.Mount?.Distances.Length ?? 0)),
            },
            housing.Board.Name, "tub from the front, cut level");
        Mesh? tub = housing.Part(PartNames.Tub)?.AssembledMesh;
        if (tub is null)
        {
            sheet.Svg.Lettering(sheet.At(extent.Centre), "the tub has no mesh: see the findings", 5, TextAnchor.Middle);
            return sheet.Svg;
        }

        LevelView.Draw(sheet, tub, CutHeight(plan));
        DrawAxes(sheet, plan, extent);
        DrawSizes(sheet, plan, extent);
        return sheet.Svg;
    }

    /// <summary>
    /// Through the first opening in the wall that lies below the board; otherwise a quarter below the tops of the bosses.
    /// </summary>
    private static double CutHeight(HousingPlan plan)
    {
        StackPlan stack = plan.Stack;
        double? opening = plan.Openings.Select(each => each.InWall?.Middle.Z)
            .FirstOrDefault(z => z > stack.FloorTop && z < stack.BoardBottom);
        return opening ?? (stack.BoardBottom - (0.25 * stack.BelowBoard));
    }

    private static void DrawAxes(DrawingSheet sheet, HousingPlan plan, Box2 extent)
    {
        double overhang = CentreLineOverhang / sheet.Scale;
        sheet.Svg.Line(sheet.At(extent.Min.X - overhang, 0), sheet.At(extent.Max.X + overhang, 0), Stroke.Centre);
        sheet.Svg.Line(sheet.At(0, extent.Min.Y - overhang), sheet.At(0, extent.Max.Y + overhang), Stroke.Centre);
        sheet.Svg.Area(sheet.At(plan.Source.Board.Outline.Region.Loops), Stroke.Phantom, Fill.None);
        if (plan.SecondBoard is { } second)
        {
            sheet.Svg.Area(sheet.At(second.Outline.Loops), Stroke.Phantom, Fill.None);
        }

        foreach (double radius in plan.Bosses.Where(boss => boss.Use != BossUse.SecondBoard)
            .Select(boss => Math.Round(boss.At.Length, 2)).Where(r => r > 0).Distinct())
        {
            sheet.Svg.Circle(sheet.At(Point2.Origin), radius * sheet.Scale, Stroke.Centre);
        }

        foreach (BossPlan boss in plan.Bosses)
        {
            double reach = (boss.Diameter / 2) + overhang;
            sheet.Svg.Line(sheet.At(boss.At.X - reach, boss.At.Y), sheet.At(boss.At.X + reach, boss.At.Y), Stroke.Centre);
            sheet.Svg.Line(sheet.At(boss.At.X, boss.At.Y - reach), sheet.At(boss.At.X, boss.At.Y + reach), Stroke.Centre);
        }
    }

    // Over ears the size of a round wall is no diameter: that is noted at the wall.
    private static bool IsDiameter(HousingPlan plan, Box2 extent) => plan.Shell.Round is { } shell
        && Math.Max(extent.Size.X, extent.Size.Y) < (2 * shell.Outer) + PartDrawing.Chord;

    // Rows of upright dimensions to the left of the view; notes stand beyond them.
    private static int RowsLeft(HousingPlan plan, Box2 extent) =>
        plan.Mount?.Distances.Any(IsUpright) == true ? 2 : IsDiameter(plan, extent) ? 0 : 1;

    private static bool IsUpright(MountDistance distance) => Math.Abs(distance.From.X - distance.To.X) < DrawingSheet.Invisible
        && Math.Abs(distance.From.Y - distance.To.Y) >= DrawingSheet.Invisible;

    private static void DrawSizes(DrawingSheet sheet, HousingPlan plan, Box2 extent)
    {
        double row = sheet.At(extent.Min).Y + RowSpacing;
        bool isDiameter = IsDiameter(plan, extent);
        string sign = isDiameter ? "\u00D8" : "";
        DimensionLines.Horizontal(
            sheet.Svg, sheet.At(extent.Min.X, 0), sheet.At(extent.Max.X, 0), row, sign + DimensionLines.Value(extent.Size.X));
        if (!isDiameter)
        {
            DimensionLines.Vertical(
                sheet.Svg, sheet.At(0, extent.Min.Y), sheet.At(0, extent.Max.Y), sheet.At(extent.Min).X - RowSpacing,
                DimensionLines.Value(extent.Size.Y));
        }

        var beside = new Point2(RowsLeft(plan, extent) * RowSpacing / sheet.Scale, 0);
        var notes = new LeaderNotes(sheet, new Box2(extent.Min - beside, extent.Max));
        foreach (IGrouping<string, BossPlan> kind in plan.Bosses.GroupBy(BossText, StringComparer.Ordinal))
        {
            notes.Add(kind.First().At + Point2.Polar(kind.First().Diameter / 2, Outward(kind.First().At)), $"{kind.Count()}x {kind.Key}");
        }

        foreach (PlanNote note in plan.Openings.Where(opening => opening.NotedOn == PartNames.Tub).Select(opening => opening.Note)
            .Concat(plan.CableExits.SelectMany(exit => exit.Notes(plan.Shell))).Concat(plan.Hold.Holder?.Notes ?? [])
            .Concat(plan.Mount?.Notes ?? []).Concat(BatteryHands.Notes(plan.Bay))
            .Concat(SecondBoardHands.Notes(plan.SecondBoard)))
        {
            notes.Add(note.At, note.Text);
        }

        foreach (MountDistance distance in plan.Mount?.Distances ?? [])
        {
            row += RowSpacing;
            DrawDistance(sheet, distance, extent, row, notes);
        }

        if (plan.Shell.Round is { } round)
        {
            notes.Add(Point2.Polar(round.Outer, Angle.FromDegrees(60)), $"wall {DimensionLines.Value(plan.Shell.Wall)}");
            if (!isDiameter)
            {
                notes.Add(Point2.Polar(round.Outer, Angle.FromDegrees(120)), $"\u00D8{DimensionLines.Value(2 * round.Outer)}");
            }

            if (round.HasBore)
            {
                notes.Add(Point2.Polar(round.BoreInner, Angle.FromDegrees(200)), $"bore \u00D8{DimensionLines.Value(2 * round.BoreInner)}");
            }
        }

        notes.Draw();
    }

    // Level and upright distances get dimension lines, others a note.
    private static void DrawDistance(DrawingSheet sheet, MountDistance distance, Box2 extent, double row, LeaderNotes notes)
    {
        string text = distance.What + DimensionLines.Value(Math.Round(Point2.Distance(distance.From, distance.To), 2));
        if (Math.Abs(distance.From.Y - distance.To.Y) < DrawingSheet.Invisible)
        {
            DimensionLines.Horizontal(sheet.Svg, sheet.At(distance.From), sheet.At(distance.To), row, text);
        }
        else if (IsUpright(distance))
        {
            DimensionLines.Vertical(sheet.Svg, sheet.At(distance.From), sheet.At(distance.To),
                sheet.At(extent.Min).X - (2 * RowSpacing), text);
        }
        else
        {
            notes.Add(distance.To, text + " apart");
        }
    }

    private static string BossText(BossPlan boss)
    {
        string circle = boss.Use == BossUse.SecondBoard ? " under the second board"
            : $" on \u00D8{DimensionLines.Value(2 * Math.Round(boss.At.Length, 2))}";
        string hole = boss.Hole is null
            ? ""
            : $", hole \u00D8{DimensionLines.Value(boss.Hole.Diameter)}, {DimensionLines.Value(boss.Hole.Depth)} deep";
        return $"\u00D8{DimensionLines.Value(boss.Diameter)}{hole}{circle}";
    }

    private static Angle Outward(Point2 at) => at == Point2.Origin ? Angle.FromDegrees(45) : Angle.Of(at);
}
