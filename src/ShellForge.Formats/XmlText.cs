using System.Text;
using System.Xml;

namespace ShellForge.Formats;

/// <summary>Text for XML 1.0, which has no escape for control characters.</summary>
internal static class XmlText
{
    /// <summary>The text with every character that XML cannot hold replaced by U+FFFD.</summary>
    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (i + 1 < text.Length && XmlConvert.IsXmlSurrogatePair(text[i + 1], text[i]))
            {
                clean.Append(text[i]).Append(text[++i]);
            }
            else
            {
                clean.Append(XmlConvert.IsXmlChar(text[i]) ? text[i] : '\uFFFD');
            }
        }

        return clean.ToString();
    }
}
