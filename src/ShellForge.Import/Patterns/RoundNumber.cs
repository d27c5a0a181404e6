namespace ShellForge.Import.Patterns;

/// <summary>The number that a person would have typed, where the files leave room for it.</summary>
internal static class RoundNumber
{
    // Whole and half ones, then what layouts snap to; the last is as exact as a board file is written.
    private static readonly double[] Steps = [1, 0.5, 0.1, 0.05, 0.01, 0.005, 0.001, 0.0001, 0.00001, 0.000001];

    /// <summary>The roundest number near a value that still fits; null where not even the value as it is written does.</summary>
    /// <param name="value">The value that fits best.</param>
    /// <param name="fits">Whether everything lies where the files say with that number in its place.</param>
    public static double? Of(double value, Func<double, bool> fits)
    {
        foreach (double step in Steps)
        {
            double round = At(value, step);
            if (fits(round))
            {
                return round;
            }
        }

        return null;
    }

    // By whole parts of one, so that 0.1 stays 0.1 to the last bit.
    private static double At(double value, double step)
    {
        double parts = Math.Round(1 / step);
        double round = Math.Round(value * parts, MidpointRounding.AwayFromZero) / parts;
        return round == 0 ? 0 : round;
    }
}
