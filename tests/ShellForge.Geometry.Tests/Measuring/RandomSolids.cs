using FsCheck;
using FsCheck.Fluent;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Tests.Measuring;

/// <summary>Solids for queries, biased to trouble: boxes flush with each other, washers, cups, turned and straight, near and far.</summary>
internal static class RandomSolids
{
    public static Gen<Point3> Point(int reach) =>
        from x in Gen.Choose(-reach * 8, reach * 8)
        from y in Gen.Choose(-reach * 8, reach * 8)
        from z in Gen.Choose(-reach * 8, reach * 8)
        from odd in Gen.Elements(0, 0.0123)
        select new Point3((x / 8.0) + odd, (y / 8.0) + (odd * 1.7), (z / 8.0) - odd);

    public static Gen<Mesh> Mesh =>
        from shape in Gen.Choose(0, 5)
        from at in Point(8)
        from turn in Gen.Elements(0.0, 0, 90, 45, 33)
        from tilt in Gen.Elements(0.0, 0, 90, 1e-5, 21)
        let map = Transform3.TurnX(Angle.FromDegrees(tilt)).Then(Transform3.TurnZ(Angle.FromDegrees(turn)))
            .Then(Transform3.Shift(at.X, at.Y, at.Z))
        select SolidEvaluator.Evaluate(Shape(shape).Moved(map)).Require().Mesh;

    private static Solid Shape(int number) => number switch
    {
        0 => Shapes.Box(new Point3(-3, -4, -5), new Point3(3, 4, 5)),
        1 => Shapes.Sphere(5, 16),
        2 => Shapes.Extrude(Geometry.Planar.Region.Annulus(new Ring(8, RingSide.Outside, 24, Angle.Zero),
            new Ring(6.5, RingSide.Inside, 24, Angle.Zero)), 0, 3),
        3 => Shapes.Taper(new Ring(6, RingSide.Inside, 16, Angle.Zero), 0, new Ring(1, RingSide.Inside, 16, Angle.Zero), 7, Point2.Origin),
        4 => Shapes.Box(new Point3(-8, -8, 0), new Point3(8, 8, 9)).Less(Shapes.Box(new Point3(-7, -7, 1), new Point3(7, 7, 10))),
        _ => Shapes.Box(new Point3(-4, -4, 0), new Point3(4, 4, 0.125)).And(Shapes.Box(new Point3(5, -4, 0), new Point3(9, 4, 2))),
    };
}
