namespace ShellForge.Physics.Heat;

/// <summary>
/// Bodies of one temperature each, joined by conductances that may depend on temperature. Steady state: what flows into each body flows out
/// of it; the conductances are taken at the last temperatures until nothing moves.
/// </summary>
internal sealed class ThermalNetwork
{
    // Steady when no temperature moves by more than this, K: far below what any coefficient is known to.
    private const double Steady = 1e-7;
    private const int MostRounds = 500;

    private readonly List<(string Name, double Capacity, double Watts)> bodies = [];
    private readonly List<(int A, int B, Func<double, double, double> Conductance)> links = [];

    /// <summary>The number of links' other end that stands for the surrounding air.</summary>
    public const int Outside = -1;

    /// <summary>How many bodies there are.</summary>
    public int Count => bodies.Count;

    /// <summary>Name of a body.</summary>
    public string NameOf(int body) => bodies[body].Name;

    /// <summary>Adds a body; its number.</summary>
    /// <param name="name">Name.</param>
    /// <param name="capacity">J/K, above 0.</param>
    /// <param name="watts">Heat given off in it, W.</param>
    public int Body(string name, double capacity, double watts)
    {
        bodies.Add((name, capacity, watts));
        return bodies.Count - 1;
    }

    /// <summary>Joins two bodies, or a body and <see cref="Outside"/>, by a conductance in W/K that may depend on both temperatures.</summary>
    public void Join(int a, int b, Func<double, double, double> conductance) => links.Add((a, b, conductance));

    /// <summary>Steady temperatures in degrees Celsius.</summary>
    public double[] SteadyAt(double ambient)
    {
        double[] t = [.. bodies.Select(_ => ambient + 1)];
        for (int round = 0; round < MostRounds; round++)
        {
            double[] next = Solve(t, ambient, t, double.PositiveInfinity);
            double moved = 0;
            for (int i = 0; i < t.Length; i++)
            {
                // Half a step: convection grows with the difference that it takes away.
                double half = (t[i] + next[i]) / 2;
                moved = Math.Max(moved, Math.Abs(half - t[i]));
                t[i] = half;
            }

            if (moved < Steady)
            {
                break;
            }
        }

        return t;
    }

    /// <summary>Temperatures after one step of time from given ones (implicit Euler: stable at any step, late rather than early).</summary>
    public double[] After(double[] from, double ambient, double seconds) => Solve(from, ambient, from, seconds);

    /// <summary>Heat that leaves to the surrounding air, W.</summary>
    public double ToOutside(double[] t, double ambient) => links.Where(link => link.A == Outside || link.B == Outside).Sum(link =>
    {
        double inner = t[link.A == Outside ? link.B : link.A];
        return link.Conductance(inner, ambient) * (inner - ambient);
    });

    private double[] Solve(double[] at, double ambient, double[] before, double seconds)
    {
        int n = bodies.Count;
        double[,] matrix = new double[n, n + 1];
        for (int i = 0; i < n; i++)
        {
            double store = double.IsInfinity(seconds) ? 0 : bodies[i].Capacity / seconds;
            matrix[i, i] += store;
            matrix[i, n] += bodies[i].Watts + (store * before[i]);
        }

        foreach ((int a, int b, Func<double, double, double> conductance) in links)
        {
            double g = conductance(a == Outside ? ambient : at[a], b == Outside ? ambient : at[b]);
            Couple(matrix, n, a, b, g, ambient);
            Couple(matrix, n, b, a, g, ambient);
        }

        return Eliminate(matrix, n);
    }

    private static void Couple(double[,] matrix, int n, int body, int other, double g, double ambient)
    {
        if (body == Outside)
        {
            return;
        }

        matrix[body, body] += g;
        if (other == Outside)
        {
            matrix[body, n] += g * ambient;
        }
        else
        {
            matrix[body, other] -= g;
        }
    }

    // Gauss: the matrix is weakly diagonally dominant, so no pivot is needed as long as heat has a way out.
    private static double[] Eliminate(double[,] m, int n)
    {
        for (int k = 0; k < n; k++)
        {
            for (int i = k + 1; i < n; i++)
            {
                double factor = m[i, k] / m[k, k];
                for (int j = k; j <= n && factor != 0; j++)
                {
                    m[i, j] -= factor * m[k, j];
                }
            }
        }

        double[] t = new double[n];
        for (int i = n - 1; i >= 0; i--)
        {
            double sum = m[i, n];
            for (int j = i + 1; j < n; j++)
            {
                sum -= m[i, j] * t[j];
            }

            t[i] = sum / m[i, i];
        }

        return t;
    }
}
