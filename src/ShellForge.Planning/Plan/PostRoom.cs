using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Plan;

/// <summary>
/// Where posts may stand in plan: the room, and half of the wall round it, so that a post that meets the wall fuses with it and never
/// shows outside.
/// </summary>
public static class PostRoom
{
    /// <summary>The room and half of its walls.</summary>
    public static Region Of(ShellPlan shell) => shell.Round is not { } round ? shell.Cavity.Offset(shell.Wall / 2)
        : round.HasBore
            ? Region.Annulus(
                RoundRegions.Ring(round, round.Inner + (shell.Wall / 2), RingSide.Inside),
                RoundRegions.Ring(round, round.BoreOuter - (shell.Wall / 2), RingSide.Outside))
            : RoundRegions.Disc(round, round.Inner + (shell.Wall / 2), RingSide.Inside);
}
