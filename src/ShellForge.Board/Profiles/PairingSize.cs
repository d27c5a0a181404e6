using System.Collections.Immutable;

namespace ShellForge.Board.Profiles;

/// <summary>A size that is measured of a printer with a filament: its key in profile files, and where it stands in the profile.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Unit">mm; empty for a fraction.</param>
/// <param name="Of">Takes it from a pairing; null where it was not measured.</param>
/// <param name="With">The pairing with a measured value.</param>
public sealed record PairingSize(
    string Key, string Unit, Func<PairingProfile, Sourced?> Of, Func<PairingProfile, Sourced, PairingProfile> With)
{
    /// <summary>All of them, in the order in which they are written and shown.</summary>
    public static ImmutableArray<PairingSize> All { get; } =
    [
        new("outer-allowance", "mm", pairing => pairing.OuterAllowance, (pairing, value) => pairing with { OuterAllowance = value }),
        new("hole-allowance", "mm", pairing => pairing.HoleAllowance, (pairing, value) => pairing with { HoleAllowance = value }),
        new("slot-allowance", "mm", pairing => pairing.SlotAllowance, (pairing, value) => pairing with { SlotAllowance = value }),
        new("lip-fit", "mm", pairing => pairing.LipFit, (pairing, value) => pairing with { LipFit = value }),
        new("slot-fit", "mm", pairing => pairing.SlotFit, (pairing, value) => pairing with { SlotFit = value }),
        new("moving-fit", "mm", pairing => pairing.MovingFit, (pairing, value) => pairing with { MovingFit = value }),
        new("accuracy", "mm", pairing => pairing.Accuracy, (pairing, value) => pairing with { Accuracy = value }),
        new("shrinkage", "", pairing => pairing.Shrinkage, (pairing, value) => pairing with { Shrinkage = value }),
        new("shrinkage-spread", "", pairing => pairing.ShrinkageSpread, (pairing, value) => pairing with { ShrinkageSpread = value }),
    ];
}
