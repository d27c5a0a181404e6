
namespace ShellForge.Import.Placement;

/// <summary>Which column holds what.</summary>
internal sealed record PlacementColumns(int Reference, int X, int Y, int Rotation, int Side, int Mirror, int Value, int Package, int Status,
    double? Unit)
{
    private static readonly string[] ReferenceNames =
        ["ref", "refdes", "refdesignator", "designator", "reference", "referencedesignator", "refdesig", "component", "componentname",
            "part", "partref", "name", "id", "designation", "item"];

    // Best first: the body's middle is wanted, not its pad one or its footprint's origin.
    private static readonly string[] XNames =
        ["midx", "xmid", "centerx", "centrex", "xcenter", "xcentre", "centroidx", "xcentroid", "bodyx", "posx", "xpos", "positionx",
            "xposition",
            "locationx", "xlocation", "xcoord", "xcoordinate", "coordx", "coordinatex", "symx", "symbolx", "placex", "x", "refx", "xref",
            "padx"];

    private static readonly string[] RotationNames = ["rotation", "rot", "angle", "orientation", "rotate", "theta", "rotationdeg",
        "angledeg", "r", "orient"];

    private static readonly string[] SideNames = ["side", "layer", "tb", "boardside", "mountside", "mountingside", "placementside",
        "placelayer", "topbottom", "surface", "layername", "face"];

    private static readonly string[] MirrorNames = ["mirror", "mirrored", "symmirror", "flip", "flipped"];

    private static readonly string[] ValueNames = ["value", "val", "comment", "partvalue", "compvalue", "description", "device",
        "partnumber", "partno", "compdevice"];

    private static readonly string[] PackageNames =
        ["package", "footprint", "pattern", "packagetype", "comppackage", "case", "casesize", "geometry", "decal", "partdecal", "symname",
            "symbolname", "shape", "pkg", "landpattern", "housing"];

    private static readonly string[] StatusNames = ["status", "populate", "populated", "fitted", "mount", "dnp", "dnf"];

    /// <summary>The columns of a header row; null unless it names at least a reference and both coordinates.</summary>
    public static PlacementColumns? FromHeader(IReadOnlyList<string> cells)
    {
        double? unit = null;
        var names = new List<string>(cells.Count);
        foreach (string cell in cells)
        {
            names.Add(Plain(cell, out double? cellUnit));
            unit ??= cellUnit;
        }

        int x = Find(names, XNames);
        int y = Find(names,
            [.. XNames.Select(n => n == "x" ? "y" : n.StartsWith('x') ? "y" + n[1..] : n.EndsWith('x') ? n[..^1] + "y" : n)]);
        int reference = Find(names, ReferenceNames);
        if (x < 0 || y < 0 || reference < 0 || x == y)
        {
            return null;
        }

        return new PlacementColumns(
            reference, x, y, Find(names, RotationNames), Find(names, SideNames), Find(names, MirrorNames), Find(names, ValueNames),
            Find(names, PackageNames), Find(names, StatusNames), unit);
    }

    /// <summary>How many columns were recognised.</summary>
    public int Known => new[] { Rotation, Side, Mirror, Value, Package }.Count(c => c >= 0) + 3;

    /// <summary>A unit word; null when it is none.</summary>
    public static double? UnitWord(ReadOnlySpan<char> word) => word.Trim().ToString().ToUpperInvariant() switch
    {
        "MM" or "MILLIMETER" or "MILLIMETERS" or "MILLIMETRE" or "MILLIMETRES" or "METRIC" => 1,
        "MIL" or "MILS" or "THOU" or "TH" => 0.0254,
        "IN" or "INCH" or "INCHES" or "\"" or "IMPERIAL" => 25.4,
        "CM" => 10,
        "UM" or "MICRON" or "MICRONS" => 0.001,
        _ => null,
    };

    private static int Find(List<string> names, string[] wanted)
    {
        foreach (string name in wanted)
        {
            int at = names.IndexOf(name);
            if (at >= 0)
            {
                return at;
            }
        }

        return -1;
    }

    // "Center-X(mm)" is centerx with a unit; "# Ref" is ref.
    private static string Plain(string cell, out double? unit)
    {
        unit = null;
        string text = cell.ToLowerInvariant();
        int open = text.IndexOfAny(['(', '[']);
        if (open >= 0)
        {
            int close = text.IndexOfAny([')', ']'], open);
            unit = UnitWord(text.AsSpan(open + 1, (close < 0 ? text.Length : close) - open - 1));
            text = text[..open] + (close >= 0 ? text[(close + 1)..] : "");
        }

        string plain = string.Concat(text.Where(char.IsLetterOrDigit));
        foreach (string suffix in new[] { "mm", "mil", "mils", "inch", "in" })
        {
            if (unit is null && plain.Length > suffix.Length && plain.EndsWith(suffix, StringComparison.Ordinal)
                && XNames.Any(
                    n => n == plain[..^suffix.Length]
                        || (plain[..^suffix.Length] is var rest && rest.Contains('y') && n == rest.Replace('y', 'x'))))
            {
                unit = UnitWord(suffix);
                return plain[..^suffix.Length];
            }
        }

        return plain;
    }
}
