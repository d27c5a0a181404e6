using System.Globalization;
using System.Text;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;

namespace ShellForge.Output.Light;

/// <summary>
/// The computed light as a table: a row a cell of the lit face, so that places need no second file that says where the grid lies.
/// Spreadsheets and scripts read it as it is, which a picture of floats does not offer.
/// </summary>
public static class LightTable
{
    // A share of one LED's light in a mm2 is a small number; in a m2 two decimals tell all that the model knows.
    private const double PerSquareMetre = 1e6;

    /// <summary>The table: places in mm, light on the viewer's side in LEDs' light per square metre.</summary>
    public static byte[] Csv(HousingLight light)
    {
        ReceiverGrid face = light.Map.Face;
        LightFields seen = light.Map.Seen;
        var text = new StringBuilder(face.Wraps ? "arc_mm,z_mm" : "x_mm,y_mm");
        text.Append(",all_per_m2,one_per_m2,every_other_per_m2\n");
        for (int i = 0; i < face.Count; i++)
        {
            if (face.IsOpen(i))
            {
                Point2 at = face.Middle(i);
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{at.X:0.###},{at.Y:0.###},{Told(seen.All[i])},{Told(seen.Alone[i])},{Told(seen.Even[i])}\n");
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string Told(float value) => (value * PerSquareMetre).ToString("0.##", CultureInfo.InvariantCulture);
}
