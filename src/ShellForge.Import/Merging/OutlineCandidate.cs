using ShellForge.Import.Drawing;
using ShellForge.Import.Dxf;
using ShellForge.Import.Files;
using ShellForge.Import.Gerber;
using ShellForge.Import.Idf;

namespace ShellForge.Import.Merging;

/// <summary>A drawing that may hold the board edge, with how strongly it says so.</summary>
internal sealed record OutlineCandidate(string File, string From, string Unit, int Score, ChainedStrokes Chained)
{
    // Words that exporters use for the board edge layer, in file names and layer titles.
    private static readonly string[] EdgeWords =
        ["EDGE", "OUTLINE", "OUTLLINE", "PROFILE", "BOARDOUT", "CONTOUR", "DIMENSION", "BORDER", "KEEPOUT", "ROUT", "MILL", "CUTS",
            "BOARD_EDGE", "PCB_EDGE", "BRD_OUT"];

    private static readonly string[] EdgeExtensions = [".GKO", ".GM1", ".GML", ".GDO", ".OLN", ".DIM", ".GM", ".GBR1", ".OUT", ".GMB",
        ".BOR", ".FAB", ".GM13", ".GM3", ".GM2"];

    private static readonly string[] OtherExtensions =
        [".GTL", ".GBL", ".GTO", ".GBO", ".GTS", ".GBS", ".GTP", ".GBP", ".CMP", ".SOL", ".STC", ".STS", ".PLC", ".PLS", ".CRC", ".CRS",
            ".TOP", ".BOT", ".SMT", ".SMB", ".SST", ".SSB", ".G1", ".G2", ".GPT", ".GPB"];

    private static readonly string[] OtherWords = ["COPPER", "SILK", "MASK", "PASTE", "LEGEND", "F_CU", "B_CU", "F.CU", "B.CU", "SOLDER",
        "FAB", "COURTYARD", "VSCORE", "V_SCORE"];

    /// <summary>A Gerber as a candidate; null when its layer is named as another one or nothing closed can be in it.</summary>
    public static OutlineCandidate? Of(GerberFacts facts)
    {
        string function = facts.FileFunction.ToUpperInvariant();
        bool isProfile = function.StartsWith("PROFILE", StringComparison.Ordinal) || facts.HasProfileAperture;
        if (function.Length > 0 && !isProfile && !function.StartsWith("OTHER", StringComparison.Ordinal)
            && !function.StartsWith("MECHANICAL", StringComparison.Ordinal))
        {
            return null;
        }

        string name = Path.GetFileName(facts.File).ToUpperInvariant();
        string title = string.Join(' ', facts.Titles).ToUpperInvariant();
        string extension = Path.GetExtension(name);
        int score = isProfile ? 100 : 0;
        score += EdgeWords.Any(w => name.Contains(w, StringComparison.Ordinal)) ? 40 : 0;
        score += EdgeWords.Any(w => title.Contains(w, StringComparison.Ordinal)) ? 25 : 0;
        score += EdgeExtensions.Contains(extension) ? 35 : 0;
        if (!isProfile)
        {
            score -= OtherExtensions.Contains(extension) ? 60 : 0;
            score -= OtherWords.Any(w => name.Contains(w, StringComparison.Ordinal)) ? 60 : 0;
            score -= facts.FlashCount > 0 ? 20 : 0;
            score -= function.StartsWith("OTHER", StringComparison.Ordinal) ? 10 : 0;
        }

        ChainedStrokes chained = StrokeChaining.Run(facts.StrokeCount > EcadLimits.Strokes ? [] : facts.Strokes);
        string from = isProfile ? "Gerber profile" : "Gerber drawing";
        return new OutlineCandidate(facts.File, from, facts.Unit, score + (chained.Loops.Count > 0 ? 10 : 0), chained);
    }

    /// <summary>An IDF board: its outline section can't be anything else.</summary>
    public static OutlineCandidate Of(IdfBoardFacts facts)
    {
        List<OutlineLoop> loops = [.. facts.Loops.OrderByDescending(l => l.Area)];
        double gap = loops.Count == 0 ? 0 : loops.Max(l => l.LargestGap);
        return new OutlineCandidate(
            facts.File, "IDF board outline", facts.Unit == "MM" ? "mm" : facts.Unit.ToLowerInvariant(), 200,
            new ChainedStrokes(loops, 0, 0, 0, 0, ShellForge.Geometry.Numerics.Box2.Empty, gap, 0, 0, 0, 0));
    }

    /// <summary>A DXF drawing, scaled to mm, layers that are named as something else left out.</summary>
    public static OutlineCandidate Of(DxfFacts facts, double unit, string unitWords, EcadLog log)
    {
        List<DxfStroke> edges = [.. facts.Strokes.Where(s => !DxfLayers.IsDecoy(s.Layer))];
        if (edges.Count < facts.Strokes.Length && edges.Count > 0)
        {
            IEnumerable<string> layers = facts.Strokes.Where(s => DxfLayers.IsDecoy(s.Layer)).Select(s => s.Layer).Distinct()
                .Order(StringComparer.Ordinal);
            log.Note(facts.File, 1, "ecad-ignored", $"layers left out by their names: {string.Join(", ", layers.Take(8))}");
        }

        IEnumerable<DxfStroke> used = edges.Count > 0 ? edges : facts.Strokes;
        var strokes = used.Select(s => s.Stroke with { Segment = Scaled(s.Stroke.Segment, unit) }).ToList();
        ChainedStrokes chained = StrokeChaining.Run(strokes);
        bool named = facts.Strokes.Any(s => DxfLayers.IsEdge(s.Layer));
        return new OutlineCandidate(facts.File, "DXF drawing", unitWords, 50 + (named ? 30 : 0) + (chained.Loops.Count > 0 ? 10 : 0),
            chained);
    }

    private static EdgeSegment Scaled(EdgeSegment s, double f) => new(f * s.From, f * s.To, f * s.Centre, s.SweepDegrees);
}
