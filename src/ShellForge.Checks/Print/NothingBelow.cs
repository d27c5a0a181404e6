using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>Overhangs, bridges and islands, layer by layer.</summary>
public sealed class NothingBelow() : Rule(
    "nothing-below",
    "Every layer must be carried by the one below, up to the overhang and the bridge that the printer manages.",
    "Plastic laid into the air curls, sags or becomes a tangle that takes the print off the bed.",
    "section less (section below grown by layer height x tan of the overhang limit); pieces held at both ends of scan lines are bridges "
        + "(note, warn, stop by span), others overhangs by their reach, pieces held nowhere are islands",
    "overhang and bridge limits of the printer profile")
{
    /// <summary>An overhang up to so many line widths sags but holds: a bead's underside. Typical.</summary>
    private const double LinesThatSag = 1.5;

    /// <summary>From so many on it falls.</summary>
    private const double LinesThatFall = 4;

    // What a maker can do: nobody can slant what the housing alone has.
    private const string Support =
        "let the slicer put support under this place alone; under an opening of yours ('openings:'), make it narrower";
    private const string Leave = "nothing to do: it sags by a hair and holds; print it slowly there for a smooth edge";

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        Angle limit = Angle.FromDegrees(printer.OverhangDegrees);
        double slope = limit.Sin / limit.Cos;
        foreach (MadePart part in housing.SoundParts)
        {
            PartLayers stack = housing.LayersOf(part);
            PartLayers[] sameJob = [.. SameJob(housing, part).Select(housing.LayersOf)];
            Finding[][] found = OrderedParallel.Map<PrintedLayer, Finding[]>(
                [.. stack.Changes.Where(layer => layer.Index > 0 || layer.FromZ > layer.Height / 2)],
                layer => [.. Over(layer, stack, sameJob, Rise(layer, stack) * slope, printer.LineWidth)
                    .Select(piece => Judged(piece, printer, layer, Rise(layer, stack), part.Name,
                        part.ToAssembled(new Point3(piece.At.X, piece.At.Y, layer.FromZ)))).OfType<Finding>()]);
            foreach (Finding finding in WorstOfEachKind([.. found.SelectMany(layer => layer)]))
            {
                yield return finding;
            }
        }
    }

    // Sections are taken through the middle of layers, and the first is higher than the others.
    private static double Rise(PrintedLayer layer, PartLayers stack) =>
        layer.Index > 0 ? (layer.Height + stack.Layers[layer.Index - 1].Height) / 2 : layer.Height;

    private static ImmutableArray<UnsupportedPiece> Over(PrintedLayer layer, PartLayers stack, PartLayers[] sameJob, double stepOut,
        double line)
    {
        Region[] beside = [.. sameJob.SelectMany(other => other.At(layer.FromZ - (layer.Height / 2)))];
        return beside.Length == 0
            ? stack.UnsupportedIn(layer, stepOut, line)
            : Unsupported.Of(layer.Outline, Region.Union(beside.Prepend(stack.Below(layer))), stepOut, line);
    }

    // What is printed in one job lies on each other: a diffuser's flange on the bezel of its cover.
    private static IEnumerable<MadePart> SameJob(HousingUnderCheck housing, MadePart part) =>
        housing.SoundParts.Where(
            other => other.Name != part.Name && (other.Plan.PrintedWith == part.Name || part.Plan.PrintedWith == other.Name
            || (other.Plan.PrintedWith is not null && other.Plan.PrintedWith == part.Plan.PrintedWith)));

    // A chamfered rim or a row of cells breaks the same limit in a hundred places; the worst one is told, with the count.
    private static IEnumerable<Finding> WorstOfEachKind(Finding[] found)
    {
        foreach (IGrouping<(Severity, string), Finding> kind in found.GroupBy(finding => (finding.Severity, finding.Unit)))
        {
            Finding worst = kind.MaxBy(finding => finding.Measured)!;
            yield return kind.Count() == 1 ? worst : worst with { Message = $"{worst.Message}, with {kind.Count() - 1} more like it" };
        }
    }

    private Finding? Judged(UnsupportedPiece piece, PrinterProfile printer, PrintedLayer layer, double rise, string part, Point3 at)
    {
        double line = printer.LineWidth;
        switch (piece.Hold)
        {
            case Hold.None:
                return piece.Area < PrintTolerances.Area
                    ? null
                    : Found(Severity.Stop, part, $"an island of {piece.Reach:0.0} mm starts in the air, {layer.FromZ:0.0} mm above the bed",
                        piece.Reach, 0, at, Support);
            case Hold.Bridge:
                Severity? weight = piece.Reach > printer.BridgeStop ? Severity.Stop
                    : piece.Reach > printer.BridgeWarn ? Severity.Warn : piece.Reach > printer.BridgeNote ? Severity.Note : null;
                double broken = weight switch
                {
                    Severity.Stop => printer.BridgeStop,
                    Severity.Warn => printer.BridgeWarn,
                    _ => printer.BridgeNote
                };
                return weight is { } severity
                    ? Found(severity, part, $"a bridge spans {piece.Reach:0.0} mm, {layer.FromZ:0.0} mm above the bed", piece.Reach, broken,
                        at, severity == Severity.Note ? Leave : Support)
                    : null;
            default:
                double degrees = Angle.Of(new Point2(rise, piece.Reach)).Degrees;
                Severity sags = piece.Reach <= LinesThatSag * line ? Severity.Note
                    : piece.Reach <= LinesThatFall * line ? Severity.Warn : Severity.Stop;
                return Found(
                    sags, part,
                    $"an overhang of {degrees:0}\u00b0 reaches {piece.Reach:0.00} mm into the air, {layer.FromZ:0.0} mm above the bed",
                    degrees, printer.OverhangDegrees, at, sags == Severity.Note ? Leave : Support, "degrees");
        }
    }
}
