using System.Collections.Immutable;
using System.Globalization;

namespace ShellForge.Board.Profiles;

/// <summary>
/// What was measured of one printer with one filament, kind of feature by kind of feature: a size that is not given stays the printer's or
/// the filament's own.
/// </summary>
public sealed record PairingProfile
{
    /// <summary>Profile name, by custom <c>printer+filament</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Name of the printer.</summary>
    public required string Printer { get; init; }

    /// <summary>Name of the filament.</summary>
    public required string Filament { get; init; }

    /// <summary>Added to outer sizes so that they come out, mm: below 0 where prints grow.</summary>
    public Sourced? OuterAllowance { get; init; }

    /// <summary>Added to the diameter of upright holes, mm.</summary>
    public Sourced? HoleAllowance { get; init; }

    /// <summary>Added to the width of slots, mm.</summary>
    public Sourced? SlotAllowance { get; init; }

    /// <summary>Gap per side between a round lip and its wall, mm.</summary>
    public Sourced? LipFit { get; init; }

    /// <summary>Gap per side between a tongue and its slot, mm.</summary>
    public Sourced? SlotFit { get; init; }

    /// <summary>Gap per side at which parts move freely, mm.</summary>
    public Sourced? MovingFit { get; init; }

    /// <summary>Gap per side between a flat part and its seat, mm.</summary>
    public Sourced? InlayFit { get; init; }

    /// <summary>Gap along z between parts that slide over each other's layers, mm.</summary>
    public Sourced? LayerFit { get; init; }

    /// <summary>Added to width and height of openings for plugs, mm.</summary>
    public Sourced? PlugAllowance { get; init; }

    /// <summary>Added to a disc magnet's diameter for its pocket, mm.</summary>
    public Sourced? MagnetAllowance { get; init; }

    /// <summary>Added to a battery's width and length for its bay, mm.</summary>
    public Sourced? BatteryFit { get; init; }

    /// <summary>Thinnest wall that prints whole, mm.</summary>
    public Sourced? ThinnestWall { get; init; }

    /// <summary>Largest overhang that prints clean, degrees from the vertical.</summary>
    public Sourced? Overhang { get; init; }

    /// <summary>Longest bridge that prints clean, mm.</summary>
    public Sourced? BridgeNote { get; init; }

    /// <summary>Longest bridge that sags no more than a layer or two, mm.</summary>
    public Sourced? BridgeWarn { get; init; }

    /// <summary>Longest bridge that closes at all, mm.</summary>
    public Sourced? BridgeStop { get; init; }

    /// <summary>Force that closes a snap bead, as a share of the computed one.</summary>
    public Sourced? SnapForce { get; init; }

    /// <summary>Spread of a printed size that is left, plus and minus, mm.</summary>
    public Sourced? Accuracy { get; init; }

    /// <summary>Linear shrinkage as a fraction.</summary>
    public Sourced? Shrinkage { get; init; }

    /// <summary>How much that varies, as a fraction.</summary>
    public Sourced? ShrinkageSpread { get; init; }

    /// <summary>What a profile may say of a hole for an insert, mm.</summary>
    public static (double Least, double Most) InsertHoleRange => (1, 30);

    /// <summary>Holes as drawn that inserts go into well, mm, by the insert's name.</summary>
    public ImmutableArray<(string Insert, Sourced Hole)> InsertHoles { get; init; } = [];

    /// <summary>What was answered to each coupon, as it was answered, by the coupon's name.</summary>
    public ImmutableArray<(string Coupon, string Raw)> Readings { get; init; } = [];

