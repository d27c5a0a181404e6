using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Hands;

namespace ShellForge.Checks.Print;

/// <summary>Fine features of one part that are told as one: they have one cause, and stand beside every boss or LED of a circle.</summary>
/// <param name="Features">The features with their places as assembled, the narrowest first.</param>
internal sealed record AlikeFeatures(ImmutableArray<(FineFeature Fine, Point3 At)> Features)
{
    // Widths that differ by less are one, mm: a wall that runs across a lattice of pixels has many.
    private const double Alike = 0.1;

    // So many places hold in a line.
    private const int Told = 4;

    /// <summary>The narrowest, which a finding is about.</summary>
    public FineFeature Narrowest => Features[0].Fine;

    /// <summary>Place of the narrowest.</summary>
    public Point3 At => Features[0].At;

    /// <summary>How many there are.</summary>
    public int Count => Features.Length;

    /// <summary>"0.24 mm", or "0.24 to 0.31 mm".</summary>
    public string Widths
    {
        get
        {
            string least = Text(Features[0].Fine.Width);
            string most = Text(Features[^1].Fine.Width);
            return least == most ? $"{least} mm" : $"{least} to {most} mm";
        }
    }

    /// <summary>"(21.6, 21.5), (-21.6, 21.5) and 2 more": as many as a line holds.</summary>
    public string Places => PlacesOf([.. Features.Select(each => each.At)]);

    /// <summary>Features in groups of nearly one width.</summary>
    public static IEnumerable<AlikeFeatures> Of(IEnumerable<(FineFeature Fine, Point3 At)> features)
    {
        var group = ImmutableArray.CreateBuilder<(FineFeature Fine, Point3 At)>();
        foreach ((FineFeature Fine, Point3 At) feature in features.OrderBy(each => each.Fine.Width))
        {
            if (group.Count > 0 && feature.Fine.Width - group[0].Fine.Width > Alike)
            {
                yield return new AlikeFeatures(group.DrainToImmutable());
            }

            group.Add(feature);
        }

        if (group.Count > 0)
        {
            yield return new AlikeFeatures(group.DrainToImmutable());
        }
    }

    /// <summary>Places in plan as a line of a message.</summary>
    public static string PlacesOf(Point3[] places)
    {
        string[] told = [.. places.Take(Told).Select(at => string.Create(
            CultureInfo.InvariantCulture, $"({at.X:0.0;-0.0;0.0}, {at.Y:0.0;-0.0;0.0})"))];
        int more = places.Length - told.Length;
        return HandWords.Listed(more > 0 ? [.. told, string.Create(CultureInfo.InvariantCulture, $"{more} more")] : told);
    }

    private static string Text(double width) => width.ToString("0.00", CultureInfo.InvariantCulture);
}
