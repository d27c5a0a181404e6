using ShellForge.Import.Dxf;
using ShellForge.Import.Files;

namespace ShellForge.Import.Merging;

/// <summary>Millimetres per drawing unit: by header, else by the person, else an assumption that is told.</summary>
internal static class DxfUnit
{
    public static (double Unit, string Words) Of(DxfFacts facts, ImportOptions options, EcadLog log)
    {
        if (facts.Unit is { } stated)
        {
            return (stated, PlacementUnit.Words(stated));
        }

        if (options.DrawingUnit is { } given)
        {
            return (given, PlacementUnit.Words(given) + " (given)");
        }

        string hint = facts.MetricHint == false ? "; its measurement flag says imperial, so inches are possible" : "";
        log.Warn(facts.File, 1, "dxf-unit", $"the drawing names no unit; millimetres are assumed{hint}", "check the size, or say the unit");
        return (1, "mm (assumed)");
    }
}
