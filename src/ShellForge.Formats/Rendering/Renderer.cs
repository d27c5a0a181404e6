using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// Draws parts as a workshop drawing with light: shaded faces, dark creases and outlines, hatched cuts. It needs no graphics card
/// and gives the same picture every time.
/// </summary>
public static class Renderer
{
    // Samples a pixel and direction: lines come out about one and a half pixels wide and edges smooth.
    private const int Samples = 2;

    /// <summary>Draws a scene. Time grows with the pixels and the triangles: about a second for 1200 x 900 and 30,000.</summary>
    public static Picture Render(Scene scene)
    {
        Projection projection = Projection.Fit(scene, Samples);
        var faces = new List<Shading.Face>();
        var buffer = new DepthBuffer(scene.Width * Samples, scene.Height * Samples);
        (double X, double Y, double Z, double D)? cut = scene.Section is null ? null : projection.Cut(scene.Section);
        for (int p = 0; p < scene.Parts.Length; p++)
        {
            Draw(scene.Parts[p], p, projection, buffer, faces, cut);
        }

        return new Shading(scene, projection, buffer, faces).ToPicture(Samples);
    }

    private static void Draw(
        PicturedPart part, int number, Projection projection, DepthBuffer buffer, List<Shading.Face> faces,
        (double X, double Y, double Z, double D)? cut)
    {
        Mesh mesh = part.Mesh;
        Point3[] world = [.. mesh.Vertices.Select(v => part.Placement.Apply(v.ToMillimetres()))];
        Point3[] screen = [.. world.Select(projection.ToScreen)];
        double side = part.Placement.Determinant < 0 ? -1 : 1;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            int a = mesh.Triangles[3 * t];
            int b = mesh.Triangles[(3 * t) + 1];
            int c = mesh.Triangles[(3 * t) + 2];
            Point3 normal = Point3.Cross(world[b] - world[a], world[c] - world[a]);
            if (normal.Length > 0)
            {
                Point3 unit = (side / normal.Length) * normal;
                buffer.Draw(faces.Count, screen[a], screen[b], screen[c], cut);
                faces.Add(new Shading.Face(number, unit, Point3.Dot(unit, projection.Towards) < 0));
            }
        }
    }
}
