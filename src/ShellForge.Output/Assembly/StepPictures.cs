using System.Collections.Immutable;
using ShellForge.Checks;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Files;

namespace ShellForge.Output.Assembly;

/// <summary>A step with its picture.</summary>
/// <param name="Step">The step.</param>
/// <param name="Png">The picture; null for none.</param>
/// <param name="Alternative">The picture in words.</param>
public sealed record PicturedStep(AssemblyStep Step, byte[]? Png, string Alternative);

/// <summary>Draws what lies on the bench at each step: the parts that are there, and the one being put in place lifted over them.</summary>
public static class StepPictures
{
    private const int Width = 288;
    private const int Height = 216;

    // Lifted high enough to see under it, as a share of the housing's width.
    private const double LiftShare = 0.28;

    private const string BoardName = "board";

    /// <summary>All steps, each with its picture. The same housing gives the same pictures.</summary>
    public static ImmutableArray<PicturedStep> Of(HousingUnderCheck housing)
    {
        ImmutableArray<AssemblyStep> steps = AssemblySteps.Of(housing.Plan);
        ImmutableDictionary<string, ImmutableArray<PicturedPart>> bodies = Bodies(housing);
        double lift = LiftShare * housing.Plan.Shell.Footprint.Bounds.Size.X;

        // Two steps may show the same: it is drawn once.
        string[] keys = [.. steps.Select(step => string.Join('+', step.Shown) + "/" + step.Lifted)];
        string[] distinct = [.. keys.Distinct(StringComparer.Ordinal)];
        byte[]?[] drawn = new byte[]?[distinct.Length];
        Parallel.For(0, distinct.Length, i =>
            drawn[i] = Drawn(steps[Array.IndexOf(keys, distinct[i])], bodies, lift));
        return [.. steps.Select((step, i) => new PicturedStep(step, drawn[Array.IndexOf(distinct, keys[i])], InWords(step)))];
    }

    private static byte[]? Drawn(AssemblyStep step, ImmutableDictionary<string, ImmutableArray<PicturedPart>> bodies, double lift)
    {
        PicturedPart[] parts =
        [
            .. step.Shown.Where(bodies.ContainsKey).SelectMany(name => bodies[name]
                .Select(part => name == step.Lifted ? part with { Placement = Transform3.Shift(0, 0, lift) } : part)),
        ];
        return parts.Length == 0
            ? null
            : PngWriter.ToBytes(Renderer.Render(new Scene { Parts = [.. parts], Width = Width, Height = Height }));
    }

    private static ImmutableDictionary<string, ImmutableArray<PicturedPart>> Bodies(HousingUnderCheck housing)
    {
        var bodies = ImmutableDictionary.CreateBuilder<string, ImmutableArray<PicturedPart>>(StringComparer.Ordinal);
        foreach (CheckedPart part in housing.SoundParts)
        {
            bodies[part.Name] = [new PicturedPart(part.AssembledMesh, PictureColours.OfPlastic(part.Plan.Filament.Screen))];
        }

        bodies[BoardName] = [.. BoardBodies.Of(housing.Plan).Select(body => new PicturedPart(body.Mesh, PictureColours.Of(body.Colour)))];
        return bodies.ToImmutable();
    }

    private static string InWords(AssemblyStep step)
    {
        string[] rest = [.. step.Shown.Where(name => name != step.Lifted)];
        string shown = rest.Length == 0 ? "the bench" : string.Join(", ", rest.Select(name => $"the {name}"));
        return step.Lifted is null ? $"Picture of {shown}." : $"Picture of the {step.Lifted} lifted over {shown}.";
    }
}
