using System.Text;
using ShellForge.Checks;
using ShellForge.Checks.Gauges;
using ShellForge.Housing;
using ShellForge.Output.Assembly;
using ShellForge.Output.Drawings;
using ShellForge.Output.Files;
using ShellForge.Output.Light;
using ShellForge.Output.Looks;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;
using ShellForge.Output.Report;
using ShellForge.Planning;
using ShellForge.Planning.Plan;

namespace ShellForge.Benchmarks;

/// <summary>
/// Makes a sample and writes its files again and again; prints the medians of processor time and of the wall's of each stage.
/// </summary>
internal static class WritingCommand
{
    public static int Run(string sample, int repetitions, string? only)
    {
        HousingUnderCheck housing = SampleHousing.Of(sample);
        HousingPlan plan = housing.Plan;
        HousingReport report = HousingReport.Of(housing, CheckRun.Run(housing, RuleList.All, default), HousingReport.PartsOf(housing));
        HousingLooks looks = HousingLooks.Of(housing);
        PageContent page = HousingFiles.PageOf(DrawnFiles.OfPage(housing), report);
        (string Name, Func<object> Work)[] stages =
        [
            ("plan", () => HousingPlanner.Plan(housing.Board)),
            ("parts as solids", () => PartMaker.Make(plan)),
            ("looks", () => HousingLooks.Of(housing)),
            ("drawings", () => HousingDrawings.Of(housing, looks.Board)),
            ("step pictures", () => StepPictures.Of(plan, looks)),
            ("light sheet", () => LightPictures.Sheet(housing.Light!)),
            ("light on the page", () => LightPictures.SeenPng(housing.Light!, LightShow.AllWhite)),
            ("pulled apart", () => HousingPictures.Apart(looks)),
            ("thumbnail", () => HousingPictures.Thumbnail(looks)),
            ("page in words", () => PageBuilder.Of(housing, report, looks, [], [])),
            ("sheet as PDF", () => AssemblySheet.Of(plan, page)),
            ("page as HTML", () => Encoding.UTF8.GetBytes(PageHtml.Write(page, PageAssets.Embedded))),
            ("what the page adds",
                () => PageHtml.Write(PageBuilder.Of(housing, report, looks, page.Drawings, StepPictures.Of(plan, looks)),
                    PageAssets.Embedded)),
            ("report as JSON", () => ReportJson.Bytes(report)),
            ("parts only", () => HousingFiles.Of(DrawnFiles.Of(housing, [OutputFormat.Stl]), report)),
            ("all files", () => HousingFiles.Of(DrawnFiles.Of(housing, OutputFormat.Usual), report)),
        ];
        foreach ((string name, Func<object> work) in stages.Where(stage => only is null || stage.Name == only))
        {
            int collections = GC.CollectionCount(2);
            (double median, double best, double wall) = ProcessorTime.Of(repetitions, work);
            Console.WriteLine(
                $"{name,-18} {median,7:0} ms processor, best {best:0}; {wall:0} ms on the wall; {GC.CollectionCount(2) - collections} "
                    + $"full collections");
        }

        return 0;
    }
}