    /// <summary>The printer with what was measured in place of what is typical.</summary>
    /// <remarks>
    /// Where a fit was not tried itself, it follows from the sizes of bodies and openings: the gap that a typical printer leaves in the
    /// hand is kept, and what this one takes from either side is added to it.
    /// </remarks>
    public PrinterProfile Of(PrinterProfile printer)
    {
        Sourced lip = LipFit ?? Following(printer.LipFit, printer, HoleAllowance) ?? printer.LipFit;
        return printer with
        {
            HoleAllowance = HoleAllowance ?? printer.HoleAllowance,
            LipFit = lip,
            LipCloses = lip - printer.LipFit,
            SlotFit = SlotFit ?? Following(printer.SlotFit, printer, SlotAllowance) ?? printer.SlotFit,
            NormalFit = Following(printer.NormalFit, printer, HoleAllowance) ?? printer.NormalFit,
            LooseFit = MovingFit ?? Following(printer.LooseFit, printer, HoleAllowance) ?? printer.LooseFit,
            Accuracy = Accuracy ?? printer.Accuracy,
            InlayFit = InlayFit ?? Following(printer.InlayFit, printer, HoleAllowance) ?? printer.InlayFit,
            LayerFit = LayerFit ?? printer.LayerFit,
            MagnetAllowance = MagnetAllowance ?? Closing(printer.MagnetAllowance, printer) ?? printer.MagnetAllowance,
            BatteryFit = BatteryFit ?? ClosingSlot(printer.BatteryFit) ?? printer.BatteryFit,
            ThinnestWall = ThinnestWall ?? printer.ThinnestWall,
            OverhangDegrees = Overhang ?? printer.OverhangDegrees,
            BridgeNote = BridgeNote ?? printer.BridgeNote,
            BridgeWarn = BridgeWarn ?? printer.BridgeWarn,
            BridgeStop = BridgeStop ?? printer.BridgeStop,
            SnapForce = SnapForce ?? printer.SnapForce,
        };
    }

    /// <summary>The filament with what was measured in place of what is typical.</summary>
    public FilamentProfile Of(FilamentProfile filament) => filament with
    {
        Shrinkage = Shrinkage ?? filament.Shrinkage,
        ShrinkageSpread = ShrinkageSpread ?? filament.ShrinkageSpread,
    };

    /// <summary>The insert with the hole that was found for it.</summary>
    public InsertProfile Of(InsertProfile insert)
    {
        int found = -1;
        for (int i = 0; i < InsertHoles.Length && found < 0; i++)
        {
            found = InsertHoles[i].Insert == insert.Name ? i : -1;
        }

        return found < 0 ? insert : insert with { HoleDiameter = InsertHoles[found].Hole, IsHoleMeasured = true };
    }

    /// <summary>A connector's openings as they must be drawn for its plug to go in.</summary>
    public MouthProfile Of(MouthProfile mouth)
    {
        if (PlugAllowance is not { } allowance)
        {
            return mouth;
        }

        Sourced Wider(Sourced size) => new(Math.Round(size + allowance, 3, MidpointRounding.AwayFromZero),
            string.Create(CultureInfo.InvariantCulture,
                $"{size.Value:0.###} of the profile and {allowance.Value:0.###} {allowance.Source}"));
        return mouth with
        {
            OpeningWidth = Wider(mouth.OpeningWidth),
            OpeningHeight = Wider(mouth.OpeningHeight),
            RecessWidth = Wider(mouth.RecessWidth),
            RecessHeight = Wider(mouth.RecessHeight),
        };
    }

    // A pocket closes as holes do: what this printer takes from them beyond a typical one is added.
    private Sourced? Closing(Sourced typical, PrinterProfile printer) => HoleAllowance is { } hole
        ? new Sourced(Math.Round(typical + hole - printer.HoleAllowance, 3, MidpointRounding.AwayFromZero), hole.Source) : null;

    // A bay closes as slots do.
    private Sourced? ClosingSlot(Sourced typical) => SlotAllowance is { } slot
        ? new Sourced(Math.Round(typical + slot, 3, MidpointRounding.AwayFromZero), slot.Source) : null;

    private Sourced? Following(Sourced typical, PrinterProfile printer, Sourced? opening)
    {
        if (OuterAllowance is not { } outer || opening is not { } measured)
        {
            return null;
        }

        double inHand = typical - (printer.HoleAllowance / 2);
        double gap = Math.Round(inHand + ((measured - outer) / 2), 3, MidpointRounding.AwayFromZero);
        return new Sourced(Math.Max(0, gap), measured.Source);
    }
}
