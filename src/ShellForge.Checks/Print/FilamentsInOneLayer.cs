using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>A part that is printed into another of another filament, in the same layers.</summary>
public sealed class FilamentsInOneLayer() : Rule(
    "filaments-in-one-layer",
    "Where two filaments lie in the same layers, the printer must change between them by itself.",
    "A printer with one spool stops at every change until somebody changes the spool by hand; each change takes time and flushes plastic.",
    "layers that hold both parts, one change in each; warns for a printer of one filament, else a note",
    "the printer's profile: filaments, change-time and change-plastic")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        foreach (MadePart part in housing.SoundParts.Where(part => part.Plan.PrintedWith is not null))
        {
            if (housing.Part(part.Plan.PrintedWith!) is not { IsSound: true } other)
            {
                continue;
            }

            bool alone = printer.Filaments < 2;
            PrintedLayer[] shared = [.. housing.LayersOf(part).LayersWith(housing.LayersOf(other))];
            int layers = shared.Length;
            string minutes = PrintEstimate.Duration(layers * printer.Motion.ChangeTime / 60);
            string grams = (layers * printer.Motion.ChangePlastic * part.Plan.Filament.Density / 1000).ToString("0.#",
                CultureInfo.InvariantCulture);
            string lie = $"it lies in the same {layers} layers as the {other.Name}: {layers} changes of filament";
            yield return Found(
                alone ? Severity.Warn : Severity.Note, part.Name,
                alone ? $"{lie}, and {printer.Name} prints one filament at a time"
                    : $"{lie}, which take {minutes} and {grams} g and are counted in",
                layers, 0, Place(part, shared), Remedy(housing, alone), "changes");
        }
    }

    // In plastic, in the middle of the layers: the middle of a ring is none of it.
    private static Point3? Place(MadePart part, PrintedLayer[] shared)
    {
        if (shared.Length == 0)
        {
            return null;
        }

        PrintedLayer layer = shared[shared.Length / 2];
        Point2 at = ThinFeatures.InnerPoint(layer.Outline.Parts.MaxBy(piece => piece.Area)!);
        return part.ToAssembled(new Point3(at.X, at.Y, (layer.FromZ + layer.ToZ) / 2));
    }

    private static string Remedy(HousingUnderCheck housing, bool alone)
    {
        string apart = housing.Plan.Diffuser.Band is null
            ? "'diffuser: {fit: drop-in}' makes it a part of its own"
            : "name one filament for 'print.shell' and 'print.diffuser', or let the light through the front";
        return alone ? $"{apart}; or name a printer that changes filaments at 'print.printer'" : apart;
    }
}
