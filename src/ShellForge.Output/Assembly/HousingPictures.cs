using System.Collections.Immutable;
using ShellForge.Formats.Rendering;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Looks;
using ShellForge.Output.Page;

namespace ShellForge.Output.Assembly;

/// <summary>Pictures of the whole housing by our own renderer: the same housing gives the same picture.</summary>
public static class HousingPictures
{
    // Room between neighbours of the stack, as a share of the housing's width.
    private const double StepShare = 0.22;

    /// <summary>Pulled apart along its axis with the board in it, for people to see how it goes together.</summary>
    public static byte[] Apart(HousingLooks looks) => Drawn(
        looks, new Scene { Parts = [], Width = 560, Height = 560, View = new View(Angle.FromDegrees(-60), Angle.FromDegrees(28)) },
        StepShare, shown: _ => true);

    /// <summary>Closed and small, for file lists.</summary>
    public static byte[] Thumbnail(HousingLooks looks) =>
        Drawn(looks, new Scene { Parts = [], Width = 256, Height = 192 }, 0, shown: body => body.Level >= 0);

    private static byte[] Drawn(HousingLooks looks, Scene scene, double stepShare, Func<PageBody, bool> shown)
    {
        ImmutableArray<PageBody> bodies = [.. looks.Bodies.Where(body => shown(body) && body.Mesh.TriangleCount > 0)];
        double step = stepShare * bodies.Select(body => Measure.Bounds(body.Mesh).Size.X).DefaultIfEmpty(0).Max();
        return new RememberedPictures(looks.Memory).Of(scene with
        {
            Parts = [.. bodies.Select(body => PictureColours.Part(body) with { Placement = Transform3.Shift(0, 0, step * body.Level) })],
        });
    }
}
