using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Import.Files;
using ShellForge.Import.Writing;
using ShellForge.Testing;

namespace ShellForge.Import.Tests;

/// <summary>Boards as they are made, and the lines that a person would write for them.</summary>
public class PatternTextTests
{
    private static readonly ProfileLibrary Profiles = ProfileLibrary.Load([]).Library;

    private readonly PatternBoard _board = new(0, 0, 0.001, 0.1);

    [Fact]
    public void An_arc_is_told_by_its_first_place_and_its_step()
    {
        Leds(5, i => Round(30, 200 - (15 * i)), i => 200 - (15 * i) + 90);
        Written("pixels: {package: \"2020\", circle: 60, count: 5, from: 200, step: 15, direction: cw, ref: D1, rotation: 90}");
    }

    [Fact]
    public void A_gap_in_an_arc_is_skipped()
    {
        int[] places = [0, 1, 2, 4, 5, 6, 7];
        Leds(7, i => Round(40, 10 + (7.5 * places[i])), _ => 0);
        Written("{package: \"2020\", circle: 80, count: 8, from: 10, step: 7.5, skip: [4], ref: D1, turns: false}");
    }

    [Fact]
    public void Circles_and_the_LED_in_the_middle_stand_in_the_order_of_their_designators()
    {
        Leds(12, i => Round(50, 90 - (30 * i)), i => 90 - (30 * i));
        Leds(6, i => Round(25, 60 * i), i => 60 * i);
        Leds(1, _ => (0, 0), _ => 45);
        Written(
            "    - {package: \"2020\", circle: 100, count: 12, from: 90, direction: cw, ref: D1}",
            "    - {package: \"2020\", circle: 50, count: 6, from: 0, ref: D13}",
            "    - {package: \"2020\", at: [0, 0], ref: D19, rotation: 45}");
    }

    [Fact]
    public void A_board_that_is_turned_as_a_whole_has_a_turned_grid()
    {
        int[] row = [.. Enumerable.Range(0, 12).Select(i => i / 4)];
        Leds(12, i => Turned((8 * (row[i] % 2 == 0 ? i % 4 : 3 - (i % 4))) - 12, 8 - (8 * row[i]), 30), _ => 30);
        Written("grid: {columns: 4, rows: 3, pitch: 8, turn: 30, snake: true}, ref: D1}");
    }

    [Fact]
    public void A_grid_is_counted_from_its_corner_along_its_columns()
    {
        (int Column, int Row)[] cells = [(0, 0), (0, 1), (0, 2), (1, 0), (1, 2), (2, 0), (2, 1), (2, 2)];
        Leds(8, i => (20 - (7.62 * cells[i].Column), (10 * cells[i].Row) - 30), _ => 90);
        Written(
            "grid: {columns: 3, rows: 3, pitch: [7.62, 10], at: [12.38, -20], first: bottom-right, along: columns, skip: [5]}, "
                + "ref: D1, rotation: 90}");
    }

    [Fact]
    public void A_row_is_a_grid_of_one_line()
    {
        Leds(5, i => Turned(16.6 * (i - 2), 3, 90), _ => 0);
        Written("{package: \"2020\", grid: {columns: 1, rows: 5, pitch: 16.6, at: [-3, 0], first: bottom-left}, ref: D1}");
    }

    [Fact]
    public void Packages_that_lie_along_the_boards_axes_in_a_turned_grid_are_told_so()
    {
        Leds(9, i => Turned((9 * (i % 3)) - 9, 9 - (9 * (i / 3)), 20), _ => 0);
        Written("grid: {columns: 3, rows: 3, pitch: 9, turn: 20}, ref: D1, turns: false}");
    }

    [Fact]
    public void Rows_whose_packages_lie_the_other_way_round_are_rows_of_their_own()
    {
        Leds(8, i => (10 * (i < 4 ? i : 7 - i), i < 4 ? 10 : 0), i => i < 4 ? 0 : 180);
        Written(
            "    - {package: \"2020\", grid: {columns: 4, rows: 1, pitch: 10, at: [15, 10]}, ref: D1}",
            "    - {package: \"2020\", grid: {columns: 4, rows: 1, pitch: 10, at: [15, 0], first: top-right}, ref: D5, rotation: 180}");
    }

