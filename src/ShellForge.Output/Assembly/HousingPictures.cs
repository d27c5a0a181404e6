using System.Collections.Immutable;
using ShellForge.Checks;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;

namespace ShellForge.Output.Assembly;

/// <summary>Pictures of the whole housing by our own renderer: the same housing gives the same picture.</summary>
public static class HousingPictures
{
    // Room between neighbours of the stack, as a share of the housing's width.
    private const double StepShare = 0.22;

    /// <summary>Pulled apart along its axis with the board in it, for people to see how it goes together.</summary>
    public static byte[] Apart(HousingUnderCheck housing) => Drawn(
        housing, new Scene { Parts = [], Width = 560, Height = 560, View = new View(Angle.FromDegrees(-60), Angle.FromDegrees(28)) },
        StepShare * housing.Plan.Shell.Footprint.Bounds.Size.X);

    /// <summary>Closed and small, for file lists.</summary>
    public static byte[] Thumbnail(HousingUnderCheck housing) => Drawn(housing, new Scene { Parts = [], Width = 256, Height = 192 }, 0);

    private static byte[] Drawn(HousingUnderCheck housing, Scene scene, double step)
    {
        ImmutableArray<PageBody> bodies = [.. PageBodies.Of(housing).Where(body => body.Level >= 0 && body.Mesh.TriangleCount > 0)];
        return PngWriter.ToBytes(Renderer.Render(scene with
        {
            Parts =
            [
                .. bodies.Select(body => new PicturedPart(body.Mesh, PictureColours.OfPlastic(body.Colour))
                {
                    Placement = Transform3.Shift(0, 0, step * body.Level),
                }),
            ],
        }));
    }
}
