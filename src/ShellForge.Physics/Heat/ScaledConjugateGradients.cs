namespace ShellForge.Physics.Heat;

/// <summary>
/// Solves a network's linear equations. Their matrix is symmetric, and positive definite as long as heat has a way out. Source: Hestenes
/// and Stiefel 1952, scaled by the diagonal.
/// </summary>
/// <param name="diagonal">Sum of all conductances at each point.</param>
/// <param name="from">One end of each conductance.</param>
/// <param name="to">Its other end.</param>
/// <param name="conductances">The conductances.</param>
internal readonly ref struct ScaledConjugateGradients(double[] diagonal, ReadOnlySpan<int> from, ReadOnlySpan<int> to,
    ReadOnlySpan<double> conductances)
{
    // Residual of the solution over its right side, and the most steps it may take; it takes about as many as there are points across.
    private const double Residual = 1e-10;
    private const int MostSteps = 2000;

    private readonly ReadOnlySpan<int> _from = from;
    private readonly ReadOnlySpan<int> _to = to;
    private readonly ReadOnlySpan<double> _conductances = conductances;

    /// <summary>The solution for a right side, from a guess.</summary>
    public double[] Solve(double[] right, double[] start)
    {
        int n = right.Length;
        double[] x = [.. start];
        double[] product = new double[n];
        double[] r = new double[n];
        double[] z = new double[n];
        Times(x, product);
        double enough = 0;
        for (int i = 0; i < n; i++)
        {
            r[i] = right[i] - product[i];
            z[i] = r[i] / diagonal[i];
            enough += Residual * Residual * right[i] * right[i] / diagonal[i];
        }

        double[] p = [.. z];
        double rz = Dot(r, z);
        for (int step = 0; step < MostSteps && rz > enough; step++)
        {
            Times(p, product);
            double length = rz / Dot(p, product);
            for (int i = 0; i < n; i++)
            {
                x[i] += length * p[i];
                r[i] -= length * product[i];
                z[i] = r[i] / diagonal[i];
            }

            double next = Dot(r, z);
            double turn = next / rz;
            rz = next;
            for (int i = 0; i < n; i++)
            {
                p[i] = z[i] + (turn * p[i]);
            }
        }

        return x;
    }

    private void Times(double[] v, double[] result)
    {
        for (int i = 0; i < v.Length; i++)
        {
            result[i] = diagonal[i] * v[i];
        }

        for (int k = 0; k < _conductances.Length; k++)
        {
            result[_from[k]] -= _conductances[k] * v[_to[k]];
            result[_to[k]] -= _conductances[k] * v[_from[k]];
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
