using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Formats.Glb;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Looks;

/// <summary>The assembled housing with the board in it, in the colours of filaments and board.</summary>
internal static class AssemblyScene
{
    private const double DiffuserOpacity = 0.6;

    public static ImmutableArray<SceneBody> Of(HousingUnderCheck housing, ImmutableArray<BoardMesh> board)
    {
        var bodies = ImmutableArray.CreateBuilder<SceneBody>();
        foreach (MadePart part in housing.SoundParts)
        {
            double opacity = part.Name == PartNames.Diffuser ? DiffuserOpacity : 1;
            bodies.Add(new SceneBody(part.Name, part.AssembledMesh, part.Plan.Filament.Screen, opacity));
        }

        bodies.AddRange(board.Select(body => new SceneBody(body.Name, body.Mesh, body.Colour, 1)));
        return bodies.ToImmutable();
    }
}
