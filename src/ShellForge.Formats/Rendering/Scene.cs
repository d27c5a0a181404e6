using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Rendering;

/// <summary>A part in a picture.</summary>
/// <param name="Mesh">Its surface, closed.</param>
/// <param name="Colour">Its colour.</param>
public sealed record PicturedPart(Mesh Mesh, Rgb Colour)
{
    /// <summary>Where it stands in the picture.</summary>
    public Transform3 Placement { get; init; } = Transform3.Identity;
}

/// <summary>A plane that cuts parts open: what lies on the side to which the normal points is taken away.</summary>
/// <param name="At">A point of the plane in mm.</param>
/// <param name="Normal">Towards what is taken away; any length but 0.</param>
public sealed record SectionPlane(Point3 At, Point3 Normal);

/// <summary>What to draw and how.</summary>
public sealed record Scene
{
    /// <summary>The parts, in the order that decides where two are in one place.</summary>
    public required ImmutableArray<PicturedPart> Parts { get; init; }

    /// <summary>From where.</summary>
    public View View { get; init; } = View.Corner;

    /// <summary>Where parts are cut open; null shows them whole. Cut faces are hatched.</summary>
    public SectionPlane? Section { get; init; }

    /// <summary>Pixels in a row.</summary>
    public int Width { get; init; } = 1200;

    /// <summary>Rows.</summary>
    public int Height { get; init; } = 900;

    /// <summary>What to show of the scene, in mm; null shows all of it with a margin.</summary>
    public Box3? Frame { get; init; }

    /// <summary>Behind the parts.</summary>
    public Rgb Background { get; init; } = Rgb.White;
}
