using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Tests.Solids;

public class SolidDigestTests
{
    private static Solid Box(double size) => Shapes.Box(new Point3(0, 0, 0), new Point3(size, size, size));

    [Fact]
    public void Trees_written_alike_have_one_digest() => Assert.Equal(
        SolidDigest.Of(Box(4).Less(Box(2).Moved(Transform3.Shift(1, 1, 3))).Tagged(new FaceTag(7))),
        SolidDigest.Of(Box(4).Less(Box(2).Moved(Transform3.Shift(1, 1, 3))).Tagged(new FaceTag(7))));

    [Fact]
    public void Whatever_an_evaluation_looks_at_changes_the_digest()
    {
        Solid box = Box(4);
        Solid cutter = Box(2).Moved(Transform3.Shift(1, 1, 3));
        var source = (SourceSolid)box;
        Solid[] all =
        [
            box,
            Box(4.001),
            source with { Sheets = [.. source.Sheets.Select(sheet => sheet + 1)] },
            source with { Triangles = [.. source.Triangles[3..], .. source.Triangles[..3]] },
            SolidEvaluator.Evaluate(box).Require().AsOperand(),
            box.Moved(Transform3.Shift(0.001, 0, 0)),
            box.Tagged(new FaceTag(1)),
            box.Tagged(new FaceTag(2)),
            box.Less(cutter),
            cutter.Less(box),
            box.And(cutter),
            Solid.Intersection(box, cutter),
            box.Less(cutter, cutter),
            box.Less(cutter).Less(cutter),
            box.Less(cutter.And(cutter)),
            Solid.Union(box.And(cutter), cutter),
            Solid.Union(box, cutter.And(cutter)),
            Solid.Empty,
            Solid.Intersection(),
        ];

        Assert.Equal(all.Length, all.Select(SolidDigest.Of).Distinct().Count());
    }
}
