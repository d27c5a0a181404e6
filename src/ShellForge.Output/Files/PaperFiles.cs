using System.Collections.Immutable;
using System.Text;
using ShellForge.Checks.Gauges;
using ShellForge.Output.Looks;
using ShellForge.Output.Paper;

namespace ShellForge.Output.Files;

/// <summary>Templates at their true size: each as an SVG, and all of them as one PDF for A4 and letter paper.</summary>
internal static class PaperFiles
{
    private const string Pages = "paper.pdf";

    /// <summary>Names that the files may have.</summary>
    public static ImmutableArray<string> Names { get; } = [.. Templates.Files.Select(file => $"{file}.svg"), Pages];

    /// <summary>The files.</summary>
    public static IEnumerable<(string Name, Action<Stream> Write)> Of(HousingUnderCheck housing, HousingLooks looks)
    {
        string name = housing.Board.Name + (housing.Board.Revision.Length > 0 ? $", revision {housing.Board.Revision}" : "");
        ImmutableArray<Template> templates = Templates.Of(housing);
        return
        [
            .. templates.Select(template => ($"{template.File}.svg",
                (Action<Stream>)(stream => stream.Write(Encoding.UTF8.GetBytes(TemplatePages.Svg(template, name).ToString()))))),
            (Pages, stream => stream.Write(TemplatePages.Pdf(templates, name))),
        ];
    }
}
