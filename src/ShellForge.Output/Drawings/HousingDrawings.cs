using System.Collections.Immutable;
using ShellForge.Checks;

namespace ShellForge.Output.Drawings;

/// <summary>A drawing as it is written.</summary>
/// <param name="Name">Name of its file.</param>
/// <param name="Title">For people.</param>
/// <param name="Svg">The file.</param>
public sealed record DrawingFile(string Name, string Title, string Svg);

/// <summary>All drawings of a housing.</summary>
public static class HousingDrawings
{
    /// <summary>The drawings, in the order in which they are read.</summary>
    public static ImmutableArray<DrawingFile> Of(HousingUnderCheck housing)
    {
        var drawings = ImmutableArray.CreateBuilder<DrawingFile>();
        drawings.Add(new DrawingFile("plan.svg", "The tub from the front, cut level", PlanDrawing.Of(housing)));
        drawings.Add(new DrawingFile("section.svg", "The housing cut upright", SectionDrawing.Of(housing)));
        if (SectionDrawing.ThroughScrew(housing) is { } screw)
        {
            drawings.Add(new DrawingFile("section-screw.svg", "The housing cut through a screw", screw));
        }

        drawings.AddRange(housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty).Select(part =>
            new DrawingFile($"{part.Name}.svg", $"The {part.Name} by itself", PartDrawing.Of(housing, part))));
        return drawings.ToImmutable();
    }
}
