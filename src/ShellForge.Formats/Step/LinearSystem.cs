namespace ShellForge.Formats.Step;

/// <summary>Linear equations, by elimination with the largest pivot.</summary>
internal static class LinearSystem
{
    // What a pivot has to be beside the largest number of the system: below that nothing is left but rounding.
    private const double LeastPivot = 1e-14;

    /// <summary>The solution; null for a system that has none or many. The system is used up.</summary>
    /// <param name="system">Coefficients, and in the last column the right side.</param>
    public static double[]? Solved(double[,] system)
    {
        int count = system.GetLength(0);
        double largest = system.Cast<double>().Max(Math.Abs);
        for (int column = 0; column < count; column++)
        {
            int pivot = Enumerable.Range(column, count - column).MaxBy(row => Math.Abs(system[row, column]));
            if (!(Math.Abs(system[pivot, column]) > LeastPivot * largest))
            {
                return null;
            }

            for (int k = 0; k <= count; k++)
            {
                (system[column, k], system[pivot, k]) = (system[pivot, k], system[column, k]);
            }

            for (int row = 0; row < count; row++)
            {
                double factor = row == column ? 0 : system[row, column] / system[column, column];
                for (int k = column; k <= count; k++)
                {
                    system[row, k] -= factor * system[column, k];
                }
            }
        }

        return [.. Enumerable.Range(0, count).Select(i => system[i, count] / system[i, i])];
    }
}
