using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Physics.Light;

/// <summary>
/// The inner face of a diffuser as a grid of square cells: flat, or a band of a cylinder unrolled. Row 0 is the lowest. Cells that bezel
/// covers are closed: no light is counted there.
/// </summary>
public sealed class ReceiverGrid
{
    private readonly Dictionary<int, SheetSide[]> _sides = [];
    private readonly Sheet _sheet;

    private ReceiverGrid(in Cells cells, Sheet sheet, bool[] open, bool[]? holes = null)
    {
        (Columns, Rows, Left, Bottom, Step, Wraps) = cells;
        _sheet = sheet;
        Open = open;
        Holes = holes;
    }

    // By how much each cell of a stepped sheet lies nearer to the LEDs, and the most of it, mm.
    private ImmutableArray<float> Nearer { get; init; } = [];

    private double Nearest { get; init; }

    // The cells of a grid, as its properties tell them.
    private readonly record struct Cells(int Columns, int Rows, double Left, double Bottom, double Step, bool Wraps);

    // The face in space: its place and normal at unrolled coordinates, and where a ray meets it.
    private sealed record Sheet(
        Func<double, double, (Point3 At, Point3 Normal)> Place, Func<Point3, Point3, (double Distance, Point2 At)> Meeting);

    /// <summary>Cells in a row.</summary>
    public int Columns { get; }

    /// <summary>Rows.</summary>
    public int Rows { get; }

    /// <summary>First coordinate of the left edge of column 0, mm.</summary>
    public double Left { get; }

    /// <summary>Second coordinate of the lower edge of row 0, mm.</summary>
    public double Bottom { get; }

    /// <summary>Side of a cell, mm.</summary>
    public double Step { get; }

    /// <summary>Whether the last column neighbours the first: a band all round.</summary>
    public bool Wraps { get; }

    /// <summary>Which cells light leaves through, row by row.</summary>
    internal bool[] Open { get; }

    // Which cells are holes in the sheet; null for none.
    internal bool[]? Holes { get; }

    /// <summary>Cells in all.</summary>
    public int Count => Columns * Rows;

    /// <summary>Area of the open cells, mm2.</summary>
    public double OpenArea => Open.Count(open => open) * Step * Step;

    /// <summary>Whether a cell is open.</summary>
    public bool IsOpen(int index) => Open[index];

    /// <summary>Whether a cell is a hole in the sheet: light leaves there as it comes, and none is counted.</summary>
    public bool IsHole(int index) => Holes is { } holes && holes[index];

