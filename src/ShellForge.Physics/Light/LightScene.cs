using System.Collections.Immutable;

namespace ShellForge.Physics.Light;

/// <summary>Everything that light meets on its way from LEDs to the diffuser.</summary>
public sealed record LightScene
{
    /// <summary>The LEDs, in the order of their data.</summary>
    public required ImmutableArray<LedSource> Leds { get; init; }

    /// <summary>Walls, bezel and whatever else stands in the way; the diffuser is not among them.</summary>
    public required ShadowTree Solids { get; init; }

    /// <summary>What each material of the solids does with light.</summary>
    public required ImmutableArray<SurfaceOptics> Materials { get; init; }

    /// <summary>The diffuser's body where it is one of its own: it dims what passes the walls over its rim, and throws no shadow.</summary>
    public ShadowTree Sheet { get; init; } = ShadowTree.Empty;

    /// <summary>Its plastic.</summary>
    public SurfaceOptics SheetOptics { get; init; }

    /// <summary>The diffuser's inner face.</summary>
    public required ReceiverGrid Face { get; init; }

    /// <summary>What the diffuser does with light.</summary>
    public required DiffuserOptics Diffuser { get; init; }

    /// <summary>
    /// The sheet's thickness at each cell of the face, mm; empty where it is what <see cref="Diffuser"/> says everywhere.
    /// </summary>
    public ImmutableArray<float> Thickness { get; init; } = [];

    /// <summary>Whether the sheet ends at the window's edge fused to plastic that swallows light.</summary>
    public bool DarkRim { get; init; }

    /// <summary>
    /// Whether the sheet goes on behind the bezel, as lit there as at the window's edge: what spreads out of sight comes back from there.
    /// </summary>
    public bool GoesOn { get; init; }

    /// <summary>Into how many equal sectors about the z axis the scene repeats itself, the first in the middle of +x; 1 for none.</summary>
    public int Sectors { get; init; } = 1;

    /// <summary>Whether only the light of all LEDs together is asked for: not one alone, and no crosstalk.</summary>
    public bool OnlyAll { get; init; }

    /// <summary>Whether every LED has a cell of its own: what walls throw back is then not smeared over the border between two.</summary>
    public bool Cells { get; init; }

    /// <summary>The LED that shines alone in the picture of one.</summary>
    public int Alone { get; init; }

    /// <summary>All of the face where <see cref="Face"/> is a part of it.</summary>
    internal ReceiverGrid? Whole { get; init; }

    /// <summary>The sheet's thickness at each cell of all of it.</summary>
    internal ImmutableArray<float> WholeThickness { get; init; } = [];

    /// <summary>Mean thickness along the edge of all of it, mm; null where it is told by its shares alone.</summary>
    internal double? RimThickness(ReceiverGrid all)
    {
        ImmutableArray<float> thickness = Whole is null ? Thickness : WholeThickness;
        if (thickness.IsEmpty || Diffuser.Plastic is null)
        {
            return null;
        }

        float[] atRim = [.. Enumerable.Range(0, all.Count).Where(all.IsBesideRim).Select(cell => thickness[cell])];
        return atRim.Length == 0 ? null : atRim.Average();
    }

    /// <summary>What the diffuser does with light at a cell.</summary>
    internal DiffuserOptics SheetAt(int cell) =>
        Thickness.IsEmpty || Diffuser.Plastic is not { } plastic ? Diffuser : DiffuserOptics.Printed(Thickness[cell], plastic);
}
