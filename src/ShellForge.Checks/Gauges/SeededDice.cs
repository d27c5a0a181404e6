namespace ShellForge.Checks.Gauges;

/// <summary>
/// A seeded stream of random numbers, the same on every machine. Source: Steele, Lea, Flood, "Fast splittable pseudorandom number
/// generators", 2014 (the mixing function of SplitMix64).
/// </summary>
internal struct SeededDice(ulong seed)
{
    private ulong _state = seed;

    /// <summary>Evenly spread in [0, 1).</summary>
    public double Next()
    {
        _state += 0x9E3779B97F4A7C15;
        ulong mixed = (_state ^ (_state >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return ((mixed ^ (mixed >> 31)) >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>
    /// A making error within plus and minus the tolerance: the sum of three even spreads, bell-shaped, never beyond the limit,
    /// with a standard deviation of a third of it, as tolerances are commonly read.
    /// </summary>
    public double Error(double tolerance) => tolerance * (((Next() + Next() + Next()) * (2.0 / 3)) - 1);

    /// <summary>Anywhere within plus and minus a range, evenly: what is known to lie in a range, and no more.</summary>
    public double Within(double range) => range * ((2 * Next()) - 1);
}
