using System.Text;

namespace ShellForge.Import.Writing;

/// <summary>Scalars and comments of the YAML that is written: plain where that is safe, quoted otherwise.</summary>
internal static class YamlText
{
    private const int LongestName = 60;

    private static readonly string[] Words = ["true", "false", "yes", "no", "on", "off", "y", "n", "null", "inf", "nan"];

    public static string Scalar(string text)
    {
        string name = text.Trim();
        name = name.Length == 0 ? "?" : name.Length > LongestName ? name[..LongestName] : name;
        bool plain = char.IsAsciiLetter(name[0])
            && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-' or '.' or '/')
            && !Words.Contains(name.ToLowerInvariant());
        if (plain)
        {
            return name;
        }

        var quoted = new StringBuilder("\"");
        foreach (char c in name)
        {
            _ = c switch
            {
                '"' => quoted.Append("\\\""),
                '\\' => quoted.Append("\\\\"),
                _ when char.IsControl(c) || char.IsSurrogate(c) || c is '\u2028' or '\u2029' or '\ufeff' => quoted.Append('?'),
                _ => quoted.Append(c),
            };
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>Text fit for a comment: one line, nothing that would end it.</summary>
    public static string Comment(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (char c in text)
        {
            plain.Append(char.IsControl(c) || char.IsSurrogate(c) || c is '\u2028' or '\u2029' or '\ufeff' or '\u0085' ? ' ' : c);
        }

        return plain.Length > 240 ? plain.ToString(0, 237) + "..." : plain.ToString().TrimEnd();
    }
}
