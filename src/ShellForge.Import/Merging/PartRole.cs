
namespace ShellForge.Import.Merging;

/// <summary>Rows of a placement list that are no parts: marks for machines, holes, test pads, drawings.</summary>
internal static class PartRole
{
    private static readonly string[] FiducialWords = ["FIDUCIAL", "FID_", "FIDU"];
    private static readonly string[] HoleWords = ["MOUNTINGHOLE", "MOUNTING_HOLE", "MOUNT-HOLE", "MOUNTHOLE", "TOOLING", "BOHR", "DRILL_",
        "NPTH", "HOLE_", "-HOLE", "SCREWHOLE"];
    private static readonly string[] PadWords = ["TESTPOINT", "TEST_POINT", "TESTPAD", "SOLDERJUMPER", "SOLDER_JUMPER", "NETTIE", "NET_TIE",
        "MOUSEBITE", "MOUSE_BITE"];
    private static readonly string[] DrawingWords = ["LOGO", "SYMBOL_", "BOARD-FRAME", "BOARD_OUTLINE", "SILKSCREEN"];

    /// <summary>Why a row is no part; null for parts.</summary>
    public static string? Skip(string reference, string package, string value)
    {
        string p = package.ToUpperInvariant();
        string v = value.ToUpperInvariant();
        string r = reference.ToUpperInvariant();
        if (Any(p, FiducialWords) || Any(v, FiducialWords) || p == "FID" || IsNumbered(r, "FID")
            || r.StartsWith("FIDUCIAL", StringComparison.Ordinal))
        {
            return "fiducial";
        }

        if (Any(p, HoleWords) || p.StartsWith("HOLE", StringComparison.Ordinal) || Any(v, HoleWords) || IsNumbered(r, "MH")
            || IsNumbered(r, "HOLE") || IsNumbered(r, "TOOLING"))
        {
            return "hole";
        }

        if (Any(p, PadWords) || (p == "TP" || IsNumbered(r, "TP")))
        {
            return "test pad";
        }

        return Any(p, DrawingWords) ? "drawing" : null;
    }

    private static bool Any(string text, string[] words) => Array.Exists(words, w => text.Contains(w, StringComparison.Ordinal));

    private static bool IsNumbered(string reference, string prefix) =>
        reference.StartsWith(prefix, StringComparison.Ordinal) && reference.AsSpan(prefix.Length).IndexOfAnyExceptInRange('0', '9') < 0;
}
