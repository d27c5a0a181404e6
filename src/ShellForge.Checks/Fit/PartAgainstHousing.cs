using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A part of the board that meets plastic, or comes nearer than planned.</summary>
public sealed class PartAgainstHousing() : Rule(
    "part-against-housing",
    "Parts, LEDs, joints, soldered leads and screw heads must stay clear of floor, bosses, webs, walls, baffle and cover.",
    "Three failed prints: the board rocks on a solder joint, an electrolytic keeps the cover open, a boss stands in a connector.",
    "least distance between the body's envelope and the sections of the solids as made; contact stops, less than the wanted clearance "
        + "warns",
    "wanted: half the clearance below parts towards floors; else 0.25 mm, the spread of board holes and placement; 0.1 mm at a saddle, "
        + "whose gap is made to be small")
{
    private const double Wanted = MeasuredGap.LeastReach;
    private const double WantedAtSaddle = 0.1;

    /// <summary>Depths up to this are two faces in one plane, mm: lattice and chords (modelling).</summary>
    private const double Touch = 0.01;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        double under = MeasuredGap.UnderParts(housing);
        foreach (MadePart part in housing.SoundParts.Where(part => part.Plan.IsOfHousing))
        {
            foreach (MeasuredGap gap in housing.GapsOf(part).Where(gap => !HeadAgainstPart.Tells(housing, gap.Body)))
            {
                if (Judged(gap, part, housing.Plan, under) is { } finding)
                {
                    yield return finding;
                }
            }
        }
    }

    private Finding? Judged(MeasuredGap gap, MadePart part, HousingPlan plan, double under)
    {
        bool onSaddle = part.Name == PartNames.Tub && plan.Saddles.Any(saddle => saddle.Ref == gap.Body);
        double wanted = onSaddle ? WantedAtSaddle : gap.Upright && gap.Side == BoardSide.Bottom && part.Name == PartNames.Tub ? under
            : Wanted;
        if (Math.Round(gap.Distance, 2) >= Math.Round(wanted, 2))
        {
            return null;
        }

        string feature = FeatureAt(part, gap.At, plan);
        bool meets = gap.Distance < -Touch;
        return Found(
            meets ? Severity.Stop : Severity.Warn, gap.Body,
            meets ? $"it stands {-gap.Distance:0.00} mm deep in {feature} ({part.Name})"
                : $"it is {Math.Max(0, gap.Distance):0.00} mm from {feature} ({part.Name})",
            gap.Distance, wanted, gap.At,
            Remedy(gap, wanted - gap.Distance));
    }

    private static string Remedy(MeasuredGap gap, double missing) => (gap.Upright, gap.Side) switch
    {
        (true, BoardSide.Bottom) =>
            $"check its height in the file, or raise the standoffs by {missing:0.00} mm ('clearance: {{below-parts: ...}}')",
        (true, _) => $"check its height in the file, or take the diffuser {missing:0.00} mm farther away ('diffuser: {{distance: ...}}')",
        _ => $"check its place in the file, or move it, or what the plastic holds there, by {missing:0.00} mm on the board",
    };

    // The feature whose face lies nearest to the place.
    private static string FeatureAt(MadePart part, Point3 at, HousingPlan plan)
    {
        var mesh = part.AssembledMesh;
        int best = 0;
        double least = double.PositiveInfinity;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Point3 middle = (1.0 / 3) * (Corner(t, 0) + Corner(t, 1) + Corner(t, 2));
            double distance = Math.Min(Point3.Distance(middle, at), Enumerable.Range(0, 3).Min(c => Point3.Distance(Corner(t, c), at)));
            if (distance < least)
            {
                (least, best) = (distance, t);
            }
        }

        return SpokenNames.Of(plan, mesh.Tags[best]);

        Point3 Corner(int t, int corner) => mesh.Vertices[mesh.Triangles[(3 * t) + corner]].ToMillimetres();
    }
}
