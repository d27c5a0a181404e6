using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>What shapes the edges of the face on the bed, the outer one and that of an open bore: rounded, or chamfered.</summary>
internal static class OuterEdge
{
    /// <summary>The cutter for a shell that stands on z = 0; null where its edges are left sharp.</summary>
    /// <param name="shell">The shell.</param>
    /// <param name="outer">Its rounded outer edge; null for the chamfer.</param>
    /// <param name="bore">The rounded edge of its bore; null for the chamfer.</param>
    public static Solid? Cutter(ShellPlan shell, EdgePlan? outer, EdgePlan? bore)
    {
        double chamfer = shell.BedChamfer;
        Solid? outside = outer is not null ? RoundedEdge.Outside(shell, outer)
            : chamfer > 0 ? BedChamfer.Outside(shell, chamfer) : null;
        Solid? inBore = shell.Round is not { HasBore: true } round ? null
            : bore is not null ? RoundedEdge.InBore(shell, round, bore)
            : chamfer > 0 ? BedChamfer.InBore(shell, round, chamfer) : null;

        // Edges of one form are one body with one name.
        return outside is not null && inBore is not null && (outer is null) == (bore is null)
            ? Named(outside.And(inBore), outer)
            : (Named(outside, outer), Named(inBore, bore)) switch
            {
                ({ } first, { } second) => first.And(second),
                var (first, second) => first ?? second,
            };
    }

    private static Solid? Named(Solid? cutter, EdgePlan? edge) =>
        cutter?.Tagged(FaceNames.Tag(edge is null ? FaceFeature.BedChamfer : FaceFeature.RoundedEdge));
}
