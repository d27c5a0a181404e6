using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks.PrintTime;

/// <summary>What fills a layer within its walls, as strokes.</summary>
/// <param name="Bridge">Nothing is below, or infill alone: threads are drawn from one stroke of it to the next.</param>
/// <param name="Top">Nothing is above.</param>
/// <param name="Skin">Solid for another reason.</param>
/// <param name="Sparse">Infill.</param>
internal sealed record LayerFill(ScanLines Bridge, ScanLines Top, ScanLines Skin, ScanLines Sparse)
{
    // Infill smaller than this is laid solid, mm2; typical of slicers.
    private const double SolidBelow = 70;

    /// <summary>Sorts what lies within the walls.</summary>
    /// <param name="inside">What lies within the walls.</param>
    /// <param name="below">The sections below that count for skins, the nearest first; null at the bed.</param>
    /// <param name="above">Those above, the nearest first; empty at the top.</param>
    /// <param name="under">What fills the layer below; null at the bed.</param>
    /// <param name="printer">The printer.</param>
    public static LayerFill Of(
        ScanLines inside, IReadOnlyList<ScanLines> below, IReadOnlyList<ScanLines> above, LayerFill? under, PrinterProfile printer)
    {
        int skins = (int)printer.Motion.SkinLayers;
        ScanLines none = inside.Less(inside, 0);
        ScanLines bridge = skins == 0 || below.Count == 0 ? none : inside.Less(below[0], printer.LineWidth);
        ScanLines held = inside.Less(bridge, 0);
        ScanLines top = skins == 0 ? none : above.Count == 0 ? held : held.Less(above[0], printer.LineWidth);
        ScanLines rest = held.Less(top, 0);
        ScanLines sparse = below.Count < skins || above.Count < skins ? none : rest;
        foreach (ScanLines other in below.Concat(above))
        {
            sparse = sparse.Shared(other);
        }

        foreach (ScanLines small in sparse.Pieces().Where(piece => piece.Area < SolidBelow).ToArray())
        {
            sparse = sparse.Less(small, 0);
        }

        ScanLines skin = rest.Less(sparse, 0);
        if (under is null)
        {
            return new LayerFill(bridge, top, skin, sparse);
        }

        ScanLines overInfill = skin.Shared(under.Sparse);
        return new LayerFill(bridge.And(overInfill), top, skin.Less(overInfill, 0), sparse);
    }

    /// <summary>The lines, those that carry others first.</summary>
    public IEnumerable<IReadOnlyList<LaidLine>> Lines(PrinterProfile printer)
    {
        yield return Hatch.Lines(Bridge, LineKind.Bridge, 1);
        yield return Hatch.Lines(Skin, LineKind.Skin, 1);
        if (printer.Motion.Infill > 0)
        {
            yield return Hatch.Lines(Sparse, LineKind.Infill, Math.Max(1, (int)Math.Round(1 / printer.Motion.Infill)));
        }

        yield return Hatch.Lines(Top, LineKind.Top, 1);
    }
}
