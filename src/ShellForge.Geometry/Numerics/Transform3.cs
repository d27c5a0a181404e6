namespace ShellForge.Geometry.Numerics;

/// <summary>
/// An affine map of space: p -> M p + t. Maps compose exactly as written and are applied once, before anything is put on the
/// lattice, so that a chain of turns does not add a rounding each.
/// </summary>
public readonly record struct Transform3(
    double M11, double M12, double M13, double Tx,
    double M21, double M22, double M23, double Ty,
    double M31, double M32, double M33, double Tz)
{
    /// <summary>The map that moves nothing.</summary>
    public static Transform3 Identity => new(1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0);

    /// <summary>Positive when the map keeps handedness; its size is the factor on volumes.</summary>
    public double Determinant =>
        (M11 * ((M22 * M33) - (M23 * M32))) - (M12 * ((M21 * M33) - (M23 * M31))) + (M13 * ((M21 * M32) - (M22 * M31)));

    /// <summary>Moved by so many mm.</summary>
    public static Transform3 Shift(double x, double y, double z) => Identity with { Tx = x, Ty = y, Tz = z };

    /// <summary>Turned about the z axis.</summary>
    public static Transform3 TurnZ(Angle angle) =>
        new(angle.Cos, -angle.Sin, 0, 0, angle.Sin, angle.Cos, 0, 0, 0, 0, 1, 0);

    /// <summary>Turned about the x axis.</summary>
    public static Transform3 TurnX(Angle angle) =>
        new(1, 0, 0, 0, 0, angle.Cos, -angle.Sin, 0, 0, angle.Sin, angle.Cos, 0);

    /// <summary>Turned about the y axis.</summary>
    public static Transform3 TurnY(Angle angle) =>
        new(angle.Cos, 0, angle.Sin, 0, 0, 1, 0, 0, -angle.Sin, 0, angle.Cos, 0);

    /// <summary>Scaled along each axis about the origin.</summary>
    public static Transform3 Scale(double x, double y, double z) => new(x, 0, 0, 0, 0, y, 0, 0, 0, 0, z, 0);

    /// <summary>This map first, then the other.</summary>
    public Transform3 Then(Transform3 next) => new(
        (next.M11 * M11) + (next.M12 * M21) + (next.M13 * M31),
        (next.M11 * M12) + (next.M12 * M22) + (next.M13 * M32),
        (next.M11 * M13) + (next.M12 * M23) + (next.M13 * M33),
        (next.M11 * Tx) + (next.M12 * Ty) + (next.M13 * Tz) + next.Tx,
        (next.M21 * M11) + (next.M22 * M21) + (next.M23 * M31),
        (next.M21 * M12) + (next.M22 * M22) + (next.M23 * M32),
        (next.M21 * M13) + (next.M22 * M23) + (next.M23 * M33),
        (next.M21 * Tx) + (next.M22 * Ty) + (next.M23 * Tz) + next.Ty,
        (next.M31 * M11) + (next.M32 * M21) + (next.M33 * M31),
        (next.M31 * M12) + (next.M32 * M22) + (next.M33 * M32),
        (next.M31 * M13) + (next.M32 * M23) + (next.M33 * M33),
        (next.M31 * Tx) + (next.M32 * Ty) + (next.M33 * Tz) + next.Tz);

    /// <summary>The map that undoes this one.</summary>
    /// <exception cref="InvalidOperationException">The map flattens space.</exception>
    public Transform3 Inverse()
    {
        double det = Determinant;
        if (det == 0)
        {
            throw new InvalidOperationException("A map that flattens space cannot be undone.");
        }

        var linear = new Transform3(
            ((M22 * M33) - (M23 * M32)) / det, ((M13 * M32) - (M12 * M33)) / det, ((M12 * M23) - (M13 * M22)) / det, 0,
            ((M23 * M31) - (M21 * M33)) / det, ((M11 * M33) - (M13 * M31)) / det, ((M13 * M21) - (M11 * M23)) / det, 0,
            ((M21 * M32) - (M22 * M31)) / det, ((M12 * M31) - (M11 * M32)) / det, ((M11 * M22) - (M12 * M21)) / det, 0);
        Point3 back = linear.Apply(new Point3(Tx, Ty, Tz));
        return linear with { Tx = -back.X, Ty = -back.Y, Tz = -back.Z };
    }

    /// <summary>The image of a point.</summary>
    public Point3 Apply(Point3 p) => new(
        (M11 * p.X) + (M12 * p.Y) + (M13 * p.Z) + Tx,
        (M21 * p.X) + (M22 * p.Y) + (M23 * p.Z) + Ty,
        (M31 * p.X) + (M32 * p.Y) + (M33 * p.Z) + Tz);

    /// <summary>The image of a direction: the shift is left out.</summary>
    public Point3 ApplyDirection(Point3 p) => Apply(p) - new Point3(Tx, Ty, Tz);
}
