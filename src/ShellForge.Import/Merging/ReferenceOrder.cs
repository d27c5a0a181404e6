
namespace ShellForge.Import.Merging;

/// <summary>Sorts designators as people count: D2 before D10.</summary>
internal static class ReferenceOrder
{
    public static (string Letters, long Number, string Tail) Key(string reference)
    {
        int at = reference.AsSpan().IndexOfAnyInRange('0', '9');
        if (at < 0)
        {
            return (reference, -1, "");
        }

        int end = at;
        while (end < reference.Length && char.IsAsciiDigit(reference[end]) && end - at < 15)
        {
            end++;
        }

        return (reference[..at],
            long.Parse(reference.AsSpan(at, end - at), System.Globalization.NumberStyles.None,
                System.Globalization.CultureInfo.InvariantCulture), reference[end..]);
    }
}
