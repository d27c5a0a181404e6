using FsCheck.Xunit;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;
using Region = ShellForge.Geometry.Planar.Region;

namespace ShellForge.Geometry.Tests.Booleans;

/// <summary>Laws on pairs of solids that are placed on a coarse grid and turned by few angles, so that faces coincide and touch.</summary>
public class BooleanLawTests
{
    [Property(MaxTest = 60, Arbitrary = [typeof(Draws.Rows)])]
    public bool Union_and_intersection_together_hold_what_both_operands_hold(Draws draws)
    {
        (Solid a, Solid b) = Pair(draws);
        double both = Volume(a) + Volume(b);

        return Math.Abs(Volume(a.And(b)) + Volume(Solid.Intersection(a, b)) - both) <= 2e-2;
    }

    [Property(MaxTest = 60, Arbitrary = [typeof(Draws.Rows)])]
    public bool A_cut_and_the_common_part_make_up_the_body(Draws draws)
    {
        (Solid a, Solid b) = Pair(draws);

        return Math.Abs(Volume(a.Less(b)) + Volume(Solid.Intersection(a, b)) - Volume(a)) <= 2e-2;
    }

    [Property(MaxTest = 30, Arbitrary = [typeof(Draws.Rows)])]
    public bool The_order_of_a_union_does_not_matter(Draws draws)
    {
        (Solid a, Solid b) = Pair(draws);

        return Math.Abs(Volume(a.And(b)) - Volume(b.And(a))) <= 1e-2;
    }

    [Property(MaxTest = 30, Arbitrary = [typeof(Draws.Rows)])]
    public bool Twice_the_same_tree_gives_the_same_mesh(Draws draws)
    {
        (Solid a, Solid b) = Pair(draws);
        Mesh first = Clean(a.Less(b)), second = Clean(a.Less(b));

        return first.Vertices.SequenceEqual(second.Vertices) && first.Triangles.SequenceEqual(second.Triangles);
    }

    [Property(MaxTest = 30, Arbitrary = [typeof(Draws.Rows)])]
    public bool A_shift_by_whole_steps_moves_the_result_and_nothing_else(Draws draws)
    {
        (Solid a, Solid b) = Pair(draws);
        Transform3 shift = Transform3.Shift(1024 * Lattice.Step, -512 * Lattice.Step, 2048 * Lattice.Step);
        double here = Volume(a.Less(b)), there = Volume(a.Less(b).Moved(shift));

        return Math.Abs(here - there) <= 1e-2;
    }

    private static (Solid A, Solid B) Pair(Draws draws) => (Part(draws), Part(draws));

    private static Solid Part(Draws draws)
    {
        Solid solid = draws.Next(3) switch
        {
            0 => Shapes.Box(default, new Point3(1 << draws.Next(3), 1 << draws.Next(3), 1 << draws.Next(3))),
            1 => Shapes.Taper(Circle(draws, 2), 0, Circle(draws, 2), 2, Point2.Origin),
            _ => Shapes.Extrude(Region.Polygon([new(0, 0), new(2, 0), new(2, 1), new(1, 1), new(1, 2), new(0, 2)]), 0, 2),
        };
        double[] turns = [0, 0, 45, 90, 30, 11.25];
        return solid.Moved(Transform3.TurnX(Angle.FromDegrees(turns[draws.Next(5)]))
            .Then(Transform3.TurnZ(Angle.FromDegrees(turns[draws.Next(6)])))
            .Then(Transform3.Shift(draws.About(3) / 2.0, draws.About(3) / 2.0, draws.About(3) / 2.0)));
    }

    private static Ring Circle(Draws draws, double radius) => new(radius / (1 + draws.Next(2)), RingSide.Inside, 16, Angle.Zero);

    private static double Volume(Solid solid) => Measure.Volume(Clean(solid));

    private static Mesh Clean(Solid solid)
    {
        SolidOutcome outcome = SolidEvaluator.Evaluate(solid);
        Assert.True(outcome.Solid is not null, outcome.Defect?.ToString());
        AuditReport report = MeshAudit.Run(outcome.Solid!.Mesh);
        Assert.True(report.IsClean, report.ToString());
        return outcome.Solid.Mesh;
    }
}
