using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;

namespace ShellForge.Physics.Tests.Light;

/// <summary>Triangles of boxes and scenes made of them, plain enough for a second tracer to read.</summary>
internal sealed class WallSet
{
    private readonly List<(Point3 A, Point3 B, Point3 C)> _triangles = [];

    public IReadOnlyList<(Point3 A, Point3 B, Point3 C)> Triangles => _triangles;

    public WallSet Box(Point3 low, Point3 high)
    {
        Point3 Corner(int i) => new((i & 1) == 0 ? low.X : high.X, (i & 2) == 0 ? low.Y : high.Y, (i & 4) == 0 ? low.Z : high.Z);
        int[][] faces = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
        foreach (int[] f in faces)
        {
            _triangles.Add((Corner(f[0]), Corner(f[1]), Corner(f[2])));
            _triangles.Add((Corner(f[0]), Corner(f[2]), Corner(f[3])));
        }

        return this;
    }

    /// <summary>Four walls round a square room about the z axis, from z = 0.</summary>
    public WallSet Room(double half, double height, double wall) => this
        .Box(new(half, -half - wall, 0), new(half + wall, half + wall, height))
        .Box(new(-half - wall, -half - wall, 0), new(-half, half + wall, height))
        .Box(new(-half, half, 0), new(half, half + wall, height))
        .Box(new(-half, -half - wall, 0), new(half, -half, height));

    public ShadowTree Tree()
    {
        var builder = new ShadowTreeBuilder();
        foreach ((Point3 a, Point3 b, Point3 c) in _triangles)
        {
            builder.Add(a, b, c, 0);
        }

        return builder.Build();
    }
}

internal static class Scenes
{
    public static readonly DiffuserOptics Clear = new(1, 0, 0);

    public static LedSource Up(double x, double y, double angle = 120, double window = 0) =>
        new(new Point3(x, y, 0), new Point3(0, 0, 1), angle, window);

    public static LightScene Of(
        IEnumerable<LedSource> leds, ReceiverGrid face, WallSet? walls = null, double reflectance = 0,
        DiffuserOptics? sheet = null) => new()
        {
            Leds = [.. leds],
            Solids = walls?.Tree() ?? ShadowTree.Empty,
            Materials = [new SurfaceOptics(reflectance, 0)],
            Face = face,
            Diffuser = sheet ?? Clear,
        };

    public static ReceiverGrid Square(double half, double z, double step, Func<Point2, bool>? open = null) =>
        ReceiverGrid.Flat(new Box2(new Point2(-half, -half), new Point2(half, half)), z, step, open ?? (_ => true));

    public static ImmutableArray<LedSource> Ring(double radius, int count, double window = 0, double angle = 120) =>
    [
        .. Enumerable.Range(0, count).Select(i => Point2.Polar(radius, Angle.FromDegrees(360.0 * i / count)))
            .Select(at => new LedSource(new Point3(at.X, at.Y, 0), new Point3(0, 0, 1), angle, window)),
    ];

    public static float AtPlace(LightMap map, double u, double v) => (float)map.Face.Sample(map.Irradiance.All, u, v);
}
