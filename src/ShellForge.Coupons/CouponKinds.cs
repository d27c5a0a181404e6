using System.Collections.Immutable;
using ShellForge.Coupons.Kinds;

namespace ShellForge.Coupons;

/// <summary>All kinds of coupons.</summary>
public static class CouponKinds
{
    /// <summary>In the order in which a new printer is best measured.</summary>
    public static ImmutableArray<CouponKind> All { get; } =
    [
        new SizeBar(),
        new LidFit(),
        new SlotFit(),
        new InlayFit(),
        new LayerFit(),
        new InsertHoles(),
        new MagnetPockets(),
        new BatteryBays(),
        new PlugOpenings(),
        new SnapRings(),
        new ThinWalls(),
        new Bridges(),
        new Overhangs(),
        new DiffuserSteps(),
    ];

    /// <summary>The kind of a name; null where there is none.</summary>
    public static CouponKind? Find(string name) => All.FirstOrDefault(kind => kind.Name == name);
}
