using System.Collections.Immutable;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Output.Looks;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Assembly;

/// <summary>A step with its picture.</summary>
/// <param name="Step">The step.</param>
/// <param name="Png">The picture; null for none.</param>
/// <param name="Alternative">The picture in words.</param>
public sealed record PicturedStep(AssemblyStep Step, byte[]? Png, string Alternative);

/// <summary>Draws what lies on the bench at each step: the parts that are there, and the one being put in place lifted over them.</summary>
public static class StepPictures
{
    private const int Width = 224;
    private const int Height = 168;

    // Lifted high enough to see under it, as a share of the housing's width.
    private const double LiftShare = 0.28;

    /// <summary>All steps, each with its picture. The same housing gives the same pictures.</summary>
    public static ImmutableArray<PicturedStep> Of(HousingPlan plan, HousingLooks looks)
    {
        ImmutableArray<AssemblyStep> steps = AssemblySteps.Of(plan);
        ILookup<string, PicturedPart> bodies = looks.Bodies.ToLookup(body => body.BelongsTo, PictureColours.Part);
        double lift = LiftShare * plan.Shell.Footprint.Bounds.Size.X;

        string[] names = [.. bodies.Select(thing => thing.Key)];

        // Two steps may show the same: it is drawn once.
        string[] keys = [.. steps.Select(step => string.Join('+', step.Shown) + "/" + step.Lifted)];
        string[] distinct = [.. keys.Distinct(StringComparer.Ordinal)];
        AssemblyStep[] pictured = [.. distinct.Select(key => steps[Array.IndexOf(keys, key)])];
        ImmutableArray<Picture> pictures = Renderer.Render(new PictureSeries
        {
            Things = [.. names.Select(name => bodies[name].ToImmutableArray())],
            Shots =
            [
                .. pictured.Select(step => new Shot(
                    [.. step.Shown.Select(name => Array.IndexOf(names, name)).Where(number => number >= 0)],
                    step.Lifted is { } lifted && bodies.Contains(lifted) ? Array.IndexOf(names, lifted) : null)),
            ],
            Lift = lift,
            Width = Width,
            Height = Height,
        });
        byte[]?[] drawn = new byte[pictured.Length][];
        Parallel.For(0, drawn.Length, i => drawn[i] = pictured[i].Shown.Any(bodies.Contains) ? PngWriter.ToBytes(pictures[i].WithFewColours()) : null);
        return [.. steps.Select((step, i) => new PicturedStep(step, drawn[Array.IndexOf(distinct, keys[i])], InWords(step)))];
    }

    private static string InWords(AssemblyStep step)
    {
        string[] rest = [.. step.Shown.Where(name => name != step.Lifted)];
        string shown = rest.Length == 0 ? "the bench" : string.Join(", ", rest.Select(name => $"the {name}"));
        return step.Lifted is null ? $"Picture of {shown}." : $"Picture of the {step.Lifted} lifted over {shown}.";
    }
}
