using FsCheck.Xunit;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Writing;
using ShellForge.Testing;

namespace ShellForge.Import.Tests;

/// <summary>Patterns that are put on a board come back as so many entries, with every LED, part and hole where the files have it.</summary>
[Properties(Arbitrary = [typeof(Draws.Rows)], MaxTest = 100)]
public class PatternImportTests
{
    // What the import allows a pattern, and the third decimal of places that stand alone.
    private const double Place = 0.051;
    private const double Turn = 0.605;

    private static readonly ProfileLibrary Profiles = ProfileLibrary.Load([]).Library;

    [Property]
    public void Circles_and_arcs_come_back_as_one_entry_each(Draws draws)
    {
        (PatternBoard board, PatternSource source) = Made(draws);
        source.Rings(draws.Next(1, 5), 22);
        Counted(source, Same(board, draws));
    }

    [Property]
    public void A_LED_in_the_middle_is_one_by_itself(Draws draws)
    {
        (PatternBoard board, PatternSource source) = Made(draws);
        bool before = draws.Next(2) == 0;
        source.Spiral(before ? 1 : 0);
        source.Rings(draws.Next(1, 4), 22);
        source.Spiral(before ? 0 : 1);
        Counted(source, Same(board, draws));
    }

    [Property]
    public void Grids_come_back_as_one_entry_each(Draws draws)
    {
        (PatternBoard board, PatternSource source) = Made(draws);
        source.Grid(-55, 0);
        if (draws.Next(2) == 1)
        {
            source.Grid(60, 13);
        }

        Counted(source, Same(board, draws));
    }

    [Property]
    public void Rings_round_a_grid_come_back_as_one_entry_each(Draws draws)
    {
        (PatternBoard board, PatternSource source) = Made(draws);
        source.Rings(1, 60);
        source.Grid(0, 0);
        source.Rings(1, 100);
        Counted(source, Same(board, draws));
    }

    [Property]
    public void A_spiral_stays_a_line_for_each_LED(Draws draws)
    {
        (PatternBoard board, PatternSource source) = Made(draws);
        source.Spiral(draws.Next(2, 40));
        Counted(source, Same(board, draws));
    }

    [Property]
    public void Holes_on_arcs_and_in_grids_are_one_entry_each(Draws draws)
    {
        (PatternBoard board, _) = Made(draws);
        int entries = draws.Next(1, 4);
        for (int i = 0; i < entries; i++)
        {
            int count = draws.Next(3, 9);
            double step = draws.Pick(360.0 / count, Math.Floor(250.0 / count));
            double from = draws.NextDouble() * 360;
            for (int place = 0; place < count; place++)
            {
                (double sin, double cos) = Math.SinCos((from + (step * place)) * Math.PI / 180);
                board.Hole((40 + (20 * i)) * cos, (40 + (20 * i)) * sin, 3.2);
            }
        }

        double turn = draws.NextDouble() * 1.5;
        (double across, double down) = (8 + draws.Next(10), 22 + draws.Next(8));
        foreach ((int h, int v) in draws.Next(2) == 0 ? [] : new[] { (1, 1), (-1, 1), (1, -1), (-1, -1) })
        {
            (double sin, double cos) = Math.SinCos(turn);
            board.Hole((h * across * cos) - (v * down * sin), (h * across * sin) + (v * down * cos), 2.7);
        }

        entries += board.Holes.Any(h => h.Diameter == 2.7) ? 1 : 0;
        string text = BoardFileWriter.Text(EcadImport.Run(board.Files(draws), new ImportOptions { Profiles = Profiles }));
        BoardReadResult back = BoardFileReader.Read("board.yaml", text, Profiles, []);
        Assert.True(back.File is not null, string.Join('\n', back.Diagnostics) + "\n" + text);
        Assert.Equal(board.Holes.Count, back.File!.Board.Holes.Length);
        Assert.All(board.Holes, hole => Assert.True(
            back.File.Board.Holes.Any(own => own.Diameter == hole.Diameter && Math.Abs(own.At.X + board.X - hole.X) <= Place
                && Math.Abs(own.At.Y + board.Y - hole.Y) <= Place),
            $"{hole}\n{text}"));
        Assert.True(Count(text, ", diameter:") == entries, $"not {entries}\n{text}");
    }

    private static (PatternBoard Board, PatternSource Source) Made(Draws draws)
    {
        var board = new PatternBoard(
            draws.Pick(0, 100, 148.5), draws.Pick(0, -80, 105), draws.Pick(0.0001, 0.001, 0.00254, 0.01), draws.Pick(0.01, 0.1, 1));
        return (board, new PatternSource(board, draws));
    }

    // The board file's text, after everything in it was found where the files have it.
    private static string Same(PatternBoard made, Draws draws)
    {
        ImportResult result = EcadImport.Run(made.Files(draws), new ImportOptions { Profiles = Profiles });
        string text = BoardFileWriter.Text(result);
        BoardReadResult back = BoardFileReader.Read("board.yaml", text, Profiles, []);
        Assert.True(back.File is not null, string.Join('\n', back.Diagnostics) + "\n" + text);
        CircuitBoard board = back.File!.Board;
        Dictionary<string, (Point2 At, double Turn)> found = board.PixelCircles.SelectMany(c => c.Pixels)
            .Select(p => (p.Ref, p.At, p.Rotation.Degrees))
            .Concat(board.Parts.Select(p => (p.Ref, p.At, p.Rotation.Degrees)))
            .ToDictionary(p => p.Ref, p => (p.At, p.Degrees));
        Assert.True(made.Parts.Count == found.Count, $"{found.Count} of {made.Parts.Count}\n{text}");
        foreach (MadePart part in made.Parts)
        {
            Assert.True(found.TryGetValue(part.Ref, out (Point2 At, double Turn) own), $"{part.Ref} is missing\n{text}");
            double off = Math.Sqrt(Math.Pow(own.At.X + made.X - part.X, 2) + Math.Pow(own.At.Y + made.Y - part.Y, 2));
            double turned = Math.Abs(Math.IEEERemainder(own.Turn - part.Turn, 360));
            Assert.True(off <= Place && turned <= Turn, $"{part} is {off} mm and {turned} degrees off\n{text}");
        }

        return text;
    }

    private static void Counted(PatternSource source, string text)
    {
        (int Leds, int Beside) entries = (Count(text, "{package: \"2020\""), Count(text, "{ref: C"));
        Assert.True(entries == (source.Entries, source.Kinds), $"{entries}, not {(source.Entries, source.Kinds)}\n{text}");
    }

    private static int Count(string text, string word) => text.Split(word).Length - 1;
}
