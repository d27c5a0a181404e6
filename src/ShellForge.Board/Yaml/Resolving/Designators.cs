using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Hands out designators, each once.</summary>
internal sealed class Designators(DiagnosticSink sink)
{
    private readonly Dictionary<string, FilePlace> _taken = new(StringComparer.Ordinal);

    /// <summary>All that were handed out.</summary>
    public IEnumerable<string> Taken => _taken.Keys;

    /// <summary>Whether one is taken.</summary>
    public bool Has(string designator) => _taken.ContainsKey(designator);

    /// <summary>The designator at a step of a pattern: C10, C11, C12; C, C2, C3 for one without a number.</summary>
    public static string Counted(string first, int step)
    {
        if (step == 0)
        {
            return first;
        }

        int digits = 0;
        while (digits < Math.Min(first.Length, 9) && char.IsAsciiDigit(first[^(digits + 1)]))
        {
            digits++;
        }

        int number = digits == 0 ? 1 : int.Parse(first[^digits..], NumberStyles.None, CultureInfo.InvariantCulture);
        return first[..^digits] + (number + step).ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>Takes one, and tells when it was taken before.</summary>
    public void Take(string designator, FilePlace place)
    {
        if (!_taken.TryAdd(designator, place))
        {
            FilePlace first = _taken[designator];
            sink.Error(
                place,
                "duplicate-ref",
                first == place ? $"the pattern gives '{designator}' twice" : $"'{designator}' was already given at line {first.Line}",
                "expected each designator once");
        }
    }
}
