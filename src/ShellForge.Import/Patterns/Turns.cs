namespace ShellForge.Import.Patterns;

/// <summary>Turns in degrees.</summary>
internal static class Turns
{
    /// <summary>The same turn, from -180, left out, to 180.</summary>
    public static double Reduced(double degrees)
    {
        double turn = Math.IEEERemainder(degrees, 360);
        return turn <= -180 ? turn + 360 : turn;
    }

    /// <summary>The same turn, from 0 to 360, left out.</summary>
    public static double Positive(double degrees)
    {
        double turn = degrees - (360 * Math.Floor(degrees / 360));
        return turn >= 360 ? 0 : turn;
    }
}
