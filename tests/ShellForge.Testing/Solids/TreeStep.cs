using System.Globalization;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Testing.Solids;

/// <summary>What the body of a step is.</summary>
public enum BodyKind
{
    Box,
    Cylinder,
    Cone,
    Tube,
    Sphere,
}

/// <summary>
/// One step of a tree: a body that is united with what is there or cut from it. As text, one line a step: the operation (+ or -), the
/// kind, sides, three sizes in mm, turns about x and z in degrees, and the place in mm.
/// </summary>
/// <param name="IsUnion">United, not cut.</param>
/// <param name="Kind">What the body is.</param>
/// <param name="Sides">Sides of everything round.</param>
/// <param name="First">Length, or radius below.</param>
/// <param name="Second">Width, or radius above; of a tube the radius of its bore.</param>
/// <param name="Height">Height, along z before the turns.</param>
/// <param name="TurnX">The first turn, in degrees.</param>
/// <param name="TurnZ">The second turn, in degrees.</param>
/// <param name="Place">Where the body's origin goes, in mm.</param>
public sealed record TreeStep(
    bool IsUnion, BodyKind Kind, int Sides, double First, double Second, double Height, double TurnX, double TurnZ, Point3 Place)
{
    /// <summary>The body.</summary>
    public Solid Body()
    {
        Solid solid = Kind switch
        {
            BodyKind.Box => Loft(Rectangle(First, Second), 0, Rectangle(First, Second), Height),
            BodyKind.Tube => Loft(Circle(First, Sides), 0, Circle(First, Sides), Height)
                .Less(Loft(Circle(Second, Sides), 0, Circle(Second, Sides), Height)),
            BodyKind.Sphere => Shapes.Sphere(First, Sides),
            _ => Loft(Circle(First, Sides), 0, Circle(Second, Sides), Height),
        };
        return solid.Moved(Transform3.TurnX(Angle.FromDegrees(TurnX)).Then(Transform3.TurnZ(Angle.FromDegrees(TurnZ)))
            .Then(Transform3.Shift(Place.X, Place.Y, Place.Z)));
    }

    /// <summary>The steps as one solid; the first is where it starts, whatever its operation.</summary>
    public static Solid Tree(IEnumerable<TreeStep> steps)
    {
        Solid? tree = null;
        foreach (TreeStep step in steps)
        {
            Solid body = step.Body();
            tree = tree is null ? body : step.IsUnion ? tree.And(body) : tree.Less(body);
        }

        return tree ?? Solid.Empty;
    }

    /// <summary>The step with all lengths multiplied: smaller bodies feel a coarser lattice.</summary>
    public TreeStep Scaled(double by) => this with { First = by * First, Second = by * Second, Height = by * Height, Place = by * Place };

    /// <summary>The step that a line of text stands for.</summary>
    public static TreeStep Parse(string line)
    {
        string[] words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        double[] numbers = [.. words.Skip(2).Select(word => double.Parse(word, CultureInfo.InvariantCulture))];
        return new TreeStep(
            words[0] == "+",
            Enum.Parse<BodyKind>(words[1]),
            (int)numbers[0],
            numbers[1],
            numbers[2],
            numbers[3],
            numbers[4],
            numbers[5],
            new Point3(numbers[6], numbers[7], numbers[8]));
    }

    /// <summary>The steps of a file; lines that start with # are for people.</summary>
    public static List<TreeStep> Read(string path) =>
        [.. File.ReadLines(path).Where(line => line.Length > 0 && line[0] != '#').Select(Parse)];

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{(IsUnion ? '+' : '-')} {Kind} {Sides} {First} {Second} {Height} {TurnX} {TurnZ} {Place.X} {Place.Y} {Place.Z}");

    private static Point2[] Rectangle(double x, double y) => [new(0, 0), new(x, 0), new(x, y), new(0, y)];

    private static Point2[] Circle(double radius, int n)
    {
        Point2[] points = new Point2[n];
        for (int i = 0; i < n; i++)
        {
            Angle angle = Angle.FromDegrees(360.0 * i / n);
            points[i] = new Point2(radius * angle.Cos, radius * angle.Sin);
        }

        return points;
    }

    private static SourceSolid Loft(Point2[] low, double lowZ, Point2[] high, double highZ)
    {
        int n = low.Length;
        List<Point3> vertices = [.. low.Select(p => new Point3(p.X, p.Y, lowZ)), .. high.Select(p => new Point3(p.X, p.Y, highZ))];
        List<int> triangles = [];
        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            triangles.AddRange([i, j, n + j, i, n + j, n + i]);
            if (i > 0 && j > 0)
            {
                triangles.AddRange([0, j, i, n, n + i, n + j]);
            }
        }

        return new SourceSolid([.. vertices], [.. triangles], []);
    }
}
