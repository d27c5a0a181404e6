using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Formats.Svg;
using ShellForge.Output.Looks;

namespace ShellForge.Output.Drawings;

/// <summary>A drawing as it is written.</summary>
/// <param name="Name">Name of its file.</param>
/// <param name="Title">For people.</param>
/// <param name="Svg">The file.</param>
/// <param name="Width">Width of the sheet, mm.</param>
/// <param name="Height">Height of the sheet, mm.</param>
public sealed record DrawingFile(string Name, string Title, string Svg, double Width, double Height);

/// <summary>All drawings of a housing.</summary>
public static class HousingDrawings
{
    /// <summary>The drawings, in the order in which they are read.</summary>
    /// <param name="housing">What was made.</param>
    /// <param name="board">The populated board, body by body.</param>
    public static ImmutableArray<DrawingFile> Of(HousingUnderCheck housing, ImmutableArray<BoardMesh> board)
    {
        (string Name, string Title, Func<SvgSheet?> Draw)[] drawings =
        [
            ("plan.svg", "The tub from the front, cut level", () => PlanDrawing.Of(housing)),
            ("section.svg", "The housing cut upright", () => SectionDrawing.Of(housing, board)),
            ("section-screw.svg", "The housing cut through a screw", () => SectionDrawing.ThroughScrew(housing, board)),
            (DrillTemplate.FileName, "Where to drill, at its true size", () => DrillTemplate.Of(housing)),
            .. housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty).Select(part =>
                ($"{part.Name}.svg", $"The {part.Name} by itself", (Func<SvgSheet?>)(() => PartDrawing.Of(housing, part)))),
        ];
        var files = new DrawingFile?[drawings.Length];
        Parallel.For(0, files.Length, i =>
        {
            (string name, string title, Func<SvgSheet?> draw) = drawings[i];
            files[i] = draw() is { } sheet ? new DrawingFile(name, title, sheet.ToString(), sheet.Width, sheet.Height) : null;
        });
        return [.. files.OfType<DrawingFile>()];
    }
}
