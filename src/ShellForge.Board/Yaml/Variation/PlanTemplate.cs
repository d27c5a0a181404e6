using System.Text;

namespace ShellForge.Board.Yaml.Variation;

/// <summary>A text with words in braces that stand for values of a variant.</summary>
public static class PlanTemplate
{
    /// <summary>The words in braces, in their order.</summary>
    public static IEnumerable<string> Words(string text)
    {
        for (int at = text.IndexOf('{', StringComparison.Ordinal); at >= 0; at = text.IndexOf('{', at + 1))
        {
            int end = text.IndexOf('}', at);
            if (end > at)
            {
                yield return text[(at + 1)..end].Trim();
            }
        }
    }

    /// <summary>The text with values in place of the words.</summary>
    /// <param name="text">The text.</param>
    /// <param name="value">The value of a word; null where it has none, which leaves nothing.</param>
    public static string Filled(string text, Func<string, string?> value)
    {
        var filled = new StringBuilder();
        int done = 0;
        for (int at = text.IndexOf('{', StringComparison.Ordinal); at >= 0; at = text.IndexOf('{', done))
        {
            int end = text.IndexOf('}', at);
            if (end < 0)
            {
                break;
            }

            filled.Append(text.AsSpan(done, at - done)).Append(value(text[(at + 1)..end].Trim()));
            done = end + 1;
        }

        return filled.Append(text.AsSpan(done)).ToString();
    }

    /// <summary>The value of a word among settings: a path, or the end of one path only.</summary>
    public static string? ValueOf(IEnumerable<PlanSetting> settings, string word)
    {
        PlanSetting[] all = [.. settings];
        return (all.FirstOrDefault(setting => setting.Path == word) ?? OnlyEnding(all, word))?.Value.Raw;
    }

    internal static bool Knows(SweepPlan plan, string word)
    {
        PlanSetting[] all = [.. plan.Fixed, .. plan.Axes.SelectMany(axis => axis.Steps[0])];
        return word is SweepPlan.BoardWord or SweepPlan.CaseWord || all.Any(setting => setting.Path == word)
            || OnlyEnding(all, word) is not null;
    }

    private static PlanSetting? OnlyEnding(PlanSetting[] settings, string word)
    {
        PlanSetting[] ending = [.. settings.Where(setting => setting.Path.EndsWith("." + word, StringComparison.Ordinal))];
        return ending.Length == 1 ? ending[0] : null;
    }
}
