using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Formats.Rendering;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Drawings;

/// <summary>
/// A part by itself, as it lies on the bed and at the size it has in the hand: seen from above, and cut along the line A to A. Every
/// size is measured on the solid, so a caliper on the print can be held against it.
/// </summary>
public static class PartDrawing
{
    /// <summary>Round walls are polygons on the solid: their corners and flats differ by so much at the most, mm.</summary>
    internal const double Chord = 0.05;

    // Sheet mm on each side: heights to the left, wall thicknesses to the right, diameters below.
    private static readonly (double Left, double Above, double Right, double Below) Room = (26, 12, 48, 30);

    private const double RowSpacing = 8;

    // Between the views, as a share of the part's size, and at least mm: room for the letters at the cutting line.
    private const double GapShare = 0.14;
    private const double LeastGap = 10;

    // From the part to where notes begin that would stand on the letters at the cutting line, sheet mm.
    private const double PastLetters = 8;

    /// <summary>The drawing.</summary>
    /// <param name="housing">The housing.</param>
    /// <param name="part">A sound part of it.</param>
    public static SvgSheet Of(HousingUnderCheck housing, MadePart part)
    {
        Mesh mesh = part.AssembledMesh.Mapped(part.Plan.ToPrint);
        Angle direction = DirectionOf(housing.Plan, part);
        Box3 bounds = Measure.Bounds(mesh);
        Point3 right = new(direction.Cos, direction.Sin, 0);
        var cut = PlaneCut.Loops(mesh, default, right, new Point3(0, 0, 1));
        double gap = Math.Max(LeastGap, GapShare * bounds.Size.Y);
        double shift = bounds.Min.Y - gap - bounds.Size.Z;

        // One extent for both views: the section stands under the plan, turned so that its plane lies in the paper.
        double halfWidth = Math.Max(Math.Max(-bounds.Min.X, bounds.Max.X),
            cut.SelectMany(l => l).Select(p => Math.Abs(p.X)).DefaultIfEmpty().Max());
        Box2 extent = new(new Point2(-halfWidth, shift), new Point2(halfWidth, bounds.Max.Y));
        DrawingSheet sheet = DrawingSheet.For(
            extent, Room, housing.Board.Name, $"{part.Name}, as it lies on the bed, {part.Plan.Filament.Name}",
            part.Plan.ShrinkScale == 1 ? "dimensions in mm" : "dimensions in mm, after cooling");

        LevelView.Draw(sheet, mesh);
        RoundShell? round = part.Plan.IsOfHousing ? housing.Plan.Shell.Round : null;
        DrawCuttingLine(sheet, bounds, direction, round is null ? bounds.Centre.X : 0);
        ImmutableArray<ImmutableArray<Point2>> section =
            [.. cut.Select(loop => loop.Select(p => new Point2(p.X, p.Y + shift)).ToImmutableArray())];
        sheet.Svg.Lines(
            VisibleEdges.Behind([mesh], right, new Point3(0, 0, 1))
                .Select(line => (sheet.At(line.From.X, line.From.Y + shift), sheet.At(line.To.X, line.To.Y + shift))), Stroke.Thin);
        sheet.Svg.Area(sheet.At(section), Stroke.Outline, Fill.Blank);
        sheet.Svg.Area(sheet.At(section), Stroke.Outline, Fill.HatchRising);
        sheet.Svg.Lettering(sheet.At(0, shift + bounds.Size.Z) + new Point2(0, -2.5), "A-A", 3.5, TextAnchor.Middle);
        DrawOpenings(sheet, housing.Plan, part, bounds);
        if (!section.IsEmpty)
        {
            EdgePlan? edge = EdgeOf(housing.Plan, part.Name);
            DrawSizes(
                sheet, new SectionSizes(section, edge?.Radius ?? 0), bounds, round is not null,
                new Nominal(
                    part.Name is PartNames.Tub or PartNames.Cover ? 2 * (round?.Outer ?? 0) : 0, 2 * (round?.BoreInner ?? 0),
                    part.Name == PartNames.Tub ? housing.Plan.Shell.Wall : 0,
                    part.Name is PartNames.Tub or PartNames.Baffle)
                { Edge = edge });
        }

        return sheet.Svg;
    }

    // The rounded edge on which a part lies; null for none.
    private static EdgePlan? EdgeOf(HousingPlan plan, string part) =>
        part == PartNames.Tub ? plan.Shell.FloorEdge : part == PartNames.Cover ? plan.Cover.FrontEdge : null;

    // Those that the drawing of the tub from the front does not show.
    private static void DrawOpenings(DrawingSheet sheet, HousingPlan plan, MadePart part, Box3 bounds)
    {
        // Past the letters at the cutting line.
        var past = new Point2(PastLetters / sheet.Scale, 0);
        var notes = new LeaderNotes(sheet, new Box2(bounds.Min.XY - past, bounds.Max.XY + past));
        foreach (PlanNote note in plan.Openings.Where(opening => opening.NotedOn == part.Name && part.Name != PartNames.Tub)
            .Select(opening => opening.Note))
        {
            notes.Add(part.Plan.ToPrint.Apply(new Point3(note.At.X, note.At.Y, 0)).XY, note.Text);
        }

        notes.Draw();
    }

    // Through a screw's hole where the part has one to show, else through the port, else across.
    private static Angle DirectionOf(HousingPlan plan, MadePart part)
    {
        Point2? boss = part.Name == PartNames.Tub ? plan.Bosses.FirstOrDefault(b => b.Hole is not null && b.At != Point2.Origin)?.At : null;
        Angle assembled = boss is { } at ? Angle.Of(at) : Angle.Zero;
        Point3 turned = part.Plan.ToPrint.ApplyDirection(new Point3(assembled.Cos, assembled.Sin, 0));
        return turned.XY.Length < 0.5 ? Angle.Zero : Angle.Of(turned.XY);
    }

