using ShellForge.Import.Files;

namespace ShellForge.Import.Merging;

/// <summary>
/// Our packages behind hand-over names: chip sizes, usual outlines, LED sizes, and sizes spelled out in the name. A guess is
/// only made where the name leaves no choice.
/// </summary>
internal sealed class PackageBook(IReadOnlyDictionary<string, PackageMatch> known)
{
    /// <summary>Imperial chip codes with the metric code some libraries write beside them.</summary>
    private static readonly (string Imperial, string Metric)[] Chips =
        [("0201", "0603"), ("0402", "1005"), ("0603", "1608"), ("0805", "2012"), ("1206", "3216"), ("1210", "3225"), ("1812", "4532"),
            ("2010", "5025"), ("2512", "6332")];

    // Words in the hand-over name, our profile. Longer words come first, so that the first that fits is the right one.
    private static readonly (string Word, string Profile)[] Families =
    [
        ("SOT-23-6", "sot-23-6"), ("SOT23-6", "sot-23-6"), ("SOT-23-5", "sot-23-5"), ("SOT23-5", "sot-23-5"), ("SOT-223", "sot-223"),
        ("SOT223", "sot-223"),
        ("SOT-23", "sot-23"), ("SOT23", "sot-23"), ("SO-16", "soic-16"), ("SO-14", "soic-14"), ("SO-8", "soic-8"),
        ("SOIC-16", "soic-16"), ("SOIC-14", "soic-14"), ("SOIC-8", "soic-8"), ("TSSOP-20", "tssop-20"), ("TSSOP-14", "tssop-14"),
        ("QFN-32", "qfn-32"), ("QFN-20", "qfn-20"), ("LQFP-48", "lqfp-48"), ("LQFP-32", "lqfp-32"),
        ("SOD-123", "sod-123"), ("SOD123", "sod-123"), ("D_SMA", "sma"), ("DO-214AC", "sma"),
        ("PINHEADER_1X02_P2.54", "header-2.54-1x2"), ("PINHEADER_1X03_P2.54", "header-2.54-1x3"),
        ("PINHEADER_1X04_P2.54", "header-2.54-1x4"),
        ("PINHEADER_1X06_P2.54", "header-2.54-1x6"), ("PINHEADER_1X08_P2.54", "header-2.54-1x8"),
        ("PINHEADER_2X03_P2.54", "header-2.54-2x3"),
        ("PINHEADER_2X05_P2.54", "header-2.54-2x5"), ("PIN HEADER 1X4", "header-2.54-1x4"),
        ("USB_C_RECEPTACLE", "usb-c-receptacle"), ("USB-C-RECEPTACLE", "usb-c-receptacle"), ("USB_MICRO-B", "micro-b-receptacle"),
        ("USB_MICRO_B", "micro-b-receptacle"),
    ];

    private static readonly (string Word, string Led)[] LedWords =
    [
        ("2020", "2020"), ("1010", "1010"), ("1515", "1515"), ("3535", "3535"), ("5050", "5050"), ("4020", "4020-side"),
        ("MINI", "3535"), ("WS2812", "5050"), ("SK6812", "5050"), ("WS2811", "5050"), ("APA102", "5050"), ("SK9822", "5050"),
        ("PLCC4_5.0X5.0", "5050"), ("PLCC6_5.0X5.0", "5050"),
    ];

    /// <summary>The package behind a name; null when the name doesn't tell.</summary>
    public PackageMatch? Find(string reference, string package, string value)
    {
        string name = package.ToUpperInvariant();
        if (known.TryGetValue(package.ToLowerInvariant(), out PackageMatch? same))
        {
            return same;
        }

        if (IsLed(reference, name, value.ToUpperInvariant()) && LedOf(name + " " + value.ToUpperInvariant()) is { } led)
        {
            return led;
        }

        if (ChipOf(reference, name) is { } chip)
        {
            return chip;
        }

        foreach ((string word, string profile) in Families)
        {
            if (name.Contains(word, StringComparison.Ordinal) && known.TryGetValue(profile, out PackageMatch? family))
            {
                return family;
            }
        }

        return SizeInName(name);
    }

    /// <summary>Whether a part is an LED at all, of whatever package.</summary>
    public static bool IsLed(string reference, string package, string value)
    {
        string r = reference.ToUpperInvariant();
        string both = package.ToUpperInvariant() + " " + value.ToUpperInvariant();
        bool named =
            both.Contains("LED", StringComparison.Ordinal) || both.Contains("WS28", StringComparison.Ordinal)
                || both.Contains("SK68", StringComparison.Ordinal)
            || both.Contains("SK98", StringComparison.Ordinal) || both.Contains("APA10", StringComparison.Ordinal)
                || both.Contains("NEOPIXEL", StringComparison.Ordinal);
        return (named && !r.StartsWith('R') && !r.StartsWith('C') && !r.StartsWith('J') && !r.StartsWith('U'))
            || (r.StartsWith("LED", StringComparison.Ordinal) && !both.Contains("DRIVER", StringComparison.Ordinal));
    }

    private PackageMatch? LedOf(string words)
    {
        foreach ((string word, string led) in LedWords)
        {
            if (words.Contains(word, StringComparison.Ordinal) && known.TryGetValue(led, out PackageMatch? match) && match.IsLed)
            {
                return match;
            }
        }

        return null;
    }

    // "C_0402_1005Metric", "_0603MP", "0805_REFL": the imperial code, unless only the metric one is meant.
    private PackageMatch? ChipOf(string reference, string name)
    {
        foreach ((string imperial, string metric) in Chips)
        {
            bool both = name.Contains(imperial + "_" + metric + "METRIC", StringComparison.Ordinal);
            if ((both || HasCode(name, imperial)) && known.TryGetValue(imperial, out PackageMatch? chip) && !chip.IsLed)
            {
                // Electrolytics and inductors borrow the digits; only plain chips have the chip's height.
                return reference.Length > 0 && char.ToUpperInvariant(reference[0]) is 'R' or 'C' or 'L' or 'F' or 'D' ? chip : null;
            }
        }

        return null;
    }

    private static bool HasCode(string name, string code)
    {
        int at = name.IndexOf(code, StringComparison.Ordinal);
        if (at < 0)
        {
            return false;
        }

        bool before = at == 0 || !char.IsAsciiDigit(name[at - 1]);
        int end = at + code.Length;
        bool after = end >= name.Length || !char.IsAsciiDigit(name[end]);
        return before && after && !name.AsSpan(end).StartsWith("METRIC", StringComparison.Ordinal) && name.Length <= 24;
    }

    // "QFN-56-1EP_7x7mm_P0.4mm": length and width stand before the first mm.
    private static PackageMatch? SizeInName(string name)
    {
        int mm = name.IndexOf("MM", StringComparison.Ordinal);
        int start = mm;
        while (start > 0 && (char.IsAsciiDigit(name[start - 1]) || name[start - 1] is '.' or 'X'))
        {
            start--;
        }

        string[] sizes = mm > start ? name[start..mm].Split('X', StringSplitOptions.RemoveEmptyEntries) : [];
        return sizes.Length is 2 or 3
            && Numeral.TryParse(sizes[0], out double length) && Numeral.TryParse(sizes[1], out double width)
            && length is >= 0.1 and <= 300 && width is >= 0.1 and <= 300
                ? new PackageMatch("", false, length, width, null, false)
                : null;
    }
}
