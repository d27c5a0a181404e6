namespace ShellForge.Sweep.Index;

/// <summary>Texts within a page.</summary>
internal static class Html
{
    /// <summary>A text with everything that means something in HTML written out.</summary>
    public static string Text(string text) => System.Net.WebUtility.HtmlEncode(text);

    /// <summary>A path that may be broken after each dot, so that a narrow column can carry it.</summary>
    public static string Path(string path) => Text(path).Replace(".", ".<wbr>", StringComparison.Ordinal);
}
