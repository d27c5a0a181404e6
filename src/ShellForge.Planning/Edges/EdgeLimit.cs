using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Edges;

/// <summary>Something that keeps a rounded edge from becoming larger.</summary>
/// <param name="Radius">The largest radius beside it, mm; 0 or less for none.</param>
/// <param name="What">What it is, with its article: "the lit window".</param>
/// <param name="Remedy">What gives the edge more room, as a part of a sentence; empty where nothing does.</param>
internal sealed record EdgeLimit(double Radius, string What, string Remedy)
{
    // The radius is looked for up to this, mm, to within the last bit of what is printed.
    private const double Most = 40;
    private const int Halvings = 24;

    /// <summary>Beside a hollow inside, of which so much plastic has to stay between it and the outside.</summary>
    /// <param name="overhangDegrees">The largest overhang that the printer manages, degrees from the vertical.</param>
    /// <param name="at">Where the hollow begins: how far inside the outline, and how high over the bed, mm.</param>
    /// <param name="keep">Plastic that has to stay, mm; where there is less without an edge, all of that stays.</param>
    /// <param name="what">What the hollow is.</param>
    /// <param name="remedy">What gives the edge more room.</param>
    public static EdgeLimit BesideHollow(
        double overhangDegrees, (double Inset, double Height) at, double keep, string what, string remedy)
    {
        double least = Math.Min(keep, Math.Min(at.Inset, at.Height)) - Draft.Layers.Slack;
        return new EdgeLimit(
            least <= 0 ? 0 : Largest(radius => EdgePlan.Of(radius, overhangDegrees).Covers(at.Inset, at.Height) >= least), what, remedy);
    }

    /// <summary>Beside something in the wall, at which the edge may have drawn the wall in by so much and no more.</summary>
    /// <param name="overhangDegrees">The largest overhang that the printer manages, degrees from the vertical.</param>
    /// <param name="height">How high over the bed it begins, mm.</param>
    /// <param name="drawnIn">How far inside the outline the wall may stand there, mm.</param>
    /// <param name="what">What it is.</param>
    /// <param name="remedy">What gives the edge more room.</param>
    public static EdgeLimit InWall(double overhangDegrees, double height, double drawnIn, string what, string remedy) =>
        new(Largest(radius => EdgePlan.Of(radius, overhangDegrees).InsetAt(Math.Max(0, height)) <= drawnIn), what, remedy);

    /// <summary>Beside something in the face on the bed, of which so much has to stay level between it and the edge.</summary>
    /// <param name="overhangDegrees">The largest overhang that the printer manages, degrees from the vertical.</param>
    /// <param name="inset">How far inside the outline it begins, mm.</param>
    /// <param name="keep">Level face that has to stay, mm.</param>
    /// <param name="what">What it is.</param>
    /// <param name="remedy">What gives the edge more room.</param>
    public static EdgeLimit OnBed(double overhangDegrees, double inset, double keep, string what, string remedy) =>
        new((inset - keep) / EdgePlan.Of(1, overhangDegrees).Inset, what, remedy);

    private static double Largest(Func<double, bool> fits)
    {
        double radius = 0;
        double tooLarge = Most;
        for (int i = 0; i < Halvings; i++)
        {
            double tried = (radius + tooLarge) / 2;
            (radius, tooLarge) = fits(tried) ? (tried, tooLarge) : (radius, tried);
        }

        return radius;
    }
}
