using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>A triangle as the shading needs it, worked out once: its part, how it slopes away and how light falls on it.</summary>
internal readonly struct FaceLook
{
    // A face whose cosine towards the viewer is below this counts as seen under it when skylight is weighed.
    private const double LeastFacing = 0.2;

    /// <summary>The look of a face.</summary>
    /// <param name="part">Number of its part.</param>
    /// <param name="colour">Colour of the part.</param>
    /// <param name="normal">Outward, of length 1.</param>
    /// <param name="isBack">Whether it is seen from inside its body.</param>
    /// <param name="projection">The projection.</param>
    public FaceLook(int part, Rgb colour, Point3 normal, bool isBack, Projection projection)
    {
        Part = part;
        Colour = colour;
        Normal = normal;
        IsBack = isBack;
        (double right, double down) = projection.Slope(normal);
        (SlopeRight, SlopeDown) = ((float)right, (float)down);
        double facing = Point3.Dot(normal, projection.Towards);
        Facing = (float)Math.Max(LeastFacing, facing);

        // A key light from the upper left of the viewer, a weak one from the right, and the sky.
        double toRight = Point3.Dot(normal, projection.Right);
        double toUp = Point3.Dot(normal, projection.Up);
        double key = Math.Max(0, (0.62 * facing) + (0.58 * toUp) - (0.53 * toRight));
        double fill = Math.Max(0, (0.55 * facing) + (0.8 * toRight) - (0.2 * toUp));
        Light = 0.23 * key;
        LightOfSky = 0.5 + (0.12 * normal.Z) + (0.23 * key) + (0.22 * fill);
    }

    /// <summary>Number of its part.</summary>
    public int Part { get; }

    /// <summary>Its part's colour.</summary>
    public Rgb Colour { get; }

    /// <summary>Towards the side that is seen, of length 1.</summary>
    public Point3 Normal { get; }

    /// <summary>Whether it is seen from inside its body.</summary>
    public bool IsBack { get; }

    /// <summary>How much nearer it comes from sample to sample to the right, mm.</summary>
    public float SlopeRight { get; }

    /// <summary>The same downward.</summary>
    public float SlopeDown { get; }

    /// <summary>Cosine towards the viewer, not below a fifth.</summary>
    public float Facing { get; }

    /// <summary>Light that it gets in any case, 1 for its own colour.</summary>
    public double Light { get; }

    /// <summary>Light that it gets from the whole of the sky.</summary>
    public double LightOfSky { get; }
}
