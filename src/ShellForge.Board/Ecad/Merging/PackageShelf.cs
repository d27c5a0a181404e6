namespace ShellForge.Board.Ecad.Merging;

/// <summary>The packages shipped with the tool, by name.</summary>
internal static class PackageShelf
{
    public static PackageBook Book { get; } = new(new Dictionary<string, PackageMatch>());
}
