using System.Collections.Immutable;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Remembering;

namespace ShellForge.Output.Assembly;

/// <summary>Pictures as PNG files in few colours; those of the same things from the same stand are drawn once.</summary>
/// <param name="memory">Knows what was drawn before.</param>
internal sealed class RememberedPictures(WorkMemory memory)
{
    /// <summary>One picture.</summary>
    public byte[] Of(Scene scene) => memory.Of(
        new Single(scene with { Parts = [] }, Content(scene.Parts)), () => PngWriter.ToBytes(Renderer.Render(scene).WithFewColours()),
        png => png.Length);

    /// <summary>Pictures from one stand, in the order of the shots.</summary>
    public byte[][] Of(PictureSeries series) => memory.Of(
        new Several(
            series with { Things = [], Shots = [] }, new(series.Things.Select(Content)),
            new(series.Shots.Select(shot => new Listed<ShownThing>(shot.Shown)))),
        () => Drawn(series), pictures => pictures.Sum(png => (long)png.Length));

    private static byte[][] Drawn(PictureSeries series)
    {
        ImmutableArray<Picture> pictures = Renderer.Render(series);
        byte[][] drawn = new byte[pictures.Length][];
        Parallel.For(0, drawn.Length, i => drawn[i] = PngWriter.ToBytes(pictures[i].WithFewColours()));
        return drawn;
    }

    private static Listed<Thing> Content(ImmutableArray<PicturedPart> parts) =>
        new(parts.Select(part => new Thing(part.Mesh.Digest, part.Colour, part.Placement)));

    private readonly record struct Thing(string Mesh, Rgb Colour, Transform3 Placement);

    private sealed record Single(Scene Bare, Listed<Thing> Parts);

    private sealed record Several(PictureSeries Bare, Listed<Listed<Thing>> Things, Listed<Listed<ShownThing>> Shots);
}
