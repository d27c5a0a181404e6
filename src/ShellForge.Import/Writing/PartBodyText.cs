using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>The body of a part as keys of a board file.</summary>
internal static class PartBodyText
{
    /// <summary>Its package, or its size and height.</summary>
    public static string Of(ImportedPart p)
    {
        if (p.Match is { Profile.Length: > 0, IsLed: false } match && (p.HeightFrom != HeightSource.Library || p.Body.IsEmpty))
        {
            string height = p.HeightFrom == HeightSource.Library ? $", height: {Numeral.Text(p.Height!.Value)}"
                : match.MountingRequired ? ", height: unknown" : "";
            return $"package: {YamlText.Scalar(match.Profile)}{height}";
        }

        Point2 size = !p.Body.IsEmpty ? p.Body.Size : p.Match is { Length: > 0 } m ? new Point2(m.Length, m.Width) : new Point2(2, 2);
        size = new Point2(Math.Clamp(size.X, 0.1, 300), Math.Clamp(size.Y, 0.1, 300));
        string sides = $"{Numeral.Text(size.X)}, {Numeral.Text(size.Y)}";
        return p.Height is >= 0 and <= 100 ? $"size: [{sides}, {Numeral.Text(p.Height!.Value)}]" : $"size: [{sides}], height: unknown";
    }

    /// <summary>Whether the files leave its height or its size open.</summary>
    public static bool IsOpen(ImportedPart p) => (p.Height is null && p.Match?.Passive != true) || (p.Body.IsEmpty && p.Match is null);

    /// <summary>Whether nothing is left to say about it alone, so that one line can tell it together with its like.</summary>
    public static bool IsAlike(ImportedPart p) => !IsOpen(p) && p.Match is not ({ HasMouth: true } or { IsLed: true });
}
