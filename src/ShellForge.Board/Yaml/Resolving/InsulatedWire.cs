namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Outside diameters of insulated hook-up wire by conductor size.</summary>
internal static class InsulatedWire
{
    // Soft stranded wire in PVC or silicone. Source: typical: check your wire.
    private static readonly (int Awg, double Millimetres)[] Sizes =
        [(18, 2.3), (20, 1.9), (22, 1.7), (24, 1.6), (26, 1.5), (28, 1.2), (30, 0.9)];

    /// <summary>The sizes there are, for messages.</summary>
    public static string Known => string.Join(", ", Sizes.Select(s => s.Awg));

    /// <summary>Diameter over the insulation of one conductor, mm; null for a size that is not in the table.</summary>
    public static double? OverInsulation(int awg)
    {
        foreach ((int size, double millimetres) in Sizes)
        {
            if (size == awg)
            {
                return millimetres;
            }
        }

        return null;
    }
}
