using System.Text.Json;
using ShellForge.Output.Files;
using ShellForge.Output.Report;

namespace ShellForge.Cli.Writing;

/// <summary>
/// What an earlier run left in a folder, by its own report: a part that the housing no longer has must not lie beside the new ones
/// and be printed. Files that no report names are not ours and stay.
/// </summary>
internal static class EarlierRun
{
    private const long LongestReport = 64L << 20;

    /// <summary>Names of the files with parts or plates that the report in a folder lists.</summary>
    public static IReadOnlyList<string> MeshFiles(string folder)
    {
        string path = Path.Combine(folder, HousingFiles.ReportFile);
        var info = new FileInfo(path);
        if (!info.Exists || info.Length > LongestReport)
        {
            return [];
        }

        try
        {
            using JsonDocument report = JsonDocument.Parse(File.ReadAllBytes(path));
            JsonElement root = report.RootElement;
            bool ours = root.ValueKind == JsonValueKind.Object
                && root.TryGetProperty("format", out JsonElement format) && format.ValueKind == JsonValueKind.String
                && format.GetString() == ReportJson.Format;
            return ours && root.TryGetProperty("parts", out JsonElement parts) && parts.ValueKind == JsonValueKind.Array
                ? [.. parts.EnumerateArray().SelectMany(part => Named(part, "file", ".stl").Concat(Named(part, "plate", ".3mf")))
                    .Distinct(StringComparer.Ordinal)]
                : [];
        }
        catch (JsonException)
        {
            // Not a report of ours, or one that somebody has edited: then nothing in the folder is known to be ours.
            return [];
        }
    }

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
