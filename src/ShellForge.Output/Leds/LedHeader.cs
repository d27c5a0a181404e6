using System.Globalization;
using System.Text;
using ShellForge.Checks.Power;

namespace ShellForge.Output.Leds;

/// <summary>
/// The LEDs as a header for C and C++: whole numbers only, hundredths of a millimetre and of a degree, so that the smallest controller can
/// take it as it is. What each number is stands in the file itself.
/// </summary>
internal static class LedHeader
{
    private const double Hundredths = 100;
    private const int FullTurn = 36000;

    public static byte[] Text(LedDocument leds)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $$"""
            /* {{Comment(leds.Name)}}: its LEDs as they hang, seen from the front. Written by ShellForge, format {{LedDocument.FormatName}}.
               Lengths are hundredths of a millimetre from the board's centre, x to the right, y up.
               Angles are hundredths of a degree, clockwise from straight up.
               Take care: bright and flickering light can dazzle and can trigger seizures. Keep to the cap. */
            #ifndef LEDS_H
            #define LEDS_H

            #include <stdint.h>

            #define LEDS_COUNT {{leds.Count}}
            #define LEDS_CIRCLES {{leds.Circles.Length}}
            #define LEDS_HAVE_CELLS {{(leds.Cells ? 1 : 0)}} /* 1: walls give every LED a cell of its own */
            #define LEDS_BRIGHTNESS_CAP {{leds.BrightnessCap}} /* of 255; set by the {{Reason(leds.CapSetBy)}} */
            #define LEDS_CURRENT_LIMIT_MA {{leds.CurrentLimitMa}} /* may be drawn, board included */
            #define LEDS_CURRENT_AT_CAP_MA {{leds.CurrentAtCapMa}} /* all LEDs white at the cap, strongest dies */

            typedef struct { uint16_t first, count, positions; int16_t diameter; } leds_circle;
            typedef struct { int16_t x, y; uint16_t angle, circle; } leds_place;

            static const leds_circle leds_circles[LEDS_CIRCLES] = {

            """);
        foreach (LedCircle circle in leds.Circles)
        {
            text.Append(CultureInfo.InvariantCulture,
                $"  {{ {circle.First}, {circle.Count}, {circle.Positions}, {Whole(circle.DiameterMm)} }},\n");
        }

        text.Append("};\n\n/* In data order. */\nstatic const leds_place leds_places[LEDS_COUNT] = {\n");
        foreach (LedPlace led in leds.Leds)
        {
            text.Append(CultureInfo.InvariantCulture,
                $"  {{ {Whole(led.XMm)}, {Whole(led.YMm)}, {Whole(led.ClockwiseDeg) % FullTurn}, {led.Circle} }}, /* {Comment(led.Ref)} "
                    + $"*/\n");
        }

        text.Append("};\n\n#endif\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static int Whole(double value) => (int)Math.Round(value * Hundredths);

    // A name that ends the comment would put the rest of itself into the program.
    private static string Comment(string text) =>
        text.Replace("*/", "* /", StringComparison.Ordinal).Replace("/*", "/ *", StringComparison.Ordinal);

    private static string Reason(CapReason reason) => reason switch
    {
        CapReason.Planned => "brightness that is planned",
        CapReason.Supply => "supply",
        CapReason.Plastic => "heat that the plastic stands",
        CapReason.Battery => "heat that the battery stands",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Not a reason."),
    };
}
