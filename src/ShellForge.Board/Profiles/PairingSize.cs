using System.Collections.Immutable;

namespace ShellForge.Board.Profiles;

/// <summary>A size that is measured of a printer with a filament: its key in profile files, and where it stands in the profile.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Unit">mm or degrees; empty for a fraction.</param>
/// <param name="Least">Least that a profile may say.</param>
/// <param name="Most">Most that a profile may say.</param>
/// <param name="Words">What it is, in a sentence.</param>
/// <param name="Otherwise">What holds where it was not measured.</param>
public sealed record PairingSize(string Key, string Unit, double Least, double Most, string Words, string Otherwise)
{
    /// <summary>Takes it from a pairing; null where it was not measured.</summary>
    public required Func<PairingProfile, Sourced?> Of { get; init; }

    /// <summary>The pairing with a measured value.</summary>
    public required Func<PairingProfile, Sourced, PairingProfile> With { get; init; }

    /// <summary>The size of a key; null where there is none.</summary>
    public static PairingSize? Find(string key) => All.FirstOrDefault(size => size.Key == key);

    /// <summary>All of them, in the order in which they are written and shown.</summary>
    public static ImmutableArray<PairingSize> All { get; } =
    [
        new("outer-allowance", "mm", -1, 1, "Added to outer sizes so that they come out.", "none")
        {
            Of = pairing => pairing.OuterAllowance,
            With = (pairing, value) => pairing with { OuterAllowance = value },
        },
        new("hole-allowance", "mm", -0.5, 1, "Added to the diameter of upright holes.", "the printer's")
        {
            Of = pairing => pairing.HoleAllowance,
            With = (pairing, value) => pairing with { HoleAllowance = value },
        },
        new("slot-allowance", "mm", -0.5, 1, "Added to the width of slots.", "none")
        {
            Of = pairing => pairing.SlotAllowance,
            With = (pairing, value) => pairing with { SlotAllowance = value },
        },
        new("lip-fit", "mm", 0, 2, "Gap per side between a round lip and its wall.", "the printer's")
        {
            Of = pairing => pairing.LipFit,
            With = (pairing, value) => pairing with { LipFit = value },
        },
        new("slot-fit", "mm", 0, 2, "Gap per side between a tongue and its slot.", "the printer's")
        {
            Of = pairing => pairing.SlotFit,
            With = (pairing, value) => pairing with { SlotFit = value },
        },
        new("moving-fit", "mm", 0, 2, "Gap per side at which parts move freely.", "the printer's loose-fit")
        {
            Of = pairing => pairing.MovingFit,
            With = (pairing, value) => pairing with { MovingFit = value },
        },
        new("inlay-fit", "mm", 0, 2, "Gap per side between a flat part and the seat it is laid into.", "the printer's")
        {
            Of = pairing => pairing.InlayFit,
            With = (pairing, value) => pairing with { InlayFit = value },
        },
        new("layer-fit", "mm", 0, 2, "Gap along z between parts that slide over each other's layers.", "the printer's")
        {
            Of = pairing => pairing.LayerFit,
            With = (pairing, value) => pairing with { LayerFit = value },
        },
        new("plug-allowance", "mm", -1, 2, "Added to width and height of openings for plugs.", "none")
        {
            Of = pairing => pairing.PlugAllowance,
            With = (pairing, value) => pairing with { PlugAllowance = value },
        },
        new("magnet-allowance", "mm", -0.5, 1, "Added to a disc magnet's diameter for its pocket.", "the printer's")
        {
            Of = pairing => pairing.MagnetAllowance,
            With = (pairing, value) => pairing with { MagnetAllowance = value },
        },
        new("battery-fit", "mm", -0.5, 3, "Added to a battery's width and length for its bay.", "the printer's")
        {
            Of = pairing => pairing.BatteryFit,
            With = (pairing, value) => pairing with { BatteryFit = value },
        },
        new("thinnest-wall", "mm", 0.1, 4, "Thinnest wall that prints whole.", "the printer's")
        {
            Of = pairing => pairing.ThinnestWall,
            With = (pairing, value) => pairing with { ThinnestWall = value },
        },
        new("overhang", "degrees", 20, 85, "Largest overhang from the vertical.", "the printer's")
        {
            Of = pairing => pairing.Overhang,
            With = (pairing, value) => pairing with { Overhang = value },
        },
        new("bridge-note", "mm", 1, 200, "Bridge span that is noted.", "the printer's")
        {
            Of = pairing => pairing.BridgeNote,
            With = (pairing, value) => pairing with { BridgeNote = value },
        },
        new("bridge-warn", "mm", 1, 200, "Bridge span that warns.", "the printer's")
        {
            Of = pairing => pairing.BridgeWarn,
            With = (pairing, value) => pairing with { BridgeWarn = value },
        },
        new("bridge-stop", "mm", 1, 200, "Bridge span that stops.", "the printer's")
        {
            Of = pairing => pairing.BridgeStop,
            With = (pairing, value) => pairing with { BridgeStop = value },
        },
        new("snap-force", "", 0.05, 10, "Force that closes a snap bead, as a share of the computed one.", "the printer's")
        {
            Of = pairing => pairing.SnapForce,
            With = (pairing, value) => pairing with { SnapForce = value },
        },
        new("accuracy", "mm", 0, 2, "Spread of a printed size that is left.", "the printer's")
        {
            Of = pairing => pairing.Accuracy,
            With = (pairing, value) => pairing with { Accuracy = value },
        },
        new("shrinkage", "", -0.02, 0.05, "Linear shrinkage as a fraction.", "the filament's")
        {
            Of = pairing => pairing.Shrinkage,
            With = (pairing, value) => pairing with { Shrinkage = value },
        },
        new("shrinkage-spread", "", 0, 0.02, "How much that varies.", "the filament's")
        {
            Of = pairing => pairing.ShrinkageSpread,
            With = (pairing, value) => pairing with { ShrinkageSpread = value },
        },
    ];
}
