namespace ShellForge.Physics.Heat;

/// <summary>
/// Points of one temperature each, joined by conductances that may depend on temperature. Steady state: what flows into each point flows
/// out of it; the conductances are taken at the last temperatures until nothing moves.
/// </summary>
internal sealed class ThermalNetwork
{
    /// <summary>Steady when no temperature moves by more than this, K: far below what any coefficient is known to.</summary>
    public const double Steady = 1e-6;

    private const int MostRounds = 100;

    // Share of a round's step that is taken. Films grow with the fourth root of the difference that they take away: a full step would
    // overshoot by a quarter of it, this one by next to nothing.
    private const double Damping = 0.8;

    private readonly List<(double Capacity, double Watts)> _points = [];
    private readonly List<Link> _links = [];
    private readonly List<Func<double[], double>> _gaps = [];

    /// <summary>The number of links' other end that stands for the surrounding air.</summary>
    public const int Outside = -1;

    /// <summary>How many points there are.</summary>
    public int Count => _points.Count;

    /// <summary>Adds a point; its number.</summary>
    /// <param name="capacity">J/K, above 0.</param>
    /// <param name="watts">Heat given off in it, W.</param>
    public int Point(double capacity, double watts)
    {
        _points.Add((capacity, watts));
        return _points.Count - 1;
    }

    /// <summary>Adds a gap, whose links all carry a factor that depends on all temperatures; its number.</summary>
    public int Gap(Func<double[], double> factor)
    {
        _gaps.Add(factor);
        return _gaps.Count - 1;
    }

    /// <summary>
    /// Joins two points, or a point and <see cref="Outside"/>, by a conductance in W/K that may depend on both temperatures.
    /// </summary>
    public void Join(int a, int b, Func<double, double, double> conductance) => _links.Add(new Link(a, b, 0, null, conductance));

    /// <summary>Joins two points by a fixed conductance in W/K, which a gap's factor may scale.</summary>
    public void Join(int a, int b, double conductance, int? gap = null) => _links.Add(new Link(a, b, conductance, gap, null));

    /// <summary>Steady temperatures in degrees Celsius.</summary>
    /// <param name="ambient">The surrounding air, degrees Celsius.</param>
    /// <param name="start">A guess that is near; null for none.</param>
    /// <param name="steady">What counts as steady, K.</param>
    public double[] SteadyAt(double ambient, double[]? start = null, double steady = Steady)
    {
        double[] t = start is null ? [.. _points.Select(_ => ambient + 1)] : [.. start];
        for (int round = 0; round < MostRounds; round++)
        {
            double[] next = Solve(t, ambient, t, double.PositiveInfinity);
            double moved = 0;
            for (int i = 0; i < t.Length; i++)
            {
                double step = Damping * (next[i] - t[i]);
                moved = Math.Max(moved, Math.Abs(step));
                t[i] += step;
            }

            if (moved < steady)
            {
                break;
            }
        }

        return t;
    }

    /// <summary>Temperatures after one step of time from given ones (implicit Euler: stable at any step, late rather than early).</summary>
    public double[] After(double[] from, double ambient, double seconds) => Solve(from, ambient, from, seconds);

    /// <summary>Heat that leaves to the surrounding air, W.</summary>
    public double ToOutside(double[] t, double ambient) => _links.Where(link => link.A == Outside || link.B == Outside).Sum(link =>
    {
        double inner = t[link.A == Outside ? link.B : link.A];
        return link.At(inner, ambient) * (inner - ambient);
    });

    private double[] Solve(double[] at, double ambient, double[] before, double seconds)
    {
        int n = _points.Count;
        double[] diagonal = new double[n];
        double[] right = new double[n];
        for (int i = 0; i < n; i++)
        {
            double store = double.IsInfinity(seconds) ? 0 : _points[i].Capacity / seconds;
            diagonal[i] = store;
            right[i] = _points[i].Watts + (store * before[i]);
        }

        double[] factors = [.. _gaps.Select(gap => gap(at))];
        int[] froms = new int[_links.Count];
        int[] tos = new int[_links.Count];
        double[] conductances = new double[_links.Count];
        int count = 0;
        foreach (Link link in _links)
        {
            double g = link.At(link.A == Outside ? ambient : at[link.A], link.B == Outside ? ambient : at[link.B])
                * (link.Gap is int gap ? factors[gap] : 1);
            if (link.A == Outside || link.B == Outside)
            {
                int point = link.A == Outside ? link.B : link.A;
                diagonal[point] += g;
                right[point] += g * ambient;
                continue;
            }

            diagonal[link.A] += g;
            diagonal[link.B] += g;
            (froms[count], tos[count], conductances[count]) = (link.A, link.B, g);
            count++;
        }

        return new ScaledConjugateGradients(diagonal, froms.AsSpan(0, count), tos.AsSpan(0, count), conductances.AsSpan(0, count)).Solve(
            right, at);
    }

    private readonly record struct Link(int A, int B, double Fixed, int? Gap, Func<double, double, double>? Varying)
    {
        public double At(double a, double b) => Varying?.Invoke(a, b) ?? Fixed;
    }
}
