using System.Globalization;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Hands;

/// <summary>Places, counts and lists as people say them at the bench.</summary>
public static class HandWords
{
    /// <summary>A board angle as the hour on a clock's face with the housing hung up: "6 o'clock".</summary>
    /// <param name="at">The direction from the axis.</param>
    /// <param name="up">The direction that points up.</param>
    public static string Clock(Angle at, Angle up)
    {
        int hour = (int)Math.Round((up - at).Normalized.Degrees / 30, MidpointRounding.AwayFromZero) % 12;
        return string.Create(CultureInfo.InvariantCulture, $"{(hour == 0 ? 12 : hour)} o'clock");
    }

    /// <summary>"1 screw", "3 screws".</summary>
    public static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    /// <summary>"tub, baffle and cover".</summary>
    public static string Listed(IEnumerable<string> items)
    {
        string[] all = [.. items];
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + " and " + all[^1];
    }

    /// <summary>A share of a whole with one decimal at most, as the board file has it: "12.5 %".</summary>
    public static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.#} %");

    /// <summary>A length for reading: at most two decimals, with its unit: "2.5 mm".</summary>
    public static string Mm(double length) => Figure(length) + " mm";

    /// <summary>A length on a drawing: at most two decimals, without its unit.</summary>
    public static string Figure(double length) => length.ToString("0.##", CultureInfo.InvariantCulture);
}
