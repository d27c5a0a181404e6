namespace ShellForge.Physics.Light;

/// <summary>
/// What the viewer's side of a sheet shows: the light on its inner face times the transmission, spread sideways like a bell. Light that
/// spreads behind the bezel is lost there, none is made. A dark bezel that the sheet is fused to takes more: light that would have come
/// back from beyond the edge, which a cloud that went on would return. Where the sheet itself goes on behind the bezel, as much light comes
/// out from there as goes in.
/// </summary>
internal static class SheetSpread
{
    // The bell is cut at so many standard deviations; the rest, below 0.3 %, is put back by scaling.
    private const double CutAt = 3;

    // What a dark rim takes besides, over what spreads past the edge. Source: walks of photons. A slab that ends in black plastic loses
    // 0.24, 0.44, 0.59 and 0.68 mm of its edge at 0.4, 0.8, 1.2 and 1.6 mm, 1.6 times what the bell alone takes; the collar by which
    // printed diffusers are fused to the bezel gives a fifth of that back.
    private const double TakenBack = 0.47;

    /// <summary>The share of light that each cell keeps beside a dark rim, over what the bell leaves it.</summary>
    public static float[] BesideDarkRim(ReceiverGrid face, double spread) =>
        [.. Inside(face, spread).Select(share => share > 0 ? (float)Math.Max(0, 1 - (TakenBack * (1 - share) / share)) : 0)];

    /// <summary>The share of what is thrown back that each cell keeps beside a dark rim.</summary>
    public static float[] ThrownBesideDarkRim(ReceiverGrid face, double spread) =>
        [.. Inside(face, spread).Select(share => (float)Math.Max(0, share - (TakenBack * (1 - share))))];

    /// <summary>What each cell shows over what the bell leaves it, where the sheet goes on behind the bezel.</summary>
    public static float[] BesideCoveredRim(ReceiverGrid face, double spread) =>
        [.. Inside(face, spread).Select(share => share > 0 ? 1 / share : 0)];

    // The share of light that spreads from a cell and stays within the rims.
    private static float[] Inside(ReceiverGrid face, double spread)
    {
        float[] ones = Ends(face);
        float[] inside = new float[face.Count];
        Apply(face, spread, ones, ones, inside);
        return inside;
    }

    // 0 where the sheet ends at a rim. A hole has none: nothing beyond its edge takes light or gives it back.
    private static float[] Ends(ReceiverGrid face) => [.. face.Open.Select((open, i) => open || face.IsHole(i) ? 1f : 0f)];

    /// <summary>
    /// Fills <paramref name="seen"/> from <paramref name="on"/>, spread sideways; each cell keeps the share <paramref name="kept"/>.
    /// </summary>
    public static void Apply(ReceiverGrid face, double spread, float[] kept, float[] on, float[] seen)
    {
        double[] bell = Bell(spread / face.Step);
        float[] along = new float[on.Length];
        int reach = bell.Length / 2;
        for (int row = 0; row < face.Rows; row++)
        {
            for (int column = 0; column < face.Columns; column++)
            {
                double sum = 0;
                for (int k = -reach; k <= reach; k++)
                {
                    int c = column + k;
                    c = face.Wraps ? ((c % face.Columns) + face.Columns) % face.Columns : c;
                    if (c >= 0 && c < face.Columns)
                    {
                        sum += bell[k + reach] * on[(row * face.Columns) + c];
                    }
                }

                along[(row * face.Columns) + column] = (float)sum;
            }
        }

        for (int i = 0; i < seen.Length; i++)
        {
            double sum = 0;
            for (int k = -reach; k <= reach && face.Open[i]; k++)
            {
                int row = (i / face.Columns) + k;
                if (row >= 0 && row < face.Rows)
                {
                    sum += bell[k + reach] * along[(row * face.Columns) + (i % face.Columns)];
                }
            }

            seen[i] = (float)(kept[i] * sum);
        }
    }

    // Weights over whole cells: each the mean of the bell over its cell.
    private static double[] Bell(double deviationCells)
    {
        if (deviationCells <= 0)
        {
            return [1];
        }

        int reach = Math.Max(1, (int)Math.Ceiling(CutAt * deviationCells));
        double[] bell = [.. Enumerable.Range(-reach, (2 * reach) + 1).Select(k => Mean(k, deviationCells))];
        double sum = bell.Sum();
        return [.. bell.Select(weight => weight / sum)];
    }

    private static double Mean(int cell, double deviation)
    {
        const int parts = 8;
        double sum = 0;
        for (int i = 0; i < parts; i++)
        {
            double x = (cell + ((i + 0.5) / parts) - 0.5) / deviation;
            sum += Math.Exp(-x * x / 2);
        }

        return sum / parts;
    }
}
