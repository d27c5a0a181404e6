using System.Diagnostics;
using System.Text;
using ShellForge.Board.Description;
using ShellForge.Checks;
using ShellForge.Geometry.Booleans;
using ShellForge.Housing;
using ShellForge.Output.Assembly;
using ShellForge.Output.Drawings;
using ShellForge.Output.Files;
using ShellForge.Output.Light;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;
using ShellForge.Output.Report;
using ShellForge.Planning;
using ShellForge.Testing;

namespace ShellForge.Benchmarks;

/// <summary>Makes a sample and writes its files again and again; prints the median of processor time of each stage.</summary>
internal static class WritingCommand
{
    public static int Run(string sample, int repetitions)
    {
        BoardFile file = WrittenBoard.Sample(sample);
        HousingPlan plan = HousingPlanner.Plan(file);
        var housing = new HousingUnderCheck
        {
            Board = file,
            Plan = plan,
            Parts = [.. HousingBuilder.Build(plan).Select(part => new CheckedPart { Plan = part.Plan, InPrint = SolidEvaluator.Evaluate(part.InPrint) })],
        };
        HousingReport report = HousingReport.Of(housing, CheckRun.Run(housing, RuleList.All, default));
        HousingLooks looks = HousingLooks.Of(housing);
        PageContent page = HousingFiles.PageOf(housing, report);
        (string Name, Func<object> Work)[] stages =
        [
            ("plan", () => HousingPlanner.Plan(file)),
            ("parts as solids", () => HousingBuilder.Build(plan).Select(part => SolidEvaluator.Evaluate(part.InPrint)).ToArray()),
            ("looks", () => HousingLooks.Of(housing)),
            ("drawings", () => HousingDrawings.Of(housing)),
            ("step pictures", () => StepPictures.Of(plan, looks)),
            ("light sheet", () => LightPictures.Sheet(housing.Light!)),
            ("light on the page", () => LightPictures.SeenPng(housing.Light!, LightShow.AllWhite)),
            ("pulled apart", () => HousingPictures.Apart(looks)),
            ("thumbnail", () => HousingPictures.Thumbnail(looks)),
            ("page in words", () => PageBuilder.Of(housing, report, looks, [], [])),
            ("sheet as PDF", () => AssemblySheet.Of(plan, page)),
            ("page as HTML", () => Encoding.UTF8.GetBytes(PageHtml.Write(page, PageAssets.Embedded))),
            ("report as JSON", () => ReportJson.Bytes(report)),
            ("parts only", () => HousingFiles.Of(housing, report, FileFormats.Stl)),
            ("all files", () => HousingFiles.Of(housing, report, FileFormats.Stl | FileFormats.ThreeMf)),
        ];
        foreach ((string name, Func<object> work) in stages)
        {
            List<double> processor = [];
            for (int i = 0; i < repetitions; i++)
            {
                TimeSpan start = Process.GetCurrentProcess().TotalProcessorTime;
                GC.KeepAlive(work());
                processor.Add((Process.GetCurrentProcess().TotalProcessorTime - start).TotalMilliseconds);
            }

            processor.Sort();
            Console.WriteLine($"{name,-18} {processor[repetitions / 2],7:0} ms processor, best {processor[0]:0}");
        }

        return 0;
    }
}
