using ShellForge.Testing;

namespace ShellForge.Import.Tests;

/// <summary>Puts patterns onto a made-up board, LEDs and what stands beside them, by sines and cosines of its own.</summary>
internal sealed class PatternSource(PatternBoard board, Draws draws)
{
    private int _led = 1;
    private int _capacitor = 1;

    /// <summary>How many patterns and single LEDs were put in.</summary>
    public int Entries { get; private set; }

    /// <summary>How many kinds of parts beside LEDs were put in.</summary>
    public int Kinds { get; private set; }

    /// <summary>Circles and arcs, one outside the other.</summary>
    public void Rings(int count, double innermost)
    {
        for (int i = 0; i < count; i++)
        {
            double radius = innermost + (24 * i) + Any(8);
            bool arc = draws.Next(2) == 1;
            int places = draws.Next(6, 1 + (int)Math.Min(26, 2 * Math.PI * radius / (arc ? 10.5 : 6)));
            double widest = 300.0 / places;
            double step = arc ? draws.Pick(Math.Floor(widest), widest, Math.Round(widest * 0.7, 1)) : 360.0 / places;
            int[] skip = places < 7 ? [] : draws.Pick<int[]>([], [], [3], [2, 5]);
            double from = Any(360);
            int way = draws.Pick(1, -1);
            Lay(Enumerable.Range(0, places).Where(place => !skip.Contains(place)).Select(place =>
            {
                double direction = from + (way * step * place);
                (double px, double py) = Turned(radius, 0, direction);
                return (px, py, direction);
            }));
        }
    }

    /// <summary>A grid, or one row or column, about a middle.</summary>
    public void Grid(double mx, double my)
    {
        int columns = draws.Next(1, 7);
        int rows = columns == 1 ? draws.Next(3, 7) : draws.Next(columns < 3 ? 3 : 1, 6);
        double across = Pitch();
        double down = draws.Next(2) == 0 ? across : Pitch();
        double turn = draws.Next(3) == 0 ? 0 : Any(90) - 45;
        (bool right, bool bottom, bool byColumns, bool snake) =
            (draws.Next(2) == 1, draws.Next(2) == 1, draws.Next(2) == 1, draws.Next(2) == 1);
        int[] skip = Math.Min(columns, rows) < 3 ? [] : draws.Pick<int[]>([], [], [4], [1, 6]);
        int line = byColumns ? rows : columns;
        (mx, my) = (mx + Any(2), my + Any(2));
        Lay(Enumerable.Range(0, columns * rows).Where(place => !skip.Contains(place)).Select(place =>
        {
            (int slow, int fast) = (place / line, place % line);
            fast = snake && slow % 2 == 1 ? line - 1 - fast : fast;
            (int column, int row) = byColumns ? (slow, fast) : (fast, slow);
            column = right ? columns - 1 - column : column;
            row = bottom ? rows - 1 - row : row;
            (double px, double py) =
                Turned(across * (column - ((columns - 1) / 2.0)), down * (((rows - 1) / 2.0) - row), turn);
            return (mx + px, my + py, turn);
        }));
    }

    /// <summary>LEDs that stand alone: one in the middle, or along a spiral.</summary>
    public void Spiral(int count)
    {
        for (int i = 0; i < count; i++)
        {
            (double px, double py) = Turned(count == 1 ? 0 : 6 + (2.3 * i), 0, 41.3 * i);
            board.Led($"D{_led++}", px, py, draws.Pick(0, 45, 90));
            Entries++;
        }
    }

    private void Lay(IEnumerable<(double X, double Y, double Direction)> places)
    {
        bool follows = draws.Next(2) == 0;
        double turn = draws.Pick(0, 90, -45, 17, 180);
        (double X, double Y)[] offsets = draws.Pick<(double, double)[]>([], [(2.4, 0)], [(-1.8, 1.3)], [(0, 2.2), (0.3, -2.35)]);
        int first = _capacitor;
        (double X, double Y, double Direction)[] all = [.. places];
        foreach ((double px, double py, double direction) in all)
        {
            double frame = follows ? direction : 0;
            board.Led($"D{_led++}", px, py, frame + turn);
            for (int i = 0; i < offsets.Length; i++)
            {
                (double ox, double oy) = Turned(offsets[i].X, offsets[i].Y, frame);
                board.Capacitor($"C{first + (i * all.Length)}", px + ox, py + oy, frame + 90);
            }

            first++;
        }

        _capacitor += offsets.Length * all.Length;
        Kinds += offsets.Length;
        Entries++;
    }

    private double Any(double most) =>
        draws.Pick((double)draws.Next((int)most), draws.Next((int)(most * 2)) / 2.0, draws.NextDouble() * most);

    private double Pitch() => draws.Pick(5 + draws.Next(4), 5 + (draws.Next(80) / 20.0), 7.62);

    private static (double X, double Y) Turned(double x, double y, double degrees)
    {
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        return ((x * cos) - (y * sin), (x * sin) + (y * cos));
    }
}
