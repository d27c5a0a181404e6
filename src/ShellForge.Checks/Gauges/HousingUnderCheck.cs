using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Sliced;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Remembering;

namespace ShellForge.Checks.Gauges;

/// <summary>What rules look at.</summary>
public sealed record HousingUnderCheck
{
    private readonly Computed _computed = new();

    /// <summary>A housing of what its properties are given.</summary>
    public HousingUnderCheck()
    {
    }

    /// <summary>
    /// The same of everything that is given; what was computed of the other is not taken over, since what is given may change.
    /// </summary>
    [SetsRequiredMembers]
    private HousingUnderCheck(HousingUnderCheck other) =>
        (Board, Plan, Parts, Memory, Sliced, _computed) =
            (other.Board, other.Plan, other.Parts, other.Memory, other.Sliced, new Computed());

    /// <summary>What was asked for.</summary>
    public required BoardFile Board { get; init; }

    /// <summary>What was decided.</summary>
    public required HousingPlan Plan { get; init; }

    /// <summary>What was made, in the order of assembly from the floor up.</summary>
    public required ImmutableArray<MadePart> Parts { get; init; }

    /// <summary>Where what is measured is kept; housings that have anything in common may share it.</summary>
    public WorkMemory Memory { get; init; } = new();

    /// <summary>What the maker's own slicer made of the parts; empty where it was not given.</summary>
    public ImmutableArray<SlicedJob> Sliced { get; init; } = [];

    /// <summary>The parts that have meshes: those without a defect.</summary>
    public IEnumerable<MadePart> SoundParts => Parts.Where(part => part.IsSound);

    /// <summary>The layers of a sound part, as its printer draws it.</summary>
    public PartLayers LayersOf(MadePart part) => Memory.OfMesh(
        part.PrintMesh, new LayersKey(Board.Print.Printer), () => PartLayers.Of(part.PrintMesh.Mesh, Board.Print.Printer, Memory));

    /// <summary>The sections of a sound part as assembled.</summary>
    public ImmutableArray<SectionSlab> SectionsOf(MadePart part) => Memory.OfMesh(
        part.PrintMesh, new SectionsKey(part.Plan.ToFile), () => AssembledSections.Of(part.AssembledMesh));

    /// <summary>How near the board's parts come to a sound part, as far as <see cref="MeasuredGap.ReachOf"/> looks.</summary>
    public ImmutableArray<MeasuredGap> GapsOf(MadePart part) =>
        _computed.Gaps.GetOrAdd(part.Name, _ => new Lazy<ImmutableArray<MeasuredGap>>(() => MeasuredGap.Of(this, part))).Value;

    /// <summary>The surface of a sound part as assembled, for distances and rays.</summary>
    public SurfaceTree TreeOf(MadePart part) => Memory.OfMesh(
        part.PrintMesh, new TreeKey(part.Plan.ToFile), () => new SurfaceTree(part.AssembledMesh));

    /// <summary>The surface of a sound part as printed, for thickness.</summary>
    public SurfaceTree PrintTreeOf(MadePart part) => Memory.OfMesh(
        part.PrintMesh, new PrintTreeKey(), () => new SurfaceTree(part.PrintMesh.Mesh));

    /// <summary>
    /// Works out side by side what several rules look at, so that none of them waits for another. Nothing but speed comes of it: a rule
    /// that runs alone asks for what it needs.
    /// </summary>
    /// <param name="cancel">Stops between two of them.</param>
    public void Prepare(CancellationToken cancel = default)
    {
        Func<object?>[] works =
        [
            () => Light, .. SoundParts.Select<MadePart, Func<object?>>(part => () => LayersOf(part)),
            .. SoundParts.Select<MadePart, Func<object?>>(part => () => SectionsOf(part)),
            .. SoundParts.Select<MadePart, Func<object?>>(part => () => GapsOf(part)),
        ];
        OrderedParallel.Map(works, work => work(), cancel);
    }

    /// <summary>The light; null where the board has no LEDs or no window is lit.</summary>
    public HousingLight? Light => _computed.Light.Get(() => LightOfHousing.Of(this));

    /// <summary>Temperatures.</summary>
    public HousingHeat Heat => _computed.Heat.Get(() => HousingHeat.Of(this));

    /// <summary>Currents.</summary>
    public BoardPower Power => _computed.Power.Get(() => BoardPower.Of(Board));

    /// <summary>The sound part of a name; null when there is none.</summary>
    public MadePart? Part(string name) => SoundParts.FirstOrDefault(part => part.Name == name);

    private sealed record LayersKey(PrinterProfile Printer);

    private sealed record SectionsKey(Transform3 ToFile);

    private sealed record TreeKey(Transform3 ToFile);

    private sealed record PrintTreeKey;

    // Several rules look at the same things; each is computed once, by whoever asks first: rules, report or pictures.
    private sealed class Computed
    {
        public ConcurrentDictionary<string, Lazy<ImmutableArray<MeasuredGap>>> Gaps { get; } = new();

        public Memoized<HousingLight?> Light { get; } = new();

        public Memoized<HousingHeat> Heat { get; } = new();

        public Memoized<BoardPower> Power { get; } = new();
    }
}
