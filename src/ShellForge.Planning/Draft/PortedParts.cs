using ShellForge.Board.Description;

namespace ShellForge.Planning.Draft;

/// <summary>The connectors that get a port.</summary>
internal static class PortedParts
{
    /// <summary>Those asked for, and the one that brings power.</summary>
    public static IEnumerable<BoardPart> Of(BoardFile file) => file.Board.Parts.Where(part => part.Mouth is not null
        && (part.Port == PortWish.Open
            || (part.Port == PortWish.Unsaid && file.Housing.Cable is ConnectorCable cable && cable.PartRef == part.Ref)));
}
