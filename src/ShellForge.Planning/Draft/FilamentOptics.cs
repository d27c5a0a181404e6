using ShellForge.Board.Profiles;
using ShellForge.Physics.Light;

namespace ShellForge.Planning.Draft;

/// <summary>From a filament's profile to what the model of light knows of it.</summary>
public static class FilamentOptics
{
    /// <summary>What a filament does with light.</summary>
    public static SurfaceOptics Of(FilamentProfile filament) => filament.Absorbs
        ? new SurfaceOptics(filament.Reflectance, 0, filament.TransmissionLength)
        : new SurfaceOptics(filament.Reflectance, filament.TransmissionLength);
}
