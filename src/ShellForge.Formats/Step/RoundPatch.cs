namespace ShellForge.Formats.Step;

/// <summary>A piece of a round surface that becomes a face, well short of a full turn: no face meets itself along a seam.</summary>
/// <param name="surface">The surface.</param>
/// <param name="facesOut">Whether its outer side looks away from the axis.</param>
internal sealed class RoundPatch(RoundSurface surface, bool facesOut)
{
    public RoundSurface Surface { get; } = surface;

    public bool FacesOut { get; } = facesOut;
}
