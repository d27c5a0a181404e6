namespace ShellForge.Physics.Light;

/// <summary>Irradiance on the cells of a grid for three ways of switching the LEDs, as shares of one LED's flux in a mm2.</summary>
public sealed class LightFields
{
    internal LightFields(int cells)
    {
        AllCells = new float[cells];
        AloneCells = new float[cells];
        EvenCells = new float[cells];
    }

    /// <summary>All LEDs.</summary>
    public ReadOnlySpan<float> All => AllCells;

    /// <summary>One LED alone.</summary>
    public ReadOnlySpan<float> Alone => AloneCells;

    /// <summary>LEDs 0, 2, 4 and so on; the others are <see cref="All"/> less this.</summary>
    public ReadOnlySpan<float> Even => EvenCells;

    internal float[] AllCells { get; }

    internal float[] AloneCells { get; }

    internal float[] EvenCells { get; }

    /// <summary>The three arrays, for work that treats them alike.</summary>
    internal float[][] Arrays => [AllCells, AloneCells, EvenCells];

    /// <summary>Adds what one LED brings to one cell.</summary>
    internal void Add(int cell, int led, int alone, double irradiance)
    {
        AllCells[cell] += (float)irradiance;
        if (led == alone)
        {
            AloneCells[cell] += (float)irradiance;
        }

        if ((led & 1) == 0)
        {
            EvenCells[cell] += (float)irradiance;
        }
    }
}
