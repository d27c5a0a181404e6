namespace ShellForge.Physics.Light;

/// <summary>The smallest distance of a diffuser at which light is as even as asked, found with the model that judges it.</summary>
public static class LeastDistance
{
    // Steps of the first distance that is tried: most diffusers lie two to eight times as far.
    private const int FirstProbe = 15;

    /// <summary>
    /// Solves by halving between a distance that is too small and one that is enough, which is looked for from below in doubling steps:
    /// near LEDs light few cells each, so small distances are quick to judge. Evenness is taken to grow with distance, which it does for
    /// every lobe and wall but within the noise of a grid.
    /// </summary>
    /// <param name="evennessAt">Smallest over mean at a distance in mm.</param>
    /// <param name="wanted">Smallest over mean asked for, 0 to 1.</param>
    /// <param name="least">Smallest distance that comes into question, mm.</param>
    /// <param name="most">Largest distance that comes into question, mm; it is returned when even there light is less even.</param>
    /// <param name="step">Distances are whole numbers of steps above <paramref name="least"/>, mm.</param>
    public static double For(Func<double, double> evennessAt, double wanted, double least, double most, double step)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step);
        int low = -1;
        int high = Math.Max(0, (int)Math.Floor((most - least) / step));
        for (int probe = FirstProbe; probe < high; probe = (2 * probe) + 1)
        {
            if (evennessAt(least + (probe * step)) >= wanted)
            {
                high = probe;
                break;
            }

            low = probe;
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (evennessAt(least + (middle * step)) >= wanted)
            {
                high = middle;
            }
            else
            {
                low = middle;
            }
        }

        return low < 0 && evennessAt(least) >= wanted ? least : least + (high * step);
    }
}
