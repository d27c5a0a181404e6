using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Remembering;

/// <summary>How much memory a region takes that is kept, or known by, in a <see cref="WorkMemory"/>.</summary>
public static class RegionWeight
{
    // A corner, and what a loop and a region take beside their corners, bytes, about.
    private const long BytesOfCorner = 16;
    private const long BytesOfLoop = 40;
    private const long BytesOfRegion = 120;

    /// <summary>About how much memory a region takes, bytes.</summary>
    public static long Of(Region region) => BytesOfRegion + region.Loops.Sum(loop => BytesOfLoop + (BytesOfCorner * loop.Length));
}
