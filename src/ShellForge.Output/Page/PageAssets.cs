namespace ShellForge.Output.Page;

/// <summary>Style and script of the page.</summary>
/// <param name="Style">The style sheet.</param>
/// <param name="Script">The bundled script, deflated without a header, as base64; null when the tool was built without Node.</param>
public sealed record PageAssets(string Style, string? Script)
{
    /// <summary>What was built into this tool for reports.</summary>
    public static PageAssets Embedded => new(Read("page.css")!, Read("report.packed"));

    /// <summary>What was built into this tool for the page that follows a board file and writes it.</summary>
    public static PageAssets EmbeddedForBench => new(Read("page.css")!, Read("bench.packed"));

    private static string? Read(string name)
    {
        using Stream? stream = typeof(PageAssets).Assembly.GetManifestResourceStream($"page/{name}");
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
