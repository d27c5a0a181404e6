using System.Text.Json;
using ShellForge.Board.Files;
using ShellForge.Output.Files;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Variants;

namespace ShellForge.Sweep.Folder;

/// <summary>
/// A variant's folder on disk. It appears by one rename, so what is there is whole. It is ours where it is a real folder with the record of
/// a variant of its name; what else lies in it belongs to whoever put it there.
/// </summary>
internal static class VariantFolder
{
    private const long LongestRecord = 16 << 20;

    /// <summary>The row that a folder carries; null where it has none of ours.</summary>
    public static VariantRow? RowOf(string folder) =>
        Record(folder) is { } bytes && RowJson.Read(bytes) is { } row && row.Folder == Path.GetFileName(folder) ? row : null;

    /// <summary>The key of what a folder holds; null where that is not ours.</summary>
    public static string? KeyOf(string folder) => RowOf(folder)?.Key;

    /// <summary>Whether anything has the folder's name.</summary>
    public static bool IsThere(string folder) => Path.Exists(folder) || Links.IsLink(folder);

    /// <summary>Whether the folder's name is taken by something that no sweep wrote. An empty folder is nobody's.</summary>
    public static bool IsTaken(string folder) => IsThere(folder) && IsTaken(folder, FilesOf(folder));

    /// <summary>The same for a folder that is there.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="files">What <see cref="FilesOf"/> tells of it.</param>
    public static bool IsTaken(string folder, IReadOnlyList<string> files) =>
        !(Links.IsRealFolder(folder) && (files.Count > 0 || !Directory.EnumerateFileSystemEntries(folder).Any()));

    /// <summary>
    /// Of the files that a run of any version wrote: the record, parts, plates and the formats' own files; those that every run writes
    /// anew are not told. None where there is no record of ours.
    /// </summary>
    public static IReadOnlyList<string> FilesOf(string folder)
    {
        if (Record(folder) is not { } bytes || Stated(bytes, Path.GetFileName(folder)) is not { } stated)
        {
            return [];
        }

        return [.. Directory.GetFiles(folder).Select(path => Path.GetFileName(path)!).Where(name =>
            name == SweepPaths.Record || OutputFormat.All.Any(format => format.OfHousing.Contains(name))
            || IsOfPart(name, stated.Code, stated.Parts))];
    }

    // A mesh of a part, or a plate with parts.
    private static bool IsOfPart(string name, string code, IReadOnlySet<string> parts)
    {
        (string stem, string ending) = (Path.GetFileNameWithoutExtension(name), Path.GetExtension(name));
        return (OutputFormat.All.Any(format => format.PerPart == ending) && parts.Any(part => stem == $"{part}-{code}"))
            || (ending == ".3mf" && stem.StartsWith($"housing-{code}", StringComparison.Ordinal)
                && stem[$"housing-{code}".Length..].TrimStart('-').All(char.IsAsciiDigit));
    }

    private static byte[]? Record(string folder)
    {
        string path = Path.Combine(folder, SweepPaths.Record);
        return Links.IsLink(folder) || Links.IsLink(path) ? null : BoundedFile.Read(path, LongestRecord);
    }

    // As little of a record as tells whose it is: another version may say the rest otherwise.
    private static (string Code, IReadOnlySet<string> Parts)? Stated(byte[] bytes, string folder)
    {
        try
        {
            using JsonDocument json = JsonDocument.Parse(bytes);
            JsonElement root = json.RootElement;
            if (Text(root, "folder") != folder || Text(root, "code") is not { } code || !VariantNames.IsCodeOf(folder, code))
            {
                return null;
            }

            HashSet<string> parts = root.TryGetProperty("housing", out JsonElement housing) && housing.ValueKind == JsonValueKind.Object
                && housing.TryGetProperty("parts", out JsonElement list) && list.ValueKind == JsonValueKind.Array
                ? [.. list.EnumerateArray().Select(part => Text(part, "name")).OfType<string>()] : [];
            return (code, parts);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private static string? Text(JsonElement of, string key) => of.ValueKind == JsonValueKind.Object
        && of.TryGetProperty(key, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}
