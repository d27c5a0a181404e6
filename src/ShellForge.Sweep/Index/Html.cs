namespace ShellForge.Sweep.Index;

/// <summary>Texts within a page.</summary>
internal static class Html
{
    /// <summary>A text with everything that means something in HTML written out.</summary>
    public static string Text(string text) => System.Net.WebUtility.HtmlEncode(text);
}
