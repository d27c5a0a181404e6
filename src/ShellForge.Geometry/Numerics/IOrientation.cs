namespace ShellForge.Geometry.Numerics;

/// <summary>
/// Exact signs of areas and volumes, for one kind of coordinate. The type decides at compile time which arithmetic it takes.
/// </summary>
internal interface IOrientation
{
    /// <summary>
    /// +1 when d lies on the side to which the counter-clockwise triangle a, b, c looks, -1 on the other, 0 in its plane.
    /// </summary>
    static abstract int Sign3(in Point3 a, in Point3 b, in Point3 c, in Point3 d);

    /// <summary>+1 when (ax, ay), (bx, by), (cx, cy) run counter-clockwise, -1 clockwise, 0 on one line.</summary>
    static abstract int Sign2(double ax, double ay, double bx, double by, double cx, double cy);
}