    private static void DrawCuttingLine(DrawingSheet sheet, Box3 bounds, Angle direction, double axis)
    {
        const double arrow = 6;
        double past = 3 / sheet.Scale;
        double half = Math.Max(bounds.Size.X, bounds.Size.Y) / 2;
        Point2 along = Point2.Polar(1, direction);
        Point2 from = sheet.At(-(Within(Leaves(bounds, -1 * along)) + past) * along);
        Point2 to = sheet.At((Within(Leaves(bounds, along)) + past) * along);
        double Within(double leaves) => leaves < half - Chord ? leaves : half;
        sheet.Svg.Line(from, to, Stroke.Centre);
        sheet.Svg.Line(sheet.At(axis, bounds.Min.Y - past), sheet.At(axis, bounds.Max.Y + past), Stroke.Centre);
        if (direction != Angle.Zero)
        {
            sheet.Svg.Line(sheet.At(bounds.Min.X - past, 0), sheet.At(bounds.Max.X + past, 0), Stroke.Centre);
        }

        Point2 onSheet = (1 / (to - from).Length) * (to - from);
        foreach ((Point2 end, double outward) in new[] { (from, -1.0), (to, 1.0) })
        {
            sheet.Svg.Line(end, end + (4 * outward * onSheet), Stroke.Frame);
            sheet.Svg.Lettering(end + (arrow * outward * onSheet) + new Point2(0, 1.2), "A", 3.5, TextAnchor.Middle);
        }
    }

    // How far from the axis a way leaves the view's rectangle, mm: beyond, another view may stand.
    private static double Leaves(Box3 bounds, Point2 way) => Math.Min(
        way.X == 0 ? double.PositiveInfinity : (way.X > 0 ? bounds.Max.X : bounds.Min.X) / way.X,
        way.Y == 0 ? double.PositiveInfinity : (way.Y > 0 ? bounds.Max.Y : bounds.Min.Y) / way.Y);

    private static void DrawSizes(DrawingSheet sheet, SectionSizes sizes, Box3 bounds, bool isRound, Nominal nominal)
    {
        string sign = isRound ? "\u00D8" : "";
        double row = sheet.At(0, sizes.Bottom).Y + RowSpacing;
        if (sizes.Inner is { } inner)
        {
            DimensionLines.Horizontal(
                sheet.Svg, sheet.At(inner.From, sizes.Bottom), sheet.At(inner.To, sizes.Bottom), row,
                sign + Nominal.Of(inner.To - inner.From, nominal.Inner));
            row += RowSpacing;
        }

        // Cut through an ear, the section is as wide as the part is there, which is no diameter.
        double width = sizes.Right - sizes.Left;
        double radius = Math.Min(Math.Min(-sizes.Left, sizes.Right), nominal.Outer > 0 ? nominal.Outer / 2 : double.PositiveInfinity);
        if (isRound && width > (2 * radius) + Chord)
        {
            DimensionLines.Horizontal(
                sheet.Svg, sheet.At(-radius, sizes.Bottom), sheet.At(radius, sizes.Bottom), row,
                sign + Nominal.Of(2 * radius, nominal.Outer));
            (row, sign) = (row + RowSpacing, "");
        }

        DimensionLines.Horizontal(
            sheet.Svg, sheet.At(sizes.Left, sizes.Bottom), sheet.At(sizes.Right, sizes.Bottom), row,
            sign + Nominal.Of(width, nominal.Outer));
        DimensionLines.Vertical(
            sheet.Svg, sheet.At(sizes.Left, sizes.Bottom), sheet.At(sizes.Left, sizes.Bottom + bounds.Size.Z),
            sheet.At(sizes.Left, 0).X - RowSpacing, DimensionLines.Value(bounds.Size.Z));

        var notes = new LeaderNotes(sheet, new Box2(new Point2(sizes.Left, sizes.Bottom), new Point2(sizes.Right, sizes.Top)));
        // On the side of an ear, what is outermost may be the ear's own.
        if (nominal.HasWall && sizes.Wall is { } wall
            && (!isRound || sizes.Right < radius + Chord || Math.Abs(wall.To - wall.From - nominal.Wall) < Chord))
        {
            notes.Add(new Point2(wall.To, sizes.WallAt), $"wall {Nominal.Of(wall.To - wall.From, nominal.Wall)}");
        }

        if (sizes.Floor is { } floor)
        {
            notes.Add(new Point2(sizes.FloorAt, floor), $"floor {DimensionLines.Value(floor - sizes.Bottom)}");
        }

        if (nominal.Edge is { } edge)
        {
            EdgePoint half = edge.Points[edge.Points.Length / 2];
            notes.Add(new Point2(sizes.Right - half.Inset, sizes.Bottom + half.Height), $"edge R{DimensionLines.Value(edge.Radius)}");
        }

        notes.Draw();
    }

    // What the plan says of a size, so that drawing, report and page say the same.
    private readonly record struct Nominal(double Outer, double Inner, double Wall, bool HasWall)
    {
        public EdgePlan? Edge { get; init; }

        public static string Of(double measured, double planned) =>
            Math.Abs(measured - planned) < Chord ? DimensionLines.Value(planned) : Caliper(measured);
    }

    // Corners and flats differ by hundredths, which no caliper finds on a print.
    private static string Caliper(double millimetres) => DimensionLines.Value(Math.Round(millimetres, 1));
}
