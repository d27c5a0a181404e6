using ShellForge.Import.Files;

namespace ShellForge.Import.Patterns;

/// <summary>How what is in a pattern is turned.</summary>
/// <param name="Follows">Whether it turns with its place on the circle, or with the grid.</param>
/// <param name="Degrees">Its turn: beyond its place's direction where it follows, else as seen on the board.</param>
internal readonly record struct PatternTurn(bool Follows, double Degrees)
{
    // What files round turns to; the last stands for what is not rounded.
    private static readonly double[] Quanta = [1, 0.1, 0.01, 0.001];

    // Numbers of a file are exact up to the last bits of their digits.
    private const double SameDigits = 1e-6;

    /// <summary>How all are turned; null where no one rule tells it.</summary>
    /// <param name="turns">The turns, degrees; null for what has none.</param>
    /// <param name="directions">The directions of their places.</param>
    public static PatternTurn? Of(IReadOnlyList<double?> turns, IReadOnlyList<double> directions)
    {
        if (turns.Any(turn => turn is null))
        {
            return new PatternTurn(true, 0);
        }

        double[] own = [.. turns.Select(turn => turn!.Value)];
        double quantum = Array.Find(Quanta, q => Array.TrueForAll(own, turn => Math.Abs((turn / q) - Math.Round(turn / q)) < SameDigits));
        double? beyond = Common([.. own.Zip(directions, (turn, direction) => turn - direction)], quantum);
        return beyond is { } follows ? new PatternTurn(true, follows)
            : Common(own, quantum) is { } same ? new PatternTurn(false, same) : null;
    }

    /// <summary>The one turn that all are, in the roundest number that the files' own rounding allows; null where they differ.</summary>
    private static double? Common(double[] turns, double quantum)
    {
        double[] off = [.. turns.Select(turn => Turns.Reduced(turn - turns[0]))];
        double spread = (off.Max() - off.Min()) / 2;
        double middle = Turns.Reduced(turns[0] + ((off.Max() + off.Min()) / 2));
        double room = Math.Min(EcadTolerances.PatternTurn, EcadTolerances.RoundingTurn + Math.Max(spread, quantum / 2));
        return RoundNumber.Of(middle, round => spread + Math.Abs(round - middle) <= room) is { } common ? Turns.Reduced(common) : null;
    }
}
