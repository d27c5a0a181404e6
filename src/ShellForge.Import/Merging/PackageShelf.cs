using ShellForge.Board.Profiles;

namespace ShellForge.Import.Merging;

/// <summary>Makes the book of known packages from the profiles.</summary>
internal static class PackageShelf
{
    public static PackageBook Book(ProfileLibrary profiles)
    {
        var known = new Dictionary<string, PackageMatch>(StringComparer.Ordinal);
        foreach (PackageProfile p in profiles.Packages.All)
        {
            // What must be said how it is mounted has no height of its own.
            double? height = p.MountingRequired ? null : p.Height is { } h ? h.Value : null;
            known[p.Name] = new PackageMatch(p.Name, false, p.Length, p.Width, height, p.Passive, p.Mouth is not null, p.MountingRequired);
        }

        foreach (LedProfile led in profiles.Leds.All)
        {
            known[led.Name] = new PackageMatch(led.Name, true, led.Length, led.Width, led.Height, false)
            {
                ShiningFace = led.Emission == LedEmission.Side ? led.ShiningFaceDegrees.Value : null,
            };
        }

        return new PackageBook(known);
    }
}