    /// <summary>A sheet square to the z axis that faces down to the LEDs.</summary>
    /// <param name="box">What of it is looked at, mm.</param>
    /// <param name="z">Its inner face, mm.</param>
    /// <param name="step">Side of a cell, mm, above 0.</param>
    /// <param name="open">Whether light leaves at a place.</param>
    public static ReceiverGrid Flat(Box2 box, double z, double step, Func<Point2, bool> open)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step);
        int columns = Math.Max(1, (int)Math.Ceiling((box.Max.X - box.Min.X) / step));
        int rows = Math.Max(1, (int)Math.Ceiling((box.Max.Y - box.Min.Y) / step));
        var sheet = new Sheet((u, v) => (new Point3(u, v, z), new Point3(0, 0, -1)), (from, along) =>
        {
            double distance = along.Z == 0 ? -1 : (z - from.Z) / along.Z;
            return (distance, (from + (distance * along)).XY);
        });
        return Made(new Cells(columns, rows, box.Min.X, box.Min.Y, step, Wraps: false), sheet, open);
    }

    /// <summary>A sheet square to the z axis whose lit window is a region.</summary>
    /// <param name="window">Where light leaves; not empty.</param>
    /// <param name="z">Its inner face, mm.</param>
    /// <param name="step">Side of a cell, mm, above 0.</param>
    public static ReceiverGrid Flat(Region window, double z, double step)
    {
        Box2 box = window.Bounds;
        ReceiverGrid grid = Flat(box, z, step, _ => false);
        var crossings = new List<double>();
        for (int row = 0; row < grid.Rows; row++)
        {
            // Even-odd along the row: a cell is open where its middle lies inside.
            double y = grid.Bottom + ((row + 0.5) * step);
            crossings.Clear();
            foreach (ImmutableArray<Point2> loop in window.Loops)
            {
                for (int i = 0; i < loop.Length; i++)
                {
                    Point2 a = loop[i];
                    Point2 b = loop[(i + 1) % loop.Length];
                    if (a.Y > y != b.Y > y)
                    {
                        crossings.Add(a.X + ((y - a.Y) / (b.Y - a.Y) * (b.X - a.X)));
                    }
                }
            }

            crossings.Sort();
            for (int i = 0; i + 1 < crossings.Count; i += 2)
            {
                int from = Math.Max(0, (int)Math.Ceiling(((crossings[i] - grid.Left) / step) - 0.5));
                int to = Math.Min(grid.Columns - 1, (int)Math.Floor(((crossings[i + 1] - grid.Left) / step) - 0.5));
                for (int column = from; column <= to; column++)
                {
                    grid.Open[(row * grid.Columns) + column] = true;
                }
            }
        }

        return grid;
    }

    /// <summary>A band round the z axis, unrolled: the first coordinate is the arc from +x counter-clockwise, the second is z.</summary>
    /// <param name="radius">Of the face that is lit, mm.</param>
    /// <param name="bottom">Lower end, mm.</param>
    /// <param name="top">Upper end, mm.</param>
    /// <param name="step">Side of a cell, mm, above 0; it is shortened so that whole cells go round.</param>
    /// <param name="litFromInside">Whether the LEDs are nearer to the axis than the band.</param>
    /// <param name="open">Whether light leaves at a place of the unrolled band.</param>
    public static ReceiverGrid Band(double radius, double bottom, double top, double step, bool litFromInside, Func<Point2, bool> open)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radius);
        double around = 2 * Math.PI * radius;
        int columns = Math.Max(8, (int)Math.Ceiling(around / step));
        double side = around / columns;
        int rows = Math.Max(1, (int)Math.Ceiling((top - bottom) / side));
        double sign = litFromInside ? -1 : 1;
        var sheet = new Sheet((u, v) =>
        {
            Angle at = Angle.FromDegrees(u / around * 360);
            return (new Point3(radius * at.Cos, radius * at.Sin, v), new Point3(sign * at.Cos, sign * at.Sin, 0));
        }, (from, along) =>
        {
            double distance = ToCylinder(from.XY, along.XY, radius);
            Point3 hit = from + (distance * along);
            return (distance, new Point2(Angle.Of(hit.XY).Normalized.Degrees / 360 * around, hit.Z));
        });
        return Made(new Cells(columns, rows, 0, bottom, side, Wraps: true), sheet, open);
    }

    /// <summary>The same cells of a sheet with holes through its lit part.</summary>
    /// <param name="isHole">Whether a place, in unrolled coordinates, lies in a hole.</param>
    public ReceiverGrid WithHoles(Func<Point2, bool> isHole)
    {
        bool[] holes = [.. Enumerable.Range(0, Count).Select(i => IsHole(i) || (Open[i] && isHole(Middle(i))))];
        return new ReceiverGrid(
            new Cells(Columns, Rows, Left, Bottom, Step, Wraps), _sheet, [.. Open.Select((open, i) => open && !holes[i])], holes);
    }

    /// <summary>
    /// The same cells of a flat sheet whose face lies nearer to the LEDs in places, with the upright sides of such steps.
    /// </summary>
    /// <param name="nearer">By how much at each cell, mm.</param>
    public ReceiverGrid Stepped(ImmutableArray<float> nearer)
    {
        var sheet = new Sheet(
            (u, v) =>
            {
                (Point3 at, Point3 normal) = _sheet.Place(u, v);
                return (at + (nearer[CellAt(new Point2(u, v))] * normal), normal);
            },
            _sheet.Meeting);
        var stepped = new ReceiverGrid(new Cells(Columns, Rows, Left, Bottom, Step, Wraps), sheet, Open, Holes)
        {
            Nearer = Wraps ? [] : nearer,
            Nearest = Wraps ? 0 : nearer.Max(),
        };
        for (int i = 0; i < Count && !Wraps; i++)
        {
            if (nearer[i] > 0 && Open[i])
            {
                stepped._sides[i] = [.. SidesOf(i, nearer)];
            }
        }

        return stepped;
    }

    /// <summary>
    /// The upright sides of a step of the sheet that a cell ends with: what falls on them goes into the sheet there. Summed over the cells
    /// of a grid they take in what a smooth side of any direction does, each cell side being square to an axis.
    /// </summary>
    internal SheetSide[] Sides(int cell) => _sides.TryGetValue(cell, out SheetSide[]? found) ? found : [];

    private IEnumerable<SheetSide> SidesOf(int cell, ImmutableArray<float> nearer)
    {
        (int column, int row) = (cell % Columns, cell / Columns);
        Point2 middle = Middle(cell);
        foreach ((int x, int y) in ((int, int)[])[(1, 0), (-1, 0), (0, 1), (0, -1)])
        {
            if (column + x < 0 || column + x >= Columns || row + y < 0 || row + y >= Rows)
            {
                continue;
            }

            int beside = ((row + y) * Columns) + column + x;
            double high = nearer[cell] - nearer[beside];
            if (high > 0 && Open[beside])
            {
                (Point3 at, Point3 normal) = _sheet.Place(middle.X + (x * Step / 2), middle.Y + (y * Step / 2));
                yield return new SheetSide(at + ((nearer[beside] + (high / 2)) * normal), new Point3(x, y, 0), high / Step);
            }
        }
    }

    /// <summary>
    /// How far along a ray from a flat sheet the upright side of a step of it stands, mm, and the cell that ends with it; infinity and -1
    /// for none.
    /// </summary>
    internal (double Distance, int Cell) StepAhead(Point3 from, Point3 along)
    {
        if (Nearest == 0 || along.Z >= 0)
        {
            return (double.PositiveInfinity, -1);
        }

        double depth = _sheet.Meeting(from, new Point3(0, 0, 1)).Distance;
        for (double far = Step / 2; depth - (far * along.Z) < Nearest; far += Step / 2)
        {
            if (Inside(from.XY + (far * along.XY)) is not int cell)
            {
                break;
            }

            if (Open[cell] && Nearer[cell] > depth - (far * along.Z))
            {
                return (far, cell);
            }
        }

        return (double.PositiveInfinity, -1);
    }

    /// <summary>The cell of a place in unrolled coordinates, the nearest one for a place beside the grid.</summary>
    public int CellAt(Point2 at) =>
        (Math.Clamp((int)((at.Y - Bottom) / Step), 0, Rows - 1) * Columns) + Math.Clamp((int)((at.X - Left) / Step), 0, Columns - 1);

    /// <summary>
    /// The same sheet in cells of a fraction of the side, open only where one of this grid is and where the place counts.
    /// </summary>
    /// <param name="parts">Cells into which the side of one is parted, 1 or more.</param>
    /// <param name="counts">Whether a place, in unrolled coordinates, is looked at.</param>
    public ReceiverGrid Finer(int parts, Func<Point2, bool> counts) => Made(
        new Cells(parts * Columns, parts * Rows, Left, Bottom, Step / parts, Wraps), _sheet, at => Open[CellAt(at)] && counts(at));

    /// <summary>The place in space of unrolled coordinates, and the direction it is lit from.</summary>
    public (Point3 At, Point3 Normal) At(double u, double v) => _sheet.Place(u, v);

    /// <summary>Whether an open cell has one beside it, along a row or a column, that is not, or ends the grid.</summary>
    public bool IsBesideRim(int index)
    {
        int column = index % Columns;
        int row = index / Columns;
        bool IsShut(int c, int r) => r < 0 || r >= Rows || (!Wraps && (c < 0 || c >= Columns))
            || !Open[(r * Columns) + ((c + Columns) % Columns)];
        return Open[index] && (IsShut(column - 1, row) || IsShut(column + 1, row) || IsShut(column, row - 1) || IsShut(column, row + 1));
    }

    /// <summary>Middle of a cell in unrolled coordinates.</summary>
    public Point2 Middle(int index) => new(
        Left + (((index % Columns) + 0.5) * Step), Bottom + (((index / Columns) + 0.5) * Step));

    /// <summary>How far along a ray its light leaves through an open cell, mm; infinity when it doesn't.</summary>
    public double LeavesAfter(Point3 from, Point3 along) => CellAhead(from, along, 1).Distance;

    /// <summary>Whether a ray goes through a hole in the sheet.</summary>
    public bool LeavesByHole(Point3 from, Point3 along)
    {
        (double distance, Point2 at) = _sheet.Meeting(from, along);
        return Holes is { } holes && distance > 0 && Inside(at) is int cell && holes[cell];
    }

    /// <summary>How far along a ray its light leaves through an open cell, mm, and that cell; infinity and -1 when it doesn't.</summary>
    /// <param name="from">Where the ray starts, mm.</param>
    /// <param name="along">Its direction, of length 1.</param>
    /// <param name="sectors">Equal sectors about the z axis of which this grid has the first, in the middle of +x; 1 when it has all there
    /// is.</param>
    internal (double Distance, int Cell) CellAhead(Point3 from, Point3 along, int sectors)
    {
        (double distance, Point2 at) = _sheet.Meeting(from, along);
        if (!(distance > 0))
        {
            return (double.PositiveInfinity, -1);
        }

        at = sectors > 1 && !Wraps ? at.Turned(ToFirstSector(at, sectors)) : at;
        return Inside(at) is int cell && Open[cell] ? (distance, cell) : (double.PositiveInfinity, -1);
    }

    // The cell of a place; null beside the grid.
    private int? Inside(Point2 at)
    {
        int column = (int)Math.Floor((at.X - Left) / Step);
        int row = (int)Math.Floor((at.Y - Bottom) / Step);
        return column >= 0 && row >= 0 && column < Columns && row < Rows ? (row * Columns) + column : null;
    }

    /// <summary>The turn about the z axis that brings a place into the first of equal sectors, in the middle of +x.</summary>
    internal static Angle ToFirstSector(Point2 at, int sectors)
    {
        double degrees = at.Length > 0 ? Angle.Of(at).Degrees : 0;
        return Angle.FromDegrees(-Math.Floor((degrees * sectors / 360) + 0.5) * 360 / sectors);
    }

    /// <summary>
    /// A value between the middles of cells, from the open ones of the four around it; NaN where none of them is open.
    /// </summary>
    public double Sample(ReadOnlySpan<float> values, double u, double v)
    {
        double x = ((u - Left) / Step) - 0.5;
        double y = ((v - Bottom) / Step) - 0.5;
        int column = (int)Math.Floor(x);
        int row = (int)Math.Floor(y);
        double sum = 0;
        double weights = 0;
        for (int k = 0; k < 4; k++)
        {
            int c = column + (k & 1);
            int r = row + (k >> 1);
            c = Wraps ? ((c % Columns) + Columns) % Columns : c;
            if (c < 0 || r < 0 || c >= Columns || r >= Rows || !Open[(r * Columns) + c])
            {
                continue;
            }

            double weight = ((k & 1) == 0 ? 1 - (x - column) : x - column) * ((k >> 1) == 0 ? 1 - (y - row) : y - row);
            sum += weight * values[(r * Columns) + c];
            weights += weight;
        }

        return weights > 0 ? sum / weights : double.NaN;
    }

    private static ReceiverGrid Made(in Cells cells, Sheet sheet, Func<Point2, bool> open)
    {
        (int columns, int rows, double left, double bottom, double step, _) = cells;
        bool[] opened = new bool[columns * rows];
        for (int i = 0; i < opened.Length; i++)
        {
            opened[i] = open(new Point2(left + (((i % columns) + 0.5) * step), bottom + (((i / columns) + 0.5) * step)));
        }

        return new ReceiverGrid(cells, sheet, opened);
    }

    // Nearest place ahead on a circle about the origin; negative when there is none.
    private static double ToCylinder(Point2 from, Point2 along, double radius)
    {
        double a = Point2.Dot(along, along);
        double b = Point2.Dot(from, along);
        double c = Point2.Dot(from, from) - (radius * radius);
        double root = (b * b) - (a * c);
        if (a == 0 || root < 0)
        {
            return -1;
        }

        double near = (-b - Math.Sqrt(root)) / a;
        return near > 0 ? near : (-b + Math.Sqrt(root)) / a;
    }
}

/// <summary>An upright side of a step in a sheet's face.</summary>
/// <param name="At">Its middle, mm.</param>
/// <param name="Normal">Where it looks, of length 1.</param>
/// <param name="Share">Its area over that of a cell.</param>
internal readonly record struct SheetSide(Point3 At, Point3 Normal, double Share);
