using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Sliced;

namespace ShellForge.Checks.Print;

/// <summary>G-code with support, which no part needs.</summary>
public sealed class SlicedWithSupport() : Rule(
    "sliced-with-support",
    "G-code must lay no support and no raft.",
    "Every part is planned to print without: support in a groove, a port or an insert's hole is hard to get out and leaves it rough.",
    "length of the lines of support, as the file's comments tell them apart",
    "the plan of each part: none needs support")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (SlicedJob job in housing.Sliced.Where(job => !job.Parts.IsEmpty))
        {
            if (job.Code.SupportLine is { } line)
            {
                yield return Found(
                    Severity.Warn, job.File.Name,
                    string.Create(CultureInfo.InvariantCulture,
                        $"it lays {job.Code.SupportLength / 1000:0.00} m of support, the first {job.Code.SupportZ:0.0} mm above the bed; "
                            + $"none is needed for the {job.PartsInWords}"),
                    job.Code.SupportLength / 1000, 0, null, "switch support and raft off in the slicer", "m") with
                {
                    InFile = new FilePlace(job.File.Name, (int)Math.Min(line, int.MaxValue), 1),
                };
            }
        }
    }
}