    [Fact]
    public void A_spiral_is_a_line_for_each_LED_in_the_designators_order()
    {
        Leds(12, i => Round(10 + (1.7 * i), 33.3 * i), i => Math.Round(33.3 * i));
        string[] lines = [.. Text().Split('\n').Where(line => line.Contains("- {package: \"2020\", at: [", StringComparison.Ordinal))];
        Assert.Equal(12, lines.Length);
        Assert.All(lines.Select((line, i) => (line, i)), l => Assert.Contains($"], ref: D{l.i + 1}", l.line, StringComparison.Ordinal));
        Assert.StartsWith("    - {package: \"2020\", at: [9.779, 6.424], ref: D2, rotation: 33}", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_circle_about_another_place_than_the_boards_centre_is_told_place_by_place()
    {
        Leds(6, i => (40 + Round(20, 60 * i).X, Round(20, 60 * i).Y), i => 60 * i);
        string text = Text();
        Assert.Equal(6, text.Split(", at: [").Length - 1);
        Assert.DoesNotContain("circle:", text.Split("pixels:")[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_capacitor_beside_each_LED_is_told_with_it(bool arc)
    {
        Leds(9, i => arc ? Round(45, 12 * i) : Turned((12 * (i % 3)) - 12, 12 - (12 * (i / 3)), 15), i => arc ? 12 * i : 15);
        for (int i = 0; i < 9; i++)
        {
            (double x, double y) = (_board.Parts[i].X, _board.Parts[i].Y);
            (double dx, double dy) = Turned(0.5, 3, arc ? 12 * i : 15);
            _board.Capacitor($"C{i + 4}", x + dx, y + dy, arc ? 12 * i : 15);
        }

        // Capacitors of the same kind elsewhere are none of theirs.
        _board.Capacitor("C1", 80, 3, 0);
        _board.Capacitor("C2", -70, 9, 90);
        Written(", with: {ref: C4, package: \"0402\", at: [0.5, 3]}}", "- {ref: C1, package: \"0402\", side: top, at: [80, 3]}");
    }

    [Fact]
    public void Capacitors_that_one_LED_lacks_stay_parts_in_a_pattern_with_a_gap()
    {
        Leds(12, i => Round(40, 30 * i), i => 30 * i);
        for (int i = 0; i < 11; i++)
        {
            int place = i < 4 ? i : i + 1;
            (double x, double y) = Round(44, 30 * place);
            _board.Capacitor($"C{i + 1}", x, y, (30 * place) + 90);
        }

        Written(
            "pixels: {package: \"2020\", circle: 80, count: 12, from: 0, ref: D1}",
            "- {ref: C1, package: \"0402\", side: top, circle: 88, count: 12, from: 0, skip: [5], rotation: 90}");
    }

    [Fact]
    public void Capacitors_out_of_order_keep_their_names_in_the_comment()
    {
        int[] names = [3, 1, 2, 6, 5, 4];
        Leds(6, i => Round(40, 60 * i), i => 60 * i);
        for (int i = 0; i < 6; i++)
        {
            (double x, double y) = Round(44, 60 * i);
            _board.Capacitor($"C{names[i]}", x, y, 60 * i);
        }

        Written("with: {package: \"0402\", at: [4, 0]}}", "; beside them are C3, C1, C2, C6, C5, C4");
    }

    [Fact]
    public void A_circle_whose_designators_run_in_no_order_keeps_their_names_in_the_comment()
    {
        int[] places = [0, 5, 2, 7, 1, 6, 3, 4];
        Leds(8, i => Round(40, 45 * places[i]), i => 45 * places[i]);
        Written("circle: 80, count: 8, from: 0, ref: circle-1.1}", "; on the board they are D1, D5, D3, D7, D8, D2, D6, D4");
    }

    [Fact]
    public void Designators_filled_up_with_zeros_are_not_counted_on()
    {
        for (int i = 0; i < 3; i++)
        {
            _board.Led($"D0{i + 1}", 10 * i, 20, 0);
        }

        Written("at: [0, 20], ref: D01}", "at: [10, 20], ref: D02}", "at: [20, 20], ref: D03}");
    }

    [Fact]
    public void A_LED_that_lies_off_the_circle_by_more_than_files_round_is_no_part_of_it()
    {
        Leds(12, i => Round(i == 11 ? 40.2 : 40, 30 * i), i => 30 * i);
        Written("circle: 80, count: 12, from: 0, skip: [12], ref: D1}", "at: [34.814, -20.1], ref: D12, rotation: -30}");
    }

    [Fact]
    public void Resistors_in_a_row_are_one_line_and_three_of_them_are_not()
    {
        for (int i = 0; i < 5; i++)
        {
            _board.Resistor($"R{i + 1}", 5 * i, 0, 90);
        }

        for (int i = 0; i < 3; i++)
        {
            _board.Resistor($"R{i + 11}", 5 * i, 20, 90);
        }

        Written(
            "- {ref: R1, package: \"0603\", side: top, grid: {columns: 5, rows: 1, pitch: 5, at: [10, 0]}, rotation: 90}",
            "- {ref: R11, package: \"0603\", side: top, at: [0, 20], rotation: 90}");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    [InlineData(180)]
    [InlineData(-90)]
    public void LEDs_that_shine_along_the_board_look_where_they_do(double turn)
    {
        for (int i = 0; i < 10; i++)
        {
            (double x, double y) = Round(60, 36 * i);
            _board.Add($"D{i + 1}", "LED_4020", "SK6812-SIDE", x, y, (36 * i) + turn);
        }

        string text = Text();
        Assert.Contains("pixels: {package: \"4020-side\", circle: 120, count: 10, from: 0, ref: D1", text, StringComparison.Ordinal);
        BoardReadResult back = BoardFileReader.Read("board.yaml", text, Profiles, []);
        foreach (MadePart made in _board.Parts)
        {
            Pixel pixel = back.File!.Board.PixelCircles[0].Pixels.Single(p => p.Ref == made.Ref);
            Assert.Equal(0, Math.IEEERemainder(made.Turn - pixel.Rotation.Degrees, 360), 3);
        }
    }

    [Fact]
    public void A_row_of_LEDs_without_a_profile_is_no_lamp_that_is_asked_for()
    {
        for (int i = 0; i < 5; i++)
        {
            _board.Add($"LED{i + 1}", "LAMP_HARBOUR", "red", (10 * i) - 20, 0, 0);
        }

        string text = BoardFileWriter.Text(EcadImport.Run(_board.Files(new Draws([])), new ImportOptions { Profiles = Profiles }));
        Assert.Contains("TODO board.pixels: no LED that a profile is made for", text, StringComparison.Ordinal);
        Assert.DoesNotContain("to light them", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_that_all_lie_past_the_edge_leave_a_file_that_can_be_read()
    {
        _board.Resistor("R1", 158, 40, 0);
        _board.Resistor("R2", 158, 60, 0);
        string text = BoardFileWriter.Text(EcadImport.Run(_board.Files(new Draws([])), new ImportOptions { Profiles = Profiles }));
        BoardReadResult back = BoardFileReader.Read("board.yaml", text, Profiles, []);
        Assert.True(back.File is not null, string.Join('\n', back.Diagnostics) + "\n" + text);
        Assert.Contains("R2 lies past the edge", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Capacitors_beside_the_LEDs_of_one_circle_are_not_those_of_the_next()
    {
        Leds(6, i => Round(40, 60 * i), i => 60 * i);
        Leds(6, i => Round(60, 60 * i), i => 60 * i);
        for (int i = 0; i < 6; i++)
        {
            _board.Capacitor($"C{i + 1}", Round(63, 60 * i).X, Round(63, 60 * i).Y, 60 * i);
        }

        Written(
            "    - {package: \"2020\", circle: 80, count: 6, from: 0, ref: D1}",
            "    - {package: \"2020\", circle: 120, count: 6, from: 0, ref: D7, with: {ref: C1, package: \"0402\", at: [3, 0]}}");
    }

    [Fact]
    public void A_long_grid_in_mils_is_found_though_its_first_step_looks_elsewhere()
    {
        var board = new PatternBoard(0, 0, 0.0254, 0.1);
        for (int i = 0; i < 120; i++)
        {
            (double x, double y) = Turned((5 * (i % 30)) - 72.5, 7.5 - (5 * (i / 30)), 17.3);
            board.Led($"D{i + 1}", x, y, 17.3);
        }

        string text = BoardFileWriter.Text(EcadImport.Run(board.Files(new Draws([])), new ImportOptions { Profiles = Profiles }));
        Assert.Contains("grid: {columns: 30, rows: 4, pitch: 5, turn: 17.3}, ref: D1}", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_grid_that_begins_as_a_circle_would_is_one_grid()
    {
        Leds(8, i => (i % 4 is 0 or 3 ? -5 : 5, 5 - (10 * (i / 2))), _ => 0);
        Written("pixels: {package: \"2020\", grid: {columns: 2, rows: 4, pitch: 10, at: [0, -10], snake: true}, ref: D1}");
    }

    private void Leds(int count, Func<int, (double X, double Y)> place, Func<int, double> turn)
    {
        int first = _board.Parts.Count + 1;
        for (int i = 0; i < count; i++)
        {
            _board.Led($"D{first + i}", place(i).X, place(i).Y, turn(i));
        }
    }

    private void Written(params string[] parts)
    {
        string text = Text();
        int at = 0;
        foreach (string part in parts)
        {
            int found = text.IndexOf(part, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"'{part}' is not there, or not in its order:\n{text}");
            at = found;
        }
    }

    private string Text()
    {
        ImportResult result = EcadImport.Run(_board.Files(new Draws([])), new ImportOptions { Profiles = Profiles });
        string text = BoardFileWriter.Text(result);
        BoardReadResult back = BoardFileReader.Read("board.yaml", text, Profiles, []);
        Assert.True(back.File is not null, string.Join('\n', back.Diagnostics) + "\n" + text);
        Assert.Equal(_board.Parts.Count(p => p.Ref[0] == 'D'), back.File!.Board.PixelCircles.Sum(c => c.Pixels.Length));
        Assert.Equal(_board.Parts.Count(p => p.Ref[0] != 'D'), back.File.Board.Parts.Length);
        return text;
    }

    private static (double X, double Y) Round(double radius, double degrees) => Turned(radius, 0, degrees);

    private static (double X, double Y) Turned(double x, double y, double degrees)
    {
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        return ((x * cos) - (y * sin), (x * sin) + (y * cos));
    }
}
