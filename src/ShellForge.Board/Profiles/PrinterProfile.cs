namespace ShellForge.Board.Profiles;

/// <summary>A printer with its nozzle and the allowances that make its prints come out to size.</summary>
public sealed record PrinterProfile
{
    /// <summary>Profile name, such as <c>fdm-0.4</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Nozzle, mm.</summary>
    public required Sourced Nozzle { get; init; }

    /// <summary>Line width, mm.</summary>
    public required Sourced LineWidth { get; init; }

    /// <summary>Layer height, mm.</summary>
    public required Sourced LayerHeight { get; init; }

    /// <summary>First layer, mm.</summary>
    public required Sourced FirstLayerHeight { get; init; }

    /// <summary>Bed along x, mm.</summary>
    public required Sourced BedX { get; init; }

    /// <summary>Bed along y, mm.</summary>
    public required Sourced BedY { get; init; }

    /// <summary>Build height, mm.</summary>
    public required Sourced BedZ { get; init; }

    /// <summary>Margin kept free along the bed's edges, brim included, mm.</summary>
    public required Sourced BedMargin { get; init; }

    /// <summary>Added to the diameter of upright holes other than insert holes, mm.</summary>
    public required Sourced HoleAllowance { get; init; }

    /// <summary>Gap per side of a loose fit, mm.</summary>
    public required Sourced LooseFit { get; init; }

    /// <summary>Gap per side of a normal fit, mm.</summary>
    public required Sourced NormalFit { get; init; }

    /// <summary>Gap per side between a round lip and the wall it goes into, mm, before what a larger diameter asks for.</summary>
    public required Sourced LipFit { get; init; }

    /// <summary>
    /// What prints take from the gap of <see cref="LipFit"/> beyond what a typical printer does, mm per side: the gap is drawn wider by it
    /// and is not there in the hand. 0 where nothing was measured.
    /// </summary>
    public double LipCloses { get; init; }

    /// <summary>Gap per side between a straight tongue and its slot, mm.</summary>
    public required Sourced SlotFit { get; init; }

    /// <summary>Gap per side between a flat part and the seat it is laid into, mm.</summary>
    public Sourced InlayFit { get; init; } = UsualInlayFit;

    /// <summary>Gap along z between parts that slide over each other's layers, mm: whole layers of it come out.</summary>
    public Sourced LayerFit { get; init; } = UsualLayerFit;

    /// <summary>Added to a disc magnet's diameter for the pocket it is glued into, mm.</summary>
    public Sourced MagnetAllowance { get; init; } = UsualMagnetAllowance;

    /// <summary>Added to a battery's width and length for its bay, mm: it goes in and out by fingers and does not rattle.</summary>
    public Sourced BatteryFit { get; init; } = UsualBatteryFit;

    /// <summary>Thinnest wall that prints whole, mm; a line where a profile does not say.</summary>
    public required Sourced ThinnestWall { get; init; }

    /// <summary>Force that closes a snap bead, as a share of the computed one.</summary>
    public Sourced SnapForce { get; init; } = UsualSnapForce;

    /// <summary>Gap per side of a tight fit, mm.</summary>
    public required Sourced TightFit { get; init; }

    /// <summary>Spread of a printed size, plus and minus, mm.</summary>
    public required Sourced Accuracy { get; init; }

    /// <summary>Growth of the first layers per side, mm.</summary>
    public required Sourced ElephantFoot { get; init; }

    /// <summary>Largest overhang from the vertical, degrees.</summary>
    public required Sourced OverhangDegrees { get; init; }

    /// <summary>Bridge spans from which a note, a warning and a stop are given, mm.</summary>
    public required Sourced BridgeNote { get; init; }

    /// <summary>See <see cref="BridgeNote"/>.</summary>
    public required Sourced BridgeWarn { get; init; }

    /// <summary>See <see cref="BridgeNote"/>.</summary>
    public required Sourced BridgeStop { get; init; }

    /// <summary>Most plastic that the nozzle melts, mm3/s: no line is laid faster.</summary>
    public required Sourced FlowRate { get; init; }

    /// <summary>What its slicer lays in every layer, and how fast.</summary>
    public required PrinterMotion Motion { get; init; }

    /// <summary>How many filaments it changes between by itself within a print; 1 for a printer with one spool.</summary>
    public Sourced Filaments { get; init; } = OneFilament;

    /// <summary>What holds where a profile does not say.</summary>
    public static Sourced UsualInlayFit { get; } = new(0.3, "typical: print a coupon");

    /// <summary>What holds where a profile does not say.</summary>
    public static Sourced UsualLayerFit { get; } = new(0.2, "typical: print a coupon");

    /// <summary>What holds where a profile does not say. Source: trade knowledge for sintered magnets of +-0.1.</summary>
    public static Sourced UsualMagnetAllowance { get; } = new(0.15, "typical: print a coupon");

    /// <summary>What holds where a profile does not say.</summary>
    public static Sourced UsualBatteryFit { get; } = new(0.6, "typical: print a coupon");

    /// <summary>What holds where a profile does not say.</summary>
    public static Sourced UsualSnapForce { get; } = new(1, "as computed; typical: print a coupon");

    /// <summary>What holds where a profile does not say.</summary>
    public static Sourced OneFilament { get; } = new(1, "one where the profile does not say");

    /// <summary>Whether the slicer itself scales for shrinkage: the plan then does not.</summary>
    public bool SlicerScalesShrinkage { get; init; }

    /// <summary>
    /// The factor in x and y by which parts of a filament are written larger, so that they shrink to size; 1 where the slicer does that.
    /// </summary>
    public double WrittenScale(FilamentProfile filament)
    {
        const int decimals = 5;
        return SlicerScalesShrinkage ? 1 : Math.Round(1 / (1 - filament.Shrinkage), decimals);
    }
}
