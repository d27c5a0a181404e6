using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Drawings;

/// <summary>
/// Screws and inserts in an upright section. By drawing-office habit (ISO 128-3) a screw on the cutting plane is not cut: it is shown
/// whole, its thread as a narrow line inside the outline (ISO 6410-1). The insert is cut, and filled.
/// </summary>
internal static class FastenerView
{
    // How far off the plane an axis may lie and still be on it, mm.
    private const double OnPlane = 0.05;

    // Root of a metric thread below its outer diameter, as a share of it: 1.2 times the pitch is about 0.2 on small screws.
    private const double RootShare = 0.8;

    /// <summary>Draws what lies on a plane through the axis of the housing.</summary>
    public static void Draw(DrawingSheet sheet, HousingPlan plan, Angle direction)
    {
        Point2 right = Point2.Polar(1, direction);
        foreach (BossPlan boss in plan.Bosses.Where(boss => boss.Hole is not null && IsOn(boss.At, right)))
        {
            double top = boss.Top - boss.Hole!.SetBelow;
            double bottom = top - boss.Hole.Insert.Length;
            double x = Along(boss.At, right);
            double outer = boss.Hole.Insert.OuterDiameter / 2;
            double inner = ThreadOf(plan, boss) / 2;
            Upright(sheet, (x - outer, x - inner), (bottom, top), Stroke.Thin, Fill.HatchClose);
            Upright(sheet, (x + inner, x + outer), (bottom, top), Stroke.Thin, Fill.HatchClose);
        }

        foreach (ScrewJointPlan screw in plan.Screws.Where(screw => IsOn(screw.At, right)))
        {
            Screw(sheet, screw, Along(screw.At, right));
        }
    }

    private static void Screw(DrawingSheet sheet, ScrewJointPlan joint, double x)
    {
        double towards = joint.FromFront ? 1 : -1;
        double washer = joint.Washer ? joint.Screw.WasherThickness : 0;
        double under = joint.SeatZ + (towards * washer);
        double tip = under - (towards * joint.Length);
        double thread = joint.Screw.ThreadDiameter / 2;
        double root = RootShare * thread;
        Upright(sheet, (x - thread, x + thread), (tip, under), Stroke.Outline, Fill.Blank);
        foreach (double side in new[] { -root, root })
        {
            sheet.Svg.Line(sheet.At(x + side, tip), sheet.At(x + side, under), Stroke.Thin);
        }

        double head = joint.Screw.HeadDiameter / 2;
        Upright(sheet, (x - head, x + head), (under, under + (towards * joint.Screw.HeadHeight)), Stroke.Outline, Fill.Blank);
        if (washer > 0)
        {
            double disc = joint.Screw.WasherDiameter / 2;
            Upright(sheet, (x - disc, x + disc), (joint.SeatZ, under), Stroke.Outline, Fill.Blank);
        }

        double over = 2 / sheet.Scale;
        sheet.Svg.Line(
            sheet.At(x, tip - (towards * over)), sheet.At(x, under + (towards * (joint.Screw.HeadHeight + over))), Stroke.Centre);
    }

    private static double ThreadOf(HousingPlan plan, BossPlan boss) =>
        (plan.Screws.FirstOrDefault(screw => screw.Boss == boss)?.Screw ?? plan.Source.Housing.Screw)?.ThreadDiameter.Value ?? 0;

    private static bool IsOn(Point2 at, Point2 right) => Math.Abs(Point2.Cross(right, at)) < OnPlane;

    private static double Along(Point2 at, Point2 right) => (at.X * right.X) + (at.Y * right.Y);

    private static void Upright(DrawingSheet sheet, (double From, double To) x, (double From, double To) z, Stroke stroke, Fill fill) =>
        sheet.Svg.Area(
            [[sheet.At(x.From, z.From), sheet.At(x.To, z.From), sheet.At(x.To, z.To), sheet.At(x.From, z.To)]], stroke, fill);
}
