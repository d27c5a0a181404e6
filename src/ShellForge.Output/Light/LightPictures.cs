using System.Globalization;
using ShellForge.Checks.Gauges;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;

namespace ShellForge.Output.Light;

/// <summary>Which LEDs are on.</summary>
public enum LightShow
{
    /// <summary>All, white.</summary>
    AllWhite,

    /// <summary>One alone, white.</summary>
    One,

    /// <summary>In turn warm and blue.</summary>
    Alternating,
}

/// <summary>The computed light as pictures, one pixel or more a cell, the viewer's up on top.</summary>
public static class LightPictures
{
    /// <summary>Name of the file with all pictures of the light.</summary>
    public const string FileName = "light.png";

    // Exposure: this share of the lit cells is darker than white on the screen.
    private const double WhitePoint = 0.98;

    // Small windows are drawn with more pixels a cell.
    private const int WantedWidth = 320;
    private const int MostScale = 6;

    private const int Gap = 12;

    // Linear light of the two alternating colours: amber, and a blue of like strength.
    private static readonly (double R, double G, double B) Amber = (1.0, 0.42, 0.06);
    private static readonly (double R, double G, double B) Blue = (0.08, 0.25, 1.0);

    private static readonly Rgb Dark = new(14, 14, 16);
    private static readonly Rgb Bezel = new(24, 24, 27);

    /// <summary>
    /// All pictures as one PNG: false colours above, as the eye sees it below; from left to right all white, one LED, alternating
    /// colours.
    /// </summary>
    public static byte[] Sheet(HousingLight light)
    {
        LightShow[] shows = Enum.GetValues<LightShow>();
        var pictures = new Picture[2 * shows.Length];
        Parallel.For(0, pictures.Length, i =>
            pictures[i] = Enlarged(i < shows.Length ? FalseColours(light, shows[i]) : AsSeen(light, shows[i - shows.Length])));
        int width = pictures[0].Width;
        int height = pictures[0].Height;
        bool band = light.Map.Face.Wraps;
        int across = band ? 1 : 3;
        int down = pictures.Length / across;
        var sheet = new Picture((across * width) + ((across + 1) * Gap), (down * height) + ((down + 1) * Gap), Dark);
        for (int i = 0; i < pictures.Length; i++)
        {
            sheet.Lay(pictures[i], Gap + (i % across * (width + Gap)), Gap + (i / across * (height + Gap)));
        }

        return PngWriter.ToBytes(sheet);
    }

    /// <summary>
    /// One picture as PNG, as the eye sees it, one pixel a cell: for the face in space, on which it is stretched in any case.
    /// </summary>
    public static byte[] SeenPng(HousingLight light, LightShow show) => PngWriter.ToBytes(AsSeen(light, show));

    /// <summary>
    /// What of the plane a picture of a flat diffuser covers, mm; of a band in the wall, the whole way round in degrees and z in mm.
    /// </summary>
    public static Box2 Extent(HousingLight light)
    {
        ReceiverGrid face = light.Map.Face;
        Point2 size = face.Step * new Point2(face.Columns, face.Rows);
        var low = new Point2(face.Left, face.Bottom);
        return face.Wraps ? new Box2(new Point2(0, low.Y), new Point2(360, low.Y + size.Y)) : new Box2(low, low + size);
    }

    /// <summary>What the sheet shows, in words.</summary>
    public static string InWords(HousingLight light) => light.MinimumOverMean is double even
        ? string.Create(
            CultureInfo.InvariantCulture,
            $"{light.Scene.Leds.Length} LEDs; "
                + $"{(light.Circles.Any(circle => circle.Circle is null) ? "between neighbours" : "along the circle")} the dimmest "
                + $"place has {100 * even:0} % of the mean light")
        : string.Create(CultureInfo.InvariantCulture, $"{light.Scene.Leds.Length} LEDs, none of which lights the window straight");

    private static Picture FalseColours(HousingLight light, LightShow show)
    {
        float[] values = Values(light, show);
        double most = values.DefaultIfEmpty(0).Max();
        return Drawn(light.Map.Face, i =>
        {
            (byte r, byte g, byte b) = LightColours.False(most > 0 ? values[i] / most : 0);
            return new Rgb(r, g, b);
        });
    }

    private static Picture AsSeen(HousingLight light, LightShow show)
    {
        LightFields seen = light.Map.Seen;
        float[] all = seen.All.ToArray();
        float[] even = seen.Even.ToArray();
        double white = White(light.Map.Face, Values(light, show));
        float[] alone = seen.Alone.ToArray();
        return Drawn(light.Map.Face, i =>
        {
            (double r, double g, double b) = show switch
            {
                LightShow.Alternating => Mixed(even[i], all[i] - even[i]),
                LightShow.One => (alone[i], alone[i], alone[i]),
                _ => (all[i], all[i], all[i]),
            };
            (byte red, byte green, byte blue) = LightColours.Seen(r / white, g / white, b / white);
            return new Rgb(red, green, blue);
        });
    }

    private static (double R, double G, double B) Mixed(double amber, double blue) => (
        (amber * Amber.R) + (blue * Blue.R), (amber * Amber.G) + (blue * Blue.G), (amber * Amber.B) + (blue * Blue.B));

    private static float[] Values(HousingLight light, LightShow show) => show switch
    {
        LightShow.One => light.Map.Seen.Alone.ToArray(),
        LightShow.Alternating => light.Map.Seen.Even.ToArray(),
        _ => light.Map.Seen.All.ToArray(),
    };

    private static double White(ReceiverGrid face, float[] values)
    {
        float[] lit = [.. Enumerable.Range(0, values.Length).Where(i => face.IsOpen(i) && values[i] > 0).Select(i => values[i])];
        Array.Sort(lit);
        return lit.Length == 0 ? 1 : lit[(int)(WhitePoint * (lit.Length - 1))];
    }

    // Row 0 of the grid is the lowest; of a picture the highest.
    private static Picture Drawn(ReceiverGrid face, Func<int, Rgb> colour)
    {
        var picture = new Picture(face.Columns, face.Rows, Bezel);
        for (int i = 0; i < face.Count; i++)
        {
            if (face.IsOpen(i))
            {
                picture[i % face.Columns, face.Rows - 1 - (i / face.Columns)] = colour(i);
            }
        }

        return picture;
    }

    private static Picture Enlarged(Picture picture) => picture.Enlarged(Math.Clamp(WantedWidth / picture.Width, 1, MostScale));
}
