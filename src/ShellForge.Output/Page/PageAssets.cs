namespace ShellForge.Output.Page;

/// <summary>Style and script of the page.</summary>
/// <param name="Style">The style sheet.</param>
/// <param name="Script">The bundled script, deflated without a header, as base64; null when the tool was built without Node.</param>
public sealed record PageAssets(string Style, string? Script)
{
    /// <summary>What was built into this tool.</summary>
    public static PageAssets Embedded => new(Read("page.css")!, Read("page.packed"));

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
