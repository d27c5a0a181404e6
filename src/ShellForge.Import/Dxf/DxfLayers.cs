
namespace ShellForge.Import.Dxf;

/// <summary>What layer names tell: many drawings carry dimensions and text beside the edge.</summary>
internal static class DxfLayers
{
    private static readonly string[] Edges = ["EDGE", "OUTLINE", "PROFILE", "BOARD", "CONTOUR", "CUT"];

    private static readonly string[] Decoys =
        ["TEXT", "ANNOT", "DIMENSIONS", "DIMS", "SILK", "TITLE", "FRAME", "COPPER", "PASTE", "MASK", "CENTER", "CENTRE", "HIDDEN",
            "CONSTRUCTION", "DEFPOINTS", "NOTES", "COURTYARD", "FAB"];

    public static bool IsEdge(string layer) => Edges.Any(w => layer.Contains(w, StringComparison.OrdinalIgnoreCase));

    public static bool IsDecoy(string layer) => !IsEdge(layer) && Decoys.Any(w => layer.Contains(w, StringComparison.OrdinalIgnoreCase));
}
