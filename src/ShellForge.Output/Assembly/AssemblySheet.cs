using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Formats.Pdf;
using ShellForge.Output.Page;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Assembly;

/// <summary>
/// The sheet for the bench: what to have at hand, tools, iron temperatures, then every step with its picture and a box to tick after its
/// check. All stands inside what A4 and letter paper have in common.
/// </summary>
public static class AssemblySheet
{
    private const double Left = 16;
    private const double Right = 194;
    private const double Top = 18;
    private const double Bottom = 262;
    private const double Body = 3.5;
    private const double Leading = 4.7;
    private const double PictureWidth = 52;
    private const double PictureHeight = 39;
    private const double Gap = 4;

    /// <summary>The sheet as PDF.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="page">What the page tells, already put into words.</param>
    public static byte[] Of(HousingPlan plan, PageContent page)
    {
        var document = new PdfDocument($"{page.Name}: assembly sheet");
        var flow = new Flow(document, page.Name + (page.Revision.Length > 0 ? $", revision {page.Revision}" : ""));
        flow.Heading(page.Name, 7);
        flow.Text($"{(page.Revision.Length > 0 ? $"Revision {page.Revision}. " : "")}{page.Verdict.Words}.", PdfFont.Bold, Left, Right);
        flow.Space(2);

        flow.Heading("To have at hand", 4.6);
        foreach ((string item, int count) in page.Shopping)
        {
            flow.Tick(string.Create(CultureInfo.InvariantCulture, $"{count} x {item}"));
        }

        foreach (FilamentProfile filament in plan.Parts.Select(part => part.Filament).Distinct())
        {
            string iron = plan.Bosses.Any(boss => boss.Hole is not null) && filament == plan.Source.Print.Shell
                ? string.Create(CultureInfo.InvariantCulture, $"; iron for inserts {filament.IronCelsius.Value:0} \u00b0C")
                : "";
            flow.Tick(
                $"filament {filament.Name}: "
                    + $"{string.Join(", ", plan.Parts.Where(part => part.Filament == filament).Select(part => part.Name))}{iron}");
        }

        flow.Space(2);
        flow.Heading("Prints", 4.6);
        foreach (PagePart part in page.Parts)
        {
            flow.Tick($"{part.Name}: {part.File}; {part.Filament}; {part.Orientation}; layers {part.Layers}; walls {part.Walls}; fill "
                + $"{part.Fill}; pauses {part.Pauses}; {part.Mass}, {part.Time}");
        }

        flow.Space(2);
        flow.Heading("Tools", 4.6);
        flow.Text(string.Join(", ", page.Steps.SelectMany(step => step.Tools).Distinct(StringComparer.Ordinal)), PdfFont.Plain,
            Left, Right);
        flow.Cautions(page.Cautions, Left, Right);
        flow.Space(3);
        for (int i = 0; i < page.Steps.Length; i++)
        {
            flow.Step(i + 1, page.Steps[i]);
        }

        return document.ToBytes();
    }

    // Runs down the pages; what belongs together is kept on one.
    private sealed class Flow(PdfDocument document, string foot)
    {
        private readonly Dictionary<byte[], PdfPicture> _pictures = [];
        private PdfPage _page = NewPage(document, foot, 1);
        private int _pages = 1;
        private double _y = Top;

        public void Space(double height) => _y += height;

        public void Heading(string text, double size)
        {
            Room(size + (3 * Leading));
            _y += size;
            _page.Text(Left, _y, text, PdfFont.Bold, size);
            _y += 0.45 * size;
        }

        public void Text(string text, PdfFont font, double left, double right)
        {
            foreach (string line in PdfFontWidths.Lines(text, font, Body, right - left))
            {
                Room(Leading);
                _y += Leading;
                _page.Text(left, _y, line, font, Body);
            }
        }

        public void Tick(string text)
        {
            Room(Leading);
            _page.Frame(Left, _y + Leading - 2.9, 3, 3, 0.25);
            Text(text, PdfFont.Plain, Left + 6, Right);
        }

        public void Cautions(ImmutableArray<HandCaution> cautions, double left, double right)
        {
            string[] lines = LinesOf(cautions, left, right);
            if (lines.Length == 0)
            {
                return;
            }

            Room((lines.Length * Leading) + 4);
            _page.Frame(left, _y + 1.6, right - left, (lines.Length * Leading) + 2.2, 0.5);
            _y += 1;
            foreach (string line in lines)
            {
                _y += Leading;
                _page.Text(left + 2, _y, line, PdfFont.Bold, Body);
            }

            _y += 3;
        }

        public void Step(int number, PageStep step)
        {
            double right = step.Png is null ? Right : Right - PictureWidth - Gap;
            Room(Math.Max(HeightOf(step, right), step.Png is null ? 0 : PictureHeight + Gap));
            _page.Line(Left, _y, Right, _y, 0.2);
            double top = _y;
            if (step.Png is { } png)
            {
                if (!_pictures.TryGetValue(png, out PdfPicture? picture))
                {
                    _pictures[png] = picture = PdfPicture.OfPng(png);
                }

                _page.Picture(Right - PictureWidth, top + 1, PictureWidth, PictureHeight, picture);
            }

            _y += 6;
            _page.Text(Left, _y, $"{number}. {step.Title}", PdfFont.Bold, 4.2);
            _y += 1;
            Text(step.Text, PdfFont.Plain, Left, right);
            Cautions(step.Cautions, Left, right);
            if (!step.Tools.IsEmpty)
            {
                Text("Tools: " + string.Join(", ", step.Tools), PdfFont.Plain, Left, right);
            }

            if (step.Check.Length > 0)
            {
                _page.Frame(Left, _y + Leading - 2.9, 3, 3, 0.25);
                Text(step.Check, PdfFont.Plain, Left + 6, right);
            }

            _y = Math.Max(_y + 4, step.Png is null ? 0 : top + PictureHeight + Gap);
        }

        private static double HeightOf(PageStep step, double right)
        {
            int lines = Count(step.Text, PdfFont.Plain, Left) + Count(step.Check, PdfFont.Plain, Left + 6)
                + (step.Tools.IsEmpty ? 0 : Count("Tools: " + string.Join(", ", step.Tools), PdfFont.Plain, Left));
            int risks = LinesOf(step.Cautions, Left, right).Length;
            double caution = risks == 0 ? 0 : (risks * Leading) + 5;
            return (lines * Leading) + caution + 12;

            int Count(string text, PdfFont font, double left) => PdfFontWidths.Lines(text, font, Body, right - left).Count();
        }

        private static string[] LinesOf(ImmutableArray<HandCaution> cautions, double left, double right) =>
            [.. cautions.SelectMany(each => PdfFontWidths.Lines($"{each.Risk}: {each.Text}", PdfFont.Bold, Body, right - left - 4))];

        private void Room(double height)
        {
            if (_y + height > Bottom && _y > Top)
            {
                _page = NewPage(document, foot, ++_pages);
                _y = Top;
            }
        }

        private static PdfPage NewPage(PdfDocument document, string foot, int number)
        {
            PdfPage page = document.AddPage();
            page.Text(Left, Bottom + 8, string.Create(CultureInfo.InvariantCulture, $"{foot} - assembly sheet, page {number}"),
                PdfFont.Plain, 2.8);
            return page;
        }
    }
}
