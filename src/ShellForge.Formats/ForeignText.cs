using System.Text;

namespace ShellForge.Formats;

/// <summary>Texts of foreign files, which go to terminals and reports.</summary>
internal static class ForeignText
{
    /// <summary>The beginning of a text, with a mark in place of each control character.</summary>
    /// <param name="text">The text.</param>
    /// <param name="most">Characters that are taken.</param>
    public static string Printable(string text, int most)
    {
        var clean = new StringBuilder();
        foreach (Rune rune in text.EnumerateRunes().Take(most))
        {
            clean.Append(Rune.IsControl(rune) ? "\uFFFD" : rune.ToString());
        }

        return clean.ToString();
    }
}
