namespace ShellForge.Board.Yaml.Tree;

/// <summary>Bounds of what is read, far above any real board, so that no file can make the reader run long or large.</summary>
internal static class YamlLimits
{
    /// <summary>Characters in a file. A board of 1000 parts, a line each, has a tenth of it.</summary>
    public const int Characters = 1_000_000;

    /// <summary>Lists and mappings inside each other. The format itself needs 7.</summary>
    public const int Depth = 24;

    /// <summary>Nodes with all aliases written out.</summary>
    public const int Nodes = 60_000;

    /// <summary>Diagnostics given for one file; the rest is counted.</summary>
    public const int Diagnostics = 200;
}
