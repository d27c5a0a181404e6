using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Output.Assembly;
using ShellForge.Output.Light;
using ShellForge.Output.Looks;
using ShellForge.Output.Prints;
using ShellForge.Output.Report;
using ShellForge.Output.Words;
using ShellForge.Planning.Hands;

namespace ShellForge.Output.Page.Building;

/// <summary>Puts a housing into the words and pictures of its page.</summary>
public static class PageBuilder
{
    /// <summary>What the page shows.</summary>
    /// <param name="housing">What was made.</param>
    /// <param name="report">What is told about it.</param>
    /// <param name="looks">What it looks like.</param>
    /// <param name="drawings">The dimensioned drawings.</param>
    /// <param name="steps">The assembly with its pictures.</param>
    public static PageContent Of(
        HousingUnderCheck housing, HousingReport report, HousingLooks looks, ImmutableArray<PageDrawing> drawings,
        ImmutableArray<PicturedStep> steps) => Of(housing, report, looks, drawings, steps, PrintSheet.Of(housing, report));

    /// <summary>What the page shows, with how its parts are printed.</summary>
    internal static PageContent Of(
        HousingUnderCheck housing, HousingReport report, HousingLooks looks, ImmutableArray<PageDrawing> drawings,
        ImmutableArray<PicturedStep> steps, PrintSheet prints) => new()
        {
            Name = report.Name,
            Revision = report.Revision,
            Verdict = PageAnswers.VerdictOf(report),
            Answers = PageAnswers.Of(housing, report),
            Facts = PageAnswers.FactsOf(housing, report),
            Findings = [.. report.Findings.Select((finding, i) => Of(finding, i + 1))],
            Bodies = looks.Bodies,
            Light = housing.Light is { } light
                ? new PageLight(LightPictures.SeenPng(light, LightShow.AllWhite), LightPictures.Extent(light), light.Map.Face.Wraps) : null,
            Drawings = drawings,
            Shopping = [.. report.Shopping.Select(item => (item.Item, item.Count))],
            Parts = PagePrints.Of(prints),
            Sliced = PagePrints.SlicedOf(prints),
            PrintAdvice = PagePrints.AdviceOf(housing, report),
            PrintNotes = PagePrints.NotesOf(prints, report, housing.Board.Print.Printer),
            Steps = OfSteps(steps),
            Pictures = PagePhysics.PicturesOf(housing, looks),
            Figures = PagePhysics.FiguresOf(housing),
            Temperatures = PagePhysics.TemperaturesOf(housing),
            Cautions = Cautions.Of(housing),
            Resolved =
            [
                .. report.Resolved.OrderBy(decision => decision.Path, StringComparer.Ordinal)
                    .Select(decision => (decision.Path, decision.Value, decision.From, decision.Why)),
            ],
        };

    /// <summary>A page that shows a housing before it has been checked.</summary>
    /// <param name="housing">The housing as assembled.</param>
    /// <param name="live">Its place in the following of the file.</param>
    public static PageContent OfUnchecked(HousingUnderCheck housing, PageLive live) =>
        Empty(housing.Board.Name, new PageVerdict("busy", "Checking")) with
        {
            Revision = housing.Board.Revision,
            Bodies = PageBodies.Of(housing, BoardBodies.Of(housing.Plan)),
            Live = live,
        };

    /// <summary>A page without a housing: the file has had mistakes from the start.</summary>
    /// <param name="name">What stands in the place of a name.</param>
    /// <param name="live">The mistakes.</param>
    public static PageContent OfBroken(string name, PageLive live) =>
        Empty(name, new PageVerdict("stop", "The file has mistakes")) with { Live = live };

    private static PageContent Empty(string name, PageVerdict verdict) => new()
    {
        Name = name,
        Verdict = verdict,
        Answers = [],
        Findings = [],
        Bodies = [],
        Drawings = [],
        Shopping = [],
        Parts = [],
        Steps = [],
        Resolved = [],
    };

    private static PageFinding Of(Finding finding, int number) => new(
        number, ReportJson.Word(finding.Severity), finding.Rule, finding.Subject, FindingWords.Sentence(finding.Message), Data(finding),
        FindingWords.Sentence(finding.Remedy), finding.At, finding.Accepted ?? "");

    private static string Data(Finding finding)
    {
        var words = new List<string>(FindingWords.Figures(finding));
        if (finding.At is { } at)
        {
            words.Add(
                string.Create(CultureInfo.InvariantCulture, $"at x {at.X:0.0;-0.0;0.0}, y {at.Y:0.0;-0.0;0.0}, z {at.Z:0.0;-0.0;0.0} mm"));
        }

        if (finding.InFile is { } place)
        {
            words.Add(string.Create(CultureInfo.InvariantCulture, $"line {place.Line} of {place.File}"));
        }

        return string.Join("; ", words);
    }

    // A caution stands where the hand first needs it, and once.
    private static ImmutableArray<PageStep> OfSteps(ImmutableArray<PicturedStep> steps)
    {
        var told = new HashSet<HandCaution>();
        return
        [
            .. steps.Select(pictured => new PageStep(
                pictured.Step.Title, pictured.Step.Text, pictured.Step.Check, [.. pictured.Step.Cautions.Where(told.Add)],
                pictured.Step.Tools,
                pictured.Png, pictured.Alternative)),
        ];
    }
}
