using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using ShellForge.Board.Yaml.Variation;

namespace ShellForge.Sweep.Variants;

/// <summary>
/// Names of variants' folders, such as <c>m2.5x4-od4.6_petg-black_walls-4_k3f9x2</c>: what is varied for people, then a code that keeps
/// two variants apart whatever was shortened. No sign that any file system refuses, no capital that some take for a small letter, and
/// never a reserved word, since the code always follows.
/// </summary>
internal static partial class VariantNames
{
    /// <summary>Letters of a code in a name.</summary>
    public const int CodeLength = 6;

    private const int LongestTelling = 48;

    // No letter that looks like a digit, and too few vowels for words.
    private const string Alphabet = "23456789abcdefghjkmnpqrstuvwxyz";

    /// <summary>Whether a text is a name that a variant's folder can have.</summary>
    public static bool IsFolder(string name) => FolderName.IsMatch(name);

    /// <summary>Whether a text is a code, and a folder's name ends with it.</summary>
    public static bool IsCodeOf(string folder, string code) => IsFolder(folder) && CodeText.IsMatch(code)
        && folder.EndsWith($"_{code}", StringComparison.Ordinal);

    /// <summary>Whether a text is a variant's key: 64 hexadecimal digits.</summary>
    public static bool IsKey(string key) => KeyText.IsMatch(key);

    /// <summary>Twelve letters that stand for a variant's values, however the plan is ordered.</summary>
    public static string LongCode(string board, string? caseName, ImmutableArray<PlanSetting> telling)
    {
        string text =
            string.Join('\n', [board, caseName ?? "", .. telling.Select(s => $"{s.Path}={s.Value.Text}").Order(StringComparer.Ordinal)]);
        byte[] digest = SHA256.HashData(Encoding.UTF8.GetBytes(text));
        return string.Concat(digest.Take(2 * CodeLength).Select(b => Alphabet[b % Alphabet.Length]));
    }

    /// <summary>The readable part of a folder's name.</summary>
    /// <param name="board">The board's name where there are several, else null.</param>
    /// <param name="caseName">The case, or null.</param>
    /// <param name="telling">The values.</param>
    public static string Telling(string? board, string? caseName, ImmutableArray<PlanSetting> telling)
    {
        IEnumerable<string> words = caseName is not null ? [caseName] : telling.Select(Word);
        var name = new StringBuilder();
        foreach (string word in (board is null ? words : words.Prepend(board)).Select(Safe).Where(word => word.Length > 0))
        {
            if (name.Length + 1 + word.Length > LongestTelling)
            {
                break;
            }

            name.Append(name.Length == 0 ? "" : "_").Append(word);
        }

        return name.Length == 0 ? "variant" : name.ToString();
    }

    // A bare number says nothing without what it is of.
    private static string Word(PlanSetting setting) =>
        setting.Value.Number is null && setting.Value.Raw is not ("true" or "false" or "none" or "auto")
            ? setting.Value.Raw
            : $"{setting.Path[(setting.Path.LastIndexOf('.') + 1)..]}-{setting.Value.Raw}";

    private static string Safe(string text)
    {
        var safe = new StringBuilder();
        foreach (char c in text.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(c) || (c == '.' && safe.Length > 0 && safe[^1] is not ('.' or '-')))
            {
                safe.Append(c);
            }
            else if (safe.Length > 0 && safe[^1] is not ('-' or '.'))
            {
                safe.Append('-');
            }
        }

        return safe.ToString().Trim('-', '.');
    }

    [GeneratedRegex(@"^[a-z0-9][a-z0-9._-]{0,47}_[2-9a-hjkmnp-z]{6,12}\z", RegexOptions.CultureInvariant)]
    private static partial Regex FolderName { get; }

    [GeneratedRegex(@"^[2-9a-hjkmnp-z]{6,12}\z", RegexOptions.CultureInvariant)]
    private static partial Regex CodeText { get; }

    [GeneratedRegex(@"^[0-9a-f]{64}\z", RegexOptions.CultureInvariant)]
    private static partial Regex KeyText { get; }
}
