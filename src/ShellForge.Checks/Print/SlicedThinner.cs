using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Checks.Sliced;
using ShellForge.Planning.Prints;

namespace ShellForge.Checks.Print;

/// <summary>G-code with fewer lines, solid layers or less fill than the plan counts on.</summary>
public sealed class SlicedThinner() : Rule(
    "sliced-thinner",
    "G-code must lay the walls, solid layers and fill that the housing is planned with.",
    "Fewer lines leave a core of sparse fill in walls and bosses: inserts pull out, light shines through, a diffuser shows its fill.",
    "walls, solid layers and fill as the file says them, against the plan; where all is well or not said, the slicer's mass against ours",
    "the plan of each part (print.json); a slicer with these settings comes within 10 % of our mass")
{
    // Tests hold our mass to 3 % of a slicer's with the same settings; other slicers' lines differ by more.
    private const double LightestShare = 0.9;

    // Files round to percents.
    private const double ShareSlack = 0.005;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (SlicedJob job in housing.Sliced.Where(job => !job.Parts.IsEmpty))
        {
            Finding[] said = [.. Said(job)];
            foreach (Finding finding in said)
            {
                yield return finding;
            }

            double ours = job.Parts.Sum(part => PrintEstimate.Printed(housing, part).Grams);
            if (said.Length == 0 && job.Bodies.All(body => body.IsOfPart) && job.Grams is { } grams && grams < LightestShare * ours)
            {
                yield return Found(
                    Severity.Warn, job.File.Name,
                    string.Create(CultureInfo.InvariantCulture,
                        $"it lays {grams:0.0} g, {ours:0.0} g are planned for the {job.PartsInWords}: lines, fill or flow are less"),
                    grams, ours, null, "set walls, solid layers, fill and flow in the slicer as print.txt has them", "g");
            }
        }
    }

    // A file has one set-up for all that lies on its plate: it is held against what needs most of it. A part that is printed into another
    // one has a set-up of its own, which the file does not say.
    private IEnumerable<Finding> Said(SlicedJob job)
    {
        (string Name, PartPrint Print)[] prints = [.. job.Objects.Select(parts => (parts[0].Name, parts[0].Plan.Print))];
        (string walled, PartPrint most) = prints.MaxBy(part => part.Print.Perimeters);
        if (job.Code.Walls < most.Perimeters)
        {
            yield return Fewer(job, walled, "lines of wall", job.Code.Walls.Value, most.Perimeters, "lines");
        }

        (string covered, most) = prints.MaxBy(part => part.Print.SkinLayers);
        if (job.Code.SkinLayers < most.SkinLayers)
        {
            yield return Fewer(job, covered, "solid layers", job.Code.SkinLayers.Value, most.SkinLayers, "layers");
        }

        (string filled, most) = prints.MaxBy(part => part.Print.Infill);
        if (job.Code.Infill is { } fill && fill < most.Infill - ShareSlack)
        {
            yield return Fewer(job, filled, "% of fill", 100 * fill, 100 * most.Infill, "%");
        }
    }

    private Finding Fewer(SlicedJob job, string part, string what, double laid, double planned, string unit) => Found(
        Severity.Warn, job.File.Name,
        string.Create(CultureInfo.InvariantCulture, $"it has {laid:0.#} {what}, the {part} is planned with {planned:0.#}"),
        laid, planned, null, string.Create(CultureInfo.InvariantCulture, $"slice it with {planned:0.#} {what}"), unit);
}
