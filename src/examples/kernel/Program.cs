using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

Solid plate = Shapes.Box(new Point3(0, 0, 0), new Point3(40, 20, 3)).Tagged(new FaceTag(1));
Solid hole = Shapes.Box(new Point3(5, 5, -1), new Point3(8, 8, 4)).Tagged(new FaceTag(2));

SolidOutcome outcome = SolidEvaluator.Evaluate(plate.Less(hole));
if (outcome.Solid is { } solid)
{
    Console.WriteLine($"{solid.TriangleCount} triangles, {outcome.Openings.Length} contacts opened");
}
else
{
    Console.WriteLine(outcome.Defect);
}
