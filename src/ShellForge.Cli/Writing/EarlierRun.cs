using System.Text.Json;
using ShellForge.Board.Files;
using ShellForge.Output.Files;
using ShellForge.Output.Report;

namespace ShellForge.Cli.Writing;

/// <summary>
/// What an earlier run left in a folder, by its own report: a part that the housing no longer has must not lie beside the new ones
/// and be printed, nor a part for CAD or LEDs for firmware of a board that has changed since. Other files are not ours and stay.
/// </summary>
internal static class EarlierRun
{
    private const long LongestReport = 64L << 20;

    /// <summary>Names that files of the run may have whose report lies in a folder; none where there is no report of ours.</summary>
    public static IReadOnlyList<string> Files(string folder) => Of(folder, FormatOfThis, root =>
        root.TryGetProperty("parts", out JsonElement parts) && parts.ValueKind == JsonValueKind.Array
            ? [.. parts.EnumerateArray()
                .SelectMany(part => Named(part, "file", ".stl").SelectMany(OfPart).Concat(Named(part, "plate", ".3mf")))
                .Concat(OutputFormat.All.SelectMany(format => format.OfHousing)).Distinct(StringComparer.Ordinal)]
            : Array.Empty<string>()) ?? [];

    /// <summary>Whether a run of any version has written into a folder, as its report there says.</summary>
    public static bool IsIn(string folder) => Of(folder, AnyFormat, _ => "") is not null;

    private static bool FormatOfThis(string format) => format == ReportJson.Format;

    private static bool AnyFormat(string format) =>
        format.StartsWith(FormatName.OfAnyVersion(ReportJson.Format), StringComparison.Ordinal);

    private static T? Of<T>(string folder, Func<string, bool> isOurs, Func<JsonElement, T> read)
        where T : class
    {
        string path = Path.Combine(folder, HousingFiles.ReportFile);
        if (BoundedFile.Read(path, LongestReport) is not { } bytes)
        {
            return null;
        }

        try
        {
            using JsonDocument report = JsonDocument.Parse(bytes);
            JsonElement root = report.RootElement;
            return root.ValueKind == JsonValueKind.Object
                && root.TryGetProperty("format", out JsonElement format) && format.ValueKind == JsonValueKind.String
                && isOurs(format.GetString()!) ? read(root) : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            // Not a report of ours, or one that somebody has edited: then nothing in the folder is known to be ours.
            return null;
        }
    }

    private static IEnumerable<string> OfPart(string mesh) =>
        OutputFormat.All.Select(format => format.PerPart).OfType<string>().Select(ending => Path.ChangeExtension(mesh, ending));

    // A bare name with our ending, so that an edited report can't point anywhere else.
    private static IEnumerable<string> Named(JsonElement part, string key, string ending)
    {
        if (part.ValueKind == JsonValueKind.Object
            && part.TryGetProperty(key, out JsonElement file) && file.ValueKind == JsonValueKind.String
            && file.GetString() is { } name && name == Path.GetFileName(name) && name.EndsWith(ending, StringComparison.Ordinal))
        {
            yield return name;
        }
    }
}
