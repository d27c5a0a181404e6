using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Cli.Printing;
using ShellForge.Sweep.Comparing;
using Spectre.Console;

namespace ShellForge.Cli.Comparing;

/// <summary>What differs between two housings, for people at a terminal.</summary>
internal static class ChangesText
{
    private const int MostSinceLast = 8;

    /// <summary>All differences, a line each.</summary>
    public static void Write(IAnsiConsole console, HousingComparison comparison)
    {
        if (comparison.IsEmpty)
        {
            console.WriteLine("Nothing differs.");
            return;
        }

        foreach ((string title, ImmutableArray<Change> changes) in comparison.All)
        {
            if (!changes.IsEmpty)
            {
                console.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"[bold]{title}[/]");
                foreach (Change change in changes)
                {
                    console.WriteLine("  " + Line(change));
                }
            }
        }
    }

    /// <summary>What changed against the last report of a folder: what was said otherwise first, then what matters most.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="comparison">What differs.</param>
    /// <param name="where">Where the last report is, in words.</param>
    /// <param name="rest">How to see what is left out.</param>
    public static void WriteSinceLast(IAnsiConsole console, HousingComparison comparison, string where = "in this folder",
        string rest = "keep a copy of a folder, and shellforge compare tells all")
    {
        if (comparison.IsEmpty)
        {
            return;
        }

        Change[] all = [.. comparison.Said, .. comparison.Findings.Where(f => !f.What.StartsWith("note ", StringComparison.Ordinal)),
            .. comparison.Follows, .. comparison.Parts, .. comparison.Shopping];
        if (all.Length == 0)
        {
            return;
        }

        console.WriteLine($"Since the last report {where}:");
        foreach (Change change in all.Take(MostSinceLast))
        {
            console.WriteLine("  " + Line(change));
        }

        if (all.Length > MostSinceLast)
        {
            console.WriteLine(
                $"  and {FindingsText.Counted(all.Length - MostSinceLast, "more change")}: {rest}");
        }

        console.WriteLine();
    }

    /// <summary>One difference: "stack.below-board 4.6 -> 5.2: C9 costs 0.6".</summary>
    public static string Line(Change change)
    {
        string values = change.Before.Length == 0 ? $"{change.What} new: {change.After}"
            : change.After.Length == 0 ? $"{change.What} gone: {change.Before}"
            : change.Before == change.After ? change.What
            : $"{change.What} {change.Before} -> {change.After}";
        return change.Why.Length is 0 ? values : change.Why is "new" or "gone" ? values : $"{values}: {change.Why}";
    }
}
