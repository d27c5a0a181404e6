using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// Draws parts as a workshop drawing with light: shaded faces, dark creases and outlines, hatched cuts. It needs no graphics card
/// and gives the same picture every time.
/// </summary>
public static class Renderer
{
    /// <summary>Draws a scene. Time grows with the pixels and the triangles: a tenth of a second for 1200 x 900 and 30,000.</summary>
    public static Picture Render(Scene scene)
    {
        Projection projection = Projection.Fit(scene, Shading.Samples);
        var looks = new List<FaceLook>();
        using var buffer = new DepthBuffer(scene.Width * Shading.Samples, scene.Height * Shading.Samples);
        (double X, double Y, double Z, double D)? cut = null;
        (FaceLook[] Looks, (double X, double Y, double Z, double D) Plane)? shown = null;
        if (scene.Section is { } section)
        {
            Point3 normal = (1 / section.Normal.Length) * section.Normal;
            (double X, double Y, double Z, double D) plane = projection.Cut(section with { Normal = normal });
            cut = plane;
            if (plane.Z > 0)
            {
                shown = ([.. scene.Parts.Select((part, i) => new FaceLook(i, part.Colour, normal, false, projection))], plane);
            }
        }

        for (int p = 0; p < scene.Parts.Length; p++)
        {
            Draw(scene.Parts[p], new PartLook(p, projection, shown is not null), buffer, looks, cut);
        }

        return new Shading([.. looks], projection, buffer, shown).ToPicture(scene.Background);
    }

    /// <summary>
    /// Draws several pictures of the same things from one stand and at one scale, each with some of them, some perhaps lifted. Every thing
    /// is looked at once, whatever the number of pictures.
    /// </summary>
    public static ImmutableArray<Picture> Render(PictureSeries series)
    {
        Projection projection = Projection.Fit(series, Shading.Samples);

        // A lift of whole rows, so that what is lifted is what was drawn, moved.
        double perMillimetre = series.View.Up.Z * projection.PerMillimetre;
        (int Rows, float Nearer) Lifted(int lifts)
        {
            int rows = (int)Math.Round(lifts * series.Lift * perMillimetre);
            return (rows, perMillimetre == 0 ? 0 : (float)(rows / perMillimetre * series.View.Towards.Z));
        }

        var looks = new List<FaceLook>();
        var layers = new DepthBuffer?[series.Things.Length];
        int number = 0;
        for (int i = 0; i < layers.Length; i++)
        {
            if (series.Shots.Any(shot => shot.Shown.Any(shown => shown.Thing == i)))
            {
                layers[i] = new DepthBuffer(series.Width * Shading.Samples, series.Height * Shading.Samples);
                foreach (PicturedPart part in series.Things[i])
                {
                    Draw(part, new PartLook(number++, projection, false), layers[i]!, looks, null);
                }
            }
        }

        FaceLook[] faces = [.. looks];
        var pictures = new Picture[series.Shots.Length];
        Parallel.For(0, pictures.Length, () => new DepthBuffer(series.Width * Shading.Samples, series.Height * Shading.Samples),
            (s, _, buffer) =>
        {
            buffer.Clear();
            foreach (ShownThing shown in series.Shots[s].Shown)
            {
                (int rows, float nearer) = Lifted(shown.Lifts);
                buffer.Lay(layers[shown.Thing]!, rows, nearer);
            }

            pictures[s] = new Shading(faces, projection, buffer).ToPicture(series.Background);
            return buffer;
        }, buffer => buffer.Dispose());
        foreach (DepthBuffer? layer in layers)
        {
            layer?.Dispose();
        }

        return [.. pictures];
    }

    // How the faces of a part are to look: under which number, seen how, and whether backs are shown as cut.
    private readonly record struct PartLook(int Number, Projection Projection, bool ShowsCuts);

    private static void Draw(
        PicturedPart part, PartLook look, DepthBuffer buffer, List<FaceLook> looks, (double X, double Y, double Z, double D)? cut)
    {
        Projection projection = look.Projection;
        Mesh mesh = part.Mesh;
        var world = new Point3[mesh.Vertices.Length];
        var screen = new Point3[mesh.Vertices.Length];
        for (int i = 0; i < world.Length; i++)
        {
            world[i] = part.Placement.Apply(mesh.Vertices[i].ToMillimetres());
            screen[i] = projection.ToScreen(world[i]);
        }

        double side = part.Placement.Determinant < 0 ? -1 : 1;
        ReadOnlySpan<int> corners = mesh.Triangles.AsSpan();
        for (int t = 0; t < corners.Length; t += 3)
        {
            (int a, int b, int c) = (corners[t], corners[t + 1], corners[t + 2]);

            // Bodies are closed: uncut, what looks away is hidden by what looks here. y runs down, so the sign is turned.
            double seen = side
                * (((screen[b].Y - screen[a].Y) * (screen[c].X - screen[a].X))
                    - ((screen[b].X - screen[a].X) * (screen[c].Y - screen[a].Y)));
            if (cut is null && seen <= 0)
            {
                continue;
            }

            if (buffer.Draw(looks.Count, screen[a], screen[b], screen[c], cut))
            {
                Point3 normal = Point3.Cross(world[b] - world[a], world[c] - world[a]);
                Point3 unit = (side / normal.Length) * normal;
                bool isBack = Point3.Dot(unit, projection.Towards) < 0;
                looks.Add(new FaceLook(look.Number, part.Colour, isBack && !look.ShowsCuts ? -1 * unit : unit, isBack, projection));
            }
        }
    }
}
