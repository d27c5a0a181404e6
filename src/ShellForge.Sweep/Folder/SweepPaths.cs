namespace ShellForge.Sweep.Folder;

/// <summary>Where everything of a sweep lies in its folder.</summary>
internal static class SweepPaths
{
    /// <summary>Name of the folder that keeps what is known of finished variants.</summary>
    public const string State = "sweep-state";

    /// <summary>Name of a variant's own record beside its files.</summary>
    public const string Record = "variant.json";

    /// <summary>Name of the list of all variants.</summary>
    public const string Listing = "variants.csv";

    /// <summary>Name of the rows of all finished variants, in their order.</summary>
    public const string Rows = "rows.jsonl";

    /// <summary>Beginning of the names of writers' folders.</summary>
    public const string Writer = "writer-";

    /// <summary>Name of a writer's own rows.</summary>
    public const string WriterRows = "rows.jsonl";

    /// <summary>Name of the file that is held while rows are joined.</summary>
    public const string FoldLock = "joining";

    /// <summary>Name of the file that a living writer holds.</summary>
    public const string Lock = "lock";
}
