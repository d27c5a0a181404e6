using ShellForge.Import.Files;

namespace ShellForge.Import.Merging;

/// <summary>What a hole is, from its size and plating, where no file says it.</summary>
internal static class HoleGuess
{
    // Vias are drilled to 0.5, leads to 1.4; plated holes from 2.0 on are screw holes with a copper ring.
    private const double LargestVia = 0.5;
    private const double SmallestPlatedMounting = 2.0;

    public static HoleKind Of(double diameter, bool? plated)
    {
        if (plated == false)
        {
            return diameter >= EcadTolerances.SmallestMountingHole ? HoleKind.Mounting : HoleKind.Tooling;
        }

        double mounting = plated == true ? SmallestPlatedMounting : EcadTolerances.SmallestMountingHole;
        return diameter >= mounting ? HoleKind.Mounting : diameter <= LargestVia ? HoleKind.Via : HoleKind.Pin;
    }
}
