using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Sliced;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>G-code of one filament for parts that are printed into each other in two.</summary>
public sealed class SlicedInOneFilament() : Rule(
    "sliced-in-one-filament",
    "G-code of a part that is printed into another must change to its filament and back.",
    "A diffuser that is printed from the cover's filament lets no light through.",
    "tools that lay plastic in the file, against the filaments of parts that are printed into each other",
    "the plan of each part: its filament")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (SlicedJob job in housing.Sliced)
        {
            foreach (MadePart[] parts in job.Objects.Select(parts => parts.DistinctBy(part => part.Plan.Filament.Name).ToArray())
                .Where(parts => parts.Length > job.Code.Tools.Length))
            {
                yield return Found(
                    Severity.Stop, job.File.Name,
                    $"it lays all with one filament; the {parts[0].Name} is {parts[0].Plan.Filament.Name}, the {parts[1].Name} in it "
                        + $"{parts[1].Plan.Filament.Name}",
                    job.Code.Tools.Length, parts.Length, null,
                    $"give the {parts[1].Name} its own filament in the slicer, as a body of the same object", "filaments");
            }
        }
    }
}
