using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Tells LEDs whose bodies overlap, once for each circle.</summary>
internal static class PixelOverlaps
{
    /// <summary>Checks all LEDs against each other.</summary>
    public static void Check(IReadOnlyList<PixelCircle> circles, List<ParsedPixels> sources, DiagnosticSink sink)
    {
        var all = new List<(int Circle, Pixel Pixel, Point2[] Corners)>();
        for (int c = 0; c < circles.Count; c++)
        {
            foreach (Pixel pixel in circles[c].Pixels)
            {
                Point2[] corners = [.. BoardSurface.Corners(pixel.At, circles[c].Led.Length, circles[c].Led.Width, pixel.Rotation)];
                all.Add((c, pixel, corners));
            }
        }

        double reach = circles.Count == 0 ? 0 : circles.Max(c => new Point2(c.Led.Length, c.Led.Width).Length);
        var told = new HashSet<int>();
        for (int i = 0; i < all.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (told.Contains(all[i].Circle)
                    || Math.Abs(all[i].Pixel.At.X - all[j].Pixel.At.X) > reach
                    || Math.Abs(all[i].Pixel.At.Y - all[j].Pixel.At.Y) > reach
                    || !Overlap(all[i].Corners, all[j].Corners))
                {
                    continue;
                }

                told.Add(all[i].Circle);
                ParsedPixels said = sources[all[i].Circle];
                PixelCircle circle = circles[all[i].Circle];
                string pitch = all[i].Circle == all[j].Circle && circle.Count > 1
                    ? $": {circle.Count} on a circle of {NumberText.Written(circle.Diameter)} are "
                        + $"{NumberText.Written(Math.Round(circle.Pitch, 2))} apart"
                    : "";
                sink.Error(
                    said.Place.Count.Given ? said.Place.Count.Place : said.Node.Place,
                    "pixels-overlap",
                    $"{all[j].Pixel.Ref} and {all[i].Pixel.Ref} overlap{pitch}",
                    $"expected room for bodies of {NumberText.Written(circle.Led.Length)} x {NumberText.Written(circle.Led.Width)}");
            }
        }
    }

    // Two convex outlines are apart when a side of either has all of the other beyond it.
    private static bool Overlap(Point2[] a, Point2[] b) => !HasAllBeyond(a, b) && !HasAllBeyond(b, a);

    private static bool HasAllBeyond(Point2[] outline, Point2[] other)
    {
        for (int i = 0; i < outline.Length; i++)
        {
            Point2 from = outline[i];
            Point2 side = outline[(i + 1) % outline.Length] - from;
            if (other.All(p => Point2.Cross(side, p - from) <= 0))
            {
                return true;
            }
        }

        return false;
    }
}
