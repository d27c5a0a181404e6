using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Sliced;

namespace ShellForge.Checks.Print;

/// <summary>G-code with other layers or another nozzle than the plan counts on.</summary>
public sealed class SlicedOtherLayers() : Rule(
    "sliced-other-layers",
    "G-code must have the layers and the nozzle that the housing is planned for.",
    "Floors, beads and gaps are whole layers of the planned height, walls whole lines of the planned nozzle: others change their size.",
    "most common step between the layers of the parts, and the height of the lowest, measured on the lines; the nozzle as the file says it",
    "layer-height, first-layer and nozzle of the printer's profile")
{
    // Files round to hundredths.
    private const double Slack = 0.005;

    // Slicers shift the first layer by what the bed needs.
    private const double FirstLayerSlack = 0.05;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        foreach (SlicedJob job in housing.Sliced.Where(job => !job.Parts.IsEmpty))
        {
            if (job.Code.Layers > 1 && Math.Abs(job.Code.LayerHeight - printer.LayerHeight) > Slack)
            {
                yield return Told(job, "its layers are", job.Code.LayerHeight, printer.LayerHeight, printer, "layer-height");
            }
            else if (Math.Abs(job.Code.FirstLayer - printer.FirstLayerHeight) > FirstLayerSlack && job.Code.SupportLine is null)
            {
                yield return Told(job, "its first layer is", job.Code.FirstLayer, printer.FirstLayerHeight, printer, "first-layer");
            }

            if (job.Code.Nozzle is { } nozzle && Math.Abs(nozzle - printer.Nozzle) > Slack)
            {
                yield return Told(job, "its nozzle is", nozzle, printer.Nozzle, printer, "nozzle");
            }
        }
    }

    private Finding Told(SlicedJob job, string what, double found, double planned, PrinterProfile printer, string key) => Found(
        Severity.Warn, job.File.Name,
        string.Create(CultureInfo.InvariantCulture, $"{what} {found:0.0##} mm, in the plan of the {job.PartsInWords} {planned:0.0##} mm"),
        found, planned, null,
        string.Create(CultureInfo.InvariantCulture,
            $"slice with {planned:0.0##} mm, or name a printer with '{key}: {found:0.0##}' at 'print.printer' (now {printer.Name})"));
}
