using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Solids;
using ShellForge.Output.Page;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Looks;

/// <summary>The bodies of the view in space, from the floor up.</summary>
internal static class PageBodies
{
    private const double DiffuserOpacity = 0.7;

    // Places in the stack: parts that stay together when the housing is pulled apart share one.
    private const double BoardLevel = 1;
    private const double SecondBoardLevel = 0.5;

    public static ImmutableArray<PageBody> Of(HousingUnderCheck housing, ImmutableArray<BoardMesh> board)
    {
        var bodies = ImmutableArray.CreateBuilder<PageBody>();
        foreach (MadePart part in housing.SoundParts)
        {
            bool lets = part.Name == PartNames.Diffuser || part.Plan.Filament == housing.Plan.Diffuser.Filament;
            bodies.Add(new PageBody(
                part.Name, part.Name, part.AssembledMesh, part.Plan.Filament.Screen,
                part.Name == PartNames.Diffuser ? DiffuserOpacity : 1, LevelOf(part.Plan), lets, part.Name));
        }

        // One mesh a colour: a board of sixty LEDs is three bodies to draw, not sixty.
        foreach (IGrouping<string, BoardMesh> colour in board.Where(body => body.Name != PartNames.SecondBoard)
            .GroupBy(body => body.Colour, StringComparer.Ordinal))
        {
            string name = colour.First().Name == PartNames.Board ? PartNames.Board : $"{PartNames.Board} {colour.Key}";
            bodies.Add(new PageBody(
                name, PartNames.Board, Mesh.Joined(colour.Select(body => body.Mesh)), colour.Key, 1, BoardLevel, false, PartNames.Board));
        }

        bodies.AddRange(board.Where(body => body.Name == PartNames.SecondBoard).Select(body => new PageBody(
            body.Name, body.Name, body.Mesh, body.Colour, 1, SecondBoardLevel, false, body.Name)));
        return [.. bodies.OrderBy(body => body.Level)];
    }

    /// <summary>Place of a printed part in the stack: 0 is the tub.</summary>
    private static double LevelOf(PartPlan part) => !part.IsOfHousing ? -1 : (part.PrintedWith ?? part.Name) switch
    {
        PartNames.Tub => 0,
        PartNames.Clamp => 1.5,
        PartNames.Baffle => 2,
        PartNames.Diffuser => 3,
        _ => 4,
    };
}
