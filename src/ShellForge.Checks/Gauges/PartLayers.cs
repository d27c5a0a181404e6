using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Remembering;

namespace ShellForge.Checks.Gauges;

/// <summary>A layer as the printer draws it: the section through its middle.</summary>
/// <param name="Index">From 0 at the bed.</param>
/// <param name="FromZ">Lower face, mm.</param>
/// <param name="ToZ">Upper face, mm.</param>
/// <param name="Outline">The section.</param>
/// <param name="SameAsBelow">Whether the section equals that of the layer below.</param>
public sealed record PrintedLayer(int Index, double FromZ, double ToZ, Region Outline, bool SameAsBelow)
{
    /// <summary>Layer height, mm.</summary>
    public double Height => ToZ - FromZ;
}

/// <summary>A part cut into the layers of its printer profile, in print orientation.</summary>
public sealed class PartLayers
{
    // What a list of places takes, bytes a place, about.
    private const long BytesOfPlace = 64;

    private readonly double _narrowWidth;
    private readonly WorkMemory _memory;

    private PartLayers(ImmutableArray<PrintedLayer> layers, double narrowWidth, WorkMemory memory) =>
        (Layers, _narrowWidth, _memory) = (layers, narrowWidth, memory);

    /// <summary>From the bed up. Layers without material at the top are left out.</summary>
    public ImmutableArray<PrintedLayer> Layers { get; }

    /// <summary>The layers whose section differs from the one below: a housing's walls are alike for long stretches.</summary>
    public IEnumerable<PrintedLayer> Changes => Layers.Where(layer => !layer.SameAsBelow);

    /// <summary>
    /// The section at a height above the bed; none where the part has no layer. A part that is printed in one job with another may start
    /// high above the bed, so layers of two parts are never matched by their number.
    /// </summary>
    public IEnumerable<Region> At(double z) => Layers.Where(layer => layer.FromZ < z && z < layer.ToZ).Select(layer => layer.Outline);

    /// <summary>How many of its layers hold another part too.</summary>
    public int SharedWith(PartLayers other) => LayersWith(other).Count();

    /// <summary>Its layers that hold another part too.</summary>
    public IEnumerable<PrintedLayer> LayersWith(PartLayers other) =>
        Layers.Where(layer => other.At((layer.FromZ + layer.ToZ) / 2).Any());

    /// <summary>Volume of all layers, mm3.</summary>
    public double Volume => Layers.Sum(layer => layer.Outline.Area * layer.Height);

    /// <summary>Slices a part.</summary>
    /// <param name="part">The part as it lies on the bed.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="memory">Knows what was found in sections before: most of a part's are those of the next housing's part.</param>
    public static PartLayers Of(Mesh part, PrinterProfile printer, WorkMemory? memory = null)
    {
        memory ??= new WorkMemory();
        if (part.TriangleCount == 0)
        {
            return new PartLayers([], 0, memory);
        }

        Box3 bounds = Measure.Bounds(part);
        var faces = new List<double> { bounds.Min.Z };
        for (double z = bounds.Min.Z + printer.FirstLayerHeight; faces[^1] < bounds.Max.Z
            - (printer.LayerHeight / 2); z = bounds.Min.Z + printer.FirstLayerHeight + ((faces.Count - 1) * printer.LayerHeight))
        {
            faces.Add(z);
        }

        double[] middles = [.. Enumerable.Range(0, faces.Count - 1).Select(i => (faces[i] + faces[i + 1]) / 2)];
        ImmutableArray<Region> sections = Slicing.Layers(part, middles);
        ImmutableArray<PrintedLayer>.Builder layers = ImmutableArray.CreateBuilder<PrintedLayer>(sections.Length);
        for (int i = 0; i < sections.Length; i++)
        {
            layers.Add(new PrintedLayer(i, faces[i], faces[i + 1], sections[i], i > 0 && IsSame(sections[i], sections[i - 1])));
        }

        return new PartLayers(layers.ToImmutable(),
            Math.Max(PrintBasis.Of(printer).Wall(2), printer.ThinnestWall) - PrintTolerances.Width, memory);
    }

    // Rounding to the lattice leaves walls that are upright to a step or two; their sections are one section for a printer.
    private static bool IsSame(Region a, Region b)
    {
        if (a.Equals(b))
        {
            return true;
        }

        var loopsA = a.Loops;
        var loopsB = b.Loops;
        return loopsA.Length == loopsB.Length && Enumerable.Range(0, loopsA.Length).All(i => IsSame(loopsA[i], loopsB[i]));
    }

    private static bool IsSame(ImmutableArray<Point2> a, ImmutableArray<Point2> b)
    {
        if (a.Length != b.Length)
        {
            return false;
        }

        // Which corner comes first may differ where two share an x.
        int start = Enumerable.Range(0, b.Length).MinBy(i => Point2.Distance(a[0], b[i]));
        for (int i = 0; i < a.Length; i++)
        {
            if (Point2.Distance(a[i], b[(start + i) % b.Length]) > PrintTolerances.SamePlace)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Places of a layer narrower than two lines or the thinnest wall that prints; several rules look at them.</summary>
    internal ImmutableArray<Box2> NarrowPlacesOf(PrintedLayer layer) =>
        _memory.Of(new NarrowKey(layer.Outline, _narrowWidth), () => NarrowPlaces.Of(layer.Outline, _narrowWidth), BytesOf<Box2>(layer));

    /// <summary>Features of a layer that are narrower than a width, mm; at most two lines.</summary>
    internal ImmutableArray<FineFeature> FinerThan(double width, PrintedLayer layer) =>
        _memory.Of<ImmutableArray<FineFeature>>(new FinerKey(layer.Outline, width, _narrowWidth),
            () => [.. ThinFeatures.Narrower(layer.Outline, width, NarrowPlacesOf(layer))], BytesOf<FineFeature>(layer));

    /// <summary>Gaps in a layer that are narrower than a width, mm; at most two lines.</summary>
    internal ImmutableArray<FineFeature> GapsFinerThan(double width, PrintedLayer layer) =>
        _memory.Of<ImmutableArray<FineFeature>>(new GapsKey(layer.Outline, width, _narrowWidth),
            () => [.. ThinFeatures.Gaps(layer.Outline, width, NarrowPlacesOf(layer))], BytesOf<FineFeature>(layer));

    /// <summary>Pieces of a layer that the layer below of the same part does not carry: <see cref="Unsupported.Of"/>.</summary>
    internal ImmutableArray<UnsupportedPiece> UnsupportedIn(PrintedLayer layer, double stepOut, double line) =>
        _memory.Of(new UnsupportedKey(layer.Outline, Below(layer), stepOut, line),
            () => Unsupported.Of(layer.Outline, Below(layer), stepOut, line), BytesOf<UnsupportedPiece>(layer));

    /// <summary>The section of the layer below in the same part; empty for the first.</summary>
    internal Region Below(PrintedLayer layer) => layer.Index > 0 ? Layers[layer.Index - 1].Outline : Region.Empty;

    // With the section that it is known by.
    private static Func<ImmutableArray<T>, long> BytesOf<T>(PrintedLayer layer) =>
        found => RegionWeight.Of(layer.Outline) + (BytesOfPlace * found.Length);

    private sealed record NarrowKey(Region Section, double Width);

    private sealed record FinerKey(Region Section, double Width, double Narrow);

    private sealed record GapsKey(Region Section, double Width, double Narrow);

    private sealed record UnsupportedKey(Region Section, Region Below, double StepOut, double Line);
}
