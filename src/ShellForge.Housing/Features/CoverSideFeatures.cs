using ShellForge.Housing.Features.Closures;
using ShellForge.Housing.Features.Holders;
using ShellForge.Housing.Features.Mounts;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Features;

/// <summary>The features of cover, diffuser, baffle and closure, and what hangs on the floor beside the bosses: one line each.</summary>
internal static class CoverSideFeatures
{
    /// <summary>What all of them do to all parts.</summary>
    public static IEnumerable<FeatureContribution> Of(HousingPlan plan) =>
    [
        .. CoverShell.Of(plan),
        .. BoardStops.Of(plan),
        .. HolderBodies.Of(plan),
        .. DiffuserSheet.Of(plan),
        .. LitWall.Of(plan),
        .. Baffle.Of(plan),
        .. ClosureBodies.Of(plan),
        .. LipBridges.Of(plan),
        .. KeyRib.Of(plan),
        .. PryNotches.Of(plan),
        .. Vents.Of(plan),
        .. MountBodies.Of(plan),
        .. Letters.Of(plan),
    ];
}
