using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Sliced;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>G-code that is not of the part it is given for.</summary>
public sealed class SlicedOtherPart() : Rule(
    "sliced-other-part",
    "G-code must be that of a part of this housing, at the size of its file and lying on the same face.",
    "An old file, one that was scaled, or one that lies on another face prints for hours and fits nothing.",
    "mean width of the lines above the first layer and their height, against the part's file; area of the second layer against the "
        + "part's section there",
    "the part's file; more than 1 % off is another part, more than 0.2 mm another size")
{
    // Solid layers cover their section but for what is rounded at lines' ends; walls on edge cover a fraction of a floor.
    private const double LeastShare = 0.7;
    private const double MostShare = 1.4;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (SlicedJob job in housing.Sliced)
        {
            if (job.Parts.IsEmpty)
            {
                yield return OfNothing(housing, job);
                continue;
            }

            foreach (Finding finding in job.Bodies.Select(body => Judged(job, body)).OfType<Finding>())
            {
                yield return finding;
            }

            if (job.Bodies.All(body => body.IsOfPart) && OnOtherFace(housing, job) is { } turned)
            {
                yield return turned;
            }
        }
    }

    private Finding OfNothing(HousingUnderCheck housing, SlicedJob job)
    {
        double height = job.Code.Top;
        MadePart? nearest = housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty)
            .MinBy(part => Math.Abs(part.PrintMesh.Bounds().Max.Z - height));
        return Found(
            Severity.Stop, job.File.Name,
            string.Create(CultureInfo.InvariantCulture,
                $"no part of this housing has its size: its lines reach {height:0.0} mm above the bed"),
            height, nearest?.PrintMesh.Bounds().Max.Z ?? 0, null,
            "slice the files of this run; keep the part's name in the name of the G-code");
    }

    private Finding? Judged(SlicedJob job, SlicedBody body)
    {
        string part = body.Part.Name;
        if (!body.IsOfPart)
        {
            bool higher = Math.Abs(body.LaidSize.Z - body.Size.Z) > Math.Abs(body.Wider);
            return Found(
                Severity.Stop, job.File.Name,
                higher
                    ? string.Create(CultureInfo.InvariantCulture,
                        $"it is {body.LaidSize.Z:0.0} mm high, the {part} {body.Size.Z:0.0} mm: it is of another part")
                    : $"it is {SlicedBody.Across(body.LaidSize)} across, the {part} {SlicedBody.Across(body.Size)}: it is of another part",
                higher ? body.LaidSize.Z : body.Wider + body.Width, higher ? body.Size.Z : body.Width, null,
                $"slice the {part}'s file of this run, as large as it is and as it lies");
        }

        return Math.Abs(body.Wider) <= SlicedBody.SizeSlack ? null
            : Found(
                Severity.Warn, job.File.Name,
                string.Create(CultureInfo.InvariantCulture,
                    $"its {part} comes {Math.Abs(body.Wider):0.00} mm {(body.Wider > 0 ? "wider" : "narrower")} than the file made here"),
                body.Wider + body.Width, body.Width, null,
                "slice the file of this run, with the slicer's own compensation for shrinkage and outlines switched off");
    }

    // Files that do not tell walls from brim and support would be judged by what is not of the part.
    private Finding? OnOtherFace(HousingUnderCheck housing, SlicedJob job)
    {
        double first = job.Code.FirstLayer;
        double middle = first + (job.Code.LayerHeight / 2);
        double area = job.Parts.SelectMany(part => housing.LayersOf(part).At(middle)).Sum(section => section.Area);
        double laid = job.Code.SecondLayerArea;
        bool onBed = first < 2 * Math.Max(housing.Board.Print.Printer.FirstLayerHeight, job.Code.LayerHeight);
        return !job.Code.TellsKinds || !onBed || laid <= 0 || area <= 0 || (laid >= LeastShare * area && laid <= MostShare * area)
            ? null
            : Found(
                Severity.Stop, job.File.Name,
                string.Create(CultureInfo.InvariantCulture,
                    $"its second layer covers {laid:0} mm\u00b2, that of the {job.PartsInWords} {area:0} mm\u00b2: "
                        + $"{(job.Parts.Length == 1 ? "it" : "a part")} was turned over"),
                laid, area, null, $"leave the parts as they lie in their files: the {job.Parts[0].Name} {job.Parts[0].Plan.LiesOn}", "mm2");
    }
}
