using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Folder;

/// <summary>A variant's folder on disk. It appears by one rename, so what is there is whole.</summary>
internal static class VariantFolder
{
    /// <summary>The row that a folder carries; null where it has none of ours.</summary>
    public static VariantRow? RowOf(string folder)
    {
        try
        {
            return RowJson.Read(File.ReadAllBytes(Path.Combine(folder, SweepPaths.Record)));
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    /// <summary>The key of what a folder holds; null where that is not ours.</summary>
    public static string? KeyOf(string folder) => RowOf(folder)?.Key;
}
