namespace ShellForge.Physics.Heat;

/// <summary>A strip of a room's outline in the section through the axis: floor, board, wall. m.</summary>
/// <param name="Point">Its number in the network.</param>
/// <param name="R1">Radius of one end.</param>
/// <param name="Z1">Height of that end.</param>
/// <param name="R2">Radius of the other end.</param>
/// <param name="Z2">Height of that end.</param>
/// <param name="Black">Whether it is an opening that swallows what falls into it.</param>
internal readonly record struct RoomStrip(int Point, double R1, double Z1, double R2, double Z2, bool Black = false)
{
    public double Radius => (R1 + R2) / 2;

    public bool Upright => R1 == R2;
}

/// <summary>
/// What strips of a room with a rectangular section radiate to each other. A ring of strips counts as straight ones of its length; a disc
/// as the section from rim to rim.
/// </summary>
internal static class RoomSight
{
    // Pairs that see less of each other than this share of the smaller one are left out: their share goes to nobody.
    private const double Least = 1e-4;

    /// <summary>Areas over which two strips exchange radiation, m2, both taken as black.</summary>
    /// <param name="strips">The strips.</param>
    /// <param name="full">Whether the room has no inner wall: each strip is also seen across the axis.</param>
    public static IEnumerable<(RoomStrip A, RoomStrip B, double Area)> Pairs(IReadOnlyList<RoomStrip> strips, bool full)
    {
        for (int i = 0; i < strips.Count; i++)
        {
            for (int j = i + 1; j < strips.Count; j++)
            {
                RoomStrip a = strips[i];
                RoomStrip b = strips[j];
                double seen = Strings(a, b) + (full ? Strings(a, b with { R1 = -b.R1, R2 = -b.R2 }) : 0);
                if (seen > Least * Math.Min(Length(a), Length(b)))
                {
                    // Straight strips as long as the mean of both rings.
                    yield return (a, b, seen * Math.PI * (a.Radius + b.Radius));
                }
            }
        }
    }

    // Source: Hottel's crossed strings: what two strips of long rooms see of each other is the crossed strings less the others, halved.
    private static double Strings(RoomStrip a, RoomStrip b)
    {
        if ((a.Upright && b.Upright && a.R1 == b.R1) || (!a.Upright && !b.Upright && a.Z1 == b.Z1))
        {
            return 0;
        }

        double one = Way(a.R1, a.Z1, b.R2, b.Z2) + Way(a.R2, a.Z2, b.R1, b.Z1);
        double two = Way(a.R1, a.Z1, b.R1, b.Z1) + Way(a.R2, a.Z2, b.R2, b.Z2);
        return Math.Abs(one - two) / 2;
    }

    private static double Length(RoomStrip strip) => Way(strip.R1, strip.Z1, strip.R2, strip.Z2);

    private static double Way(double r1, double z1, double r2, double z2) => Math.Sqrt(((r1 - r2) * (r1 - r2)) + ((z1 - z2) * (z1 - z2)));
}
