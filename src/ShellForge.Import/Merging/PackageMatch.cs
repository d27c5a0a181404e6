
namespace ShellForge.Import.Merging;

/// <summary>A package of our profiles that a hand-over name stands for.</summary>
/// <param name="Profile">Name of our profile; empty when only the size is known from the name.</param>
/// <param name="IsLed">Whether it is an addressable LED of the LED profiles.</param>
/// <param name="Length">Body along x, mm; 0 when unknown.</param>
/// <param name="Width">Body along y, mm; 0 when unknown.</param>
/// <param name="Height">Height above the board, mm; null when unknown.</param>
/// <param name="Passive">Whether an unknown height is no danger.</param>
/// <param name="HasMouth">Whether a plug goes into it.</param>
/// <param name="MountingRequired">Whether the board file must say how it sits.</param>
/// <param name="ShiningFace">Of an LED that shines along the board, the direction of its face in its own frame, degrees; else null.</param>
internal sealed record PackageMatch(
    string Profile, bool IsLed, double Length, double Width, double? Height, bool Passive, bool HasMouth = false,
    bool MountingRequired = false, double? ShiningFace = null);
