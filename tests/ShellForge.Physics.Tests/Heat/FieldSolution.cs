// One method from grid to answer, which shares no line with the model that it judges: it reads better whole.
namespace ShellForge.Physics.Tests.Heat;

/// <summary>
/// A round housing for the field solution, mm and W. Radii from the axis, heights from the outer floor; 0 bore for a disc.
/// </summary>
internal sealed record FieldCase
{
    public required double BoardOuter { get; init; }

    public double BoardInner { get; init; }

    public double BoardThickness { get; init; } = 1.6;

    public double SideGap { get; init; } = 0.5;

    public double BoreGap { get; init; } = 0.55;

    public double Wall { get; init; } = 1.67;

    public double Floor { get; init; } = 2;

    public required double Below { get; init; }

    public required double Above { get; init; }

    public double FrontThickness { get; init; } = 1.6;

    // A thinner window between two radii; none where both are 0.
    public double WindowFrom { get; init; }

    public double WindowTo { get; init; }

    public double WindowThickness { get; init; } = 0.8;

    // Rims of the baffle (inner radius, thickness), from the board to the front, and the share of walls across between the first two.
    public (double Radius, double Thickness)[] Rims { get; init; } = [];

    public double CellShare { get; init; }

    // Heat on the board: a ring of it each.
    public required (double From, double To, double Watts)[] Sources { get; init; }

    public double Plastic { get; init; } = 0.22;

    public double Ambient { get; init; } = 30;

    public double HeatWatts => Sources.Sum(source => source.Watts);
}

/// <summary>
/// The temperature of a round housing by finite volumes on a grid of radius and height, as an oracle for the model of heat: still air that
/// conducts in every gap, radiation in the rooms by rays, the whole outside but the floor in free air. Shares nothing with the model.
/// </summary>
internal sealed class FieldSolution
{
    private const double Air = 0.027;
    private const double BoardAlong = 10;
    private const double BoardThrough = 0.4;
    private const double Emissivity = 0.9;
    private const double Sigma = 5.67e-8;
    private const int RaysPerFace = 600;

    private enum Stuff
    {
        Air,
        Plastic,
        Board,
        Outside,
    }

    private readonly FieldCase _housing;
    private readonly double[] _r;
    private readonly double[] _z;
    private readonly int _columns;
    private readonly int _rows;
    private readonly double _frontZ;
    private readonly double _frontEnd;
    private readonly double _wallInner;
    private readonly double _wallOuter;
    private readonly double _boreOuter;
    private readonly double _boreInner;
    private readonly Stuff[] _stuff;
    private readonly double[] _t;
    private readonly List<(int Cell, int Normal, bool Vertical, double At, double Low, double High, double Area)> _faces = [];

    public FieldSolution(FieldCase housing, double cell = 1.0)
    {
        _housing = housing;
        _wallInner = housing.BoardOuter + housing.SideGap;
        _wallOuter = _wallInner + housing.Wall;
        _boreOuter = housing.BoardInner > 0 ? housing.BoardInner - housing.BoreGap : 0;
        _boreInner = housing.BoardInner > 0 ? _boreOuter - housing.Wall : 0;
        double boardZ = housing.Floor + housing.Below;
        _frontZ = boardZ + housing.BoardThickness + housing.Above;
        _frontEnd = _frontZ + housing.FrontThickness;
        double inner = _frontEnd - housing.WindowThickness;
        IEnumerable<double> radii =
        [
            _boreInner, _boreOuter, housing.BoardInner, housing.BoardOuter, _wallInner, _wallOuter,
            .. housing.Rims.SelectMany(rim => new[] { rim.Radius, rim.Radius + rim.Thickness }),
            .. housing.WindowTo > 0 ? new[] { housing.WindowFrom, housing.WindowTo } : [],
        ];
        _r = Edges(radii, cell);
        _z = Edges([0, housing.Floor, boardZ, boardZ + housing.BoardThickness, _frontZ, .. housing.WindowTo > 0 ? new[] { inner } : [],
            _frontEnd], cell);
        _columns = _r.Length - 1;
        _rows = _z.Length - 1;
        _stuff = new Stuff[_columns * _rows];
        for (int i = 0; i < _columns; i++)
        {
            for (int j = 0; j < _rows; j++)
            {
                _stuff[(i * _rows) + j] = At((_r[i] + _r[i + 1]) / 2, (_z[j] + _z[j + 1]) / 2, boardZ);
            }
        }

        _t = [.. _stuff.Select(_ => housing.Ambient + 10)];
        Solve();
    }

    public double Board => Mean(Stuff.Board, (_, _) => true);

    public double BoardWarmest => Enumerable.Range(0, _t.Length).Where(c => _stuff[c] == Stuff.Board).Max(c => _t[c]);

    public double FrontOutside => Mean(Stuff.Plastic, (_, j) => j == _rows - 1);

    public double Floor =>
        Mean(Stuff.Plastic,
            (i, j) => _z[j + 1] <= _housing.Floor + 1e-9 && _z[j + 1] > _housing.Floor - 1e-9 && _r[i] >= _boreOuter - 1e-9
                && _r[i + 1] <= _wallInner + 1e-9);

    public double SideOutside => Mean(Stuff.Plastic, (i, _) => i == _columns - 1);

    // What leaves into the air, W: as much as is made when the solution is one.
    public double Leaving { get; private set; }

    private static double[] Edges(IEnumerable<double> breaks, double cell)
    {
        double[] at = [.. breaks.Select(b => Math.Round(b, 4)).Distinct().Order()];
        var edges = new List<double> { at[0] };
        for (int k = 1; k < at.Length; k++)
        {
            int count = Math.Max(2, (int)Math.Ceiling((at[k] - at[k - 1]) / cell));
            edges.AddRange(Enumerable.Range(1, count).Select(m => at[k - 1] + ((at[k] - at[k - 1]) * m / count)));
        }

        return [.. edges];
    }

    private Stuff At(double radius, double height, double boardZ)
    {
        if (radius > _wallInner || radius < _boreOuter || height < _housing.Floor)
        {
            return Stuff.Plastic;
        }

        if (height > _frontZ)
        {
            bool window = radius > _housing.WindowFrom && radius < _housing.WindowTo;
            return !window || height > _frontEnd - _housing.WindowThickness ? Stuff.Plastic : Stuff.Air;
        }

        bool board = radius > _housing.BoardInner && radius < _housing.BoardOuter;
        return height > boardZ && height < boardZ + _housing.BoardThickness ? board ? Stuff.Board : Stuff.Air
            : height > boardZ && _housing.Rims.Any(rim => radius > rim.Radius && radius < rim.Radius + rim.Thickness) ? Stuff.Plastic
                : Stuff.Air;
    }

    // Walls across between two rims conduct along z beside the air.
    private (double Along, double Up) Conductivity(int i, int j)
    {
        Stuff what = _stuff[(i * _rows) + j];
        double middle = (_r[i] + _r[i + 1]) / 2;
        bool inCells = what == Stuff.Air && _housing.CellShare > 0 && middle > _housing.Rims[0].Radius && middle < _housing.Rims[^1].Radius
            && _z[j] >= _housing.Floor + _housing.Below + _housing.BoardThickness - 1e-9;
        double share = inCells ? _housing.CellShare : 0;
        double mixed = Air + (share * (_housing.Plastic - Air));
        return what switch
        {
            Stuff.Board => (BoardAlong, BoardThrough),
            Stuff.Plastic => (_housing.Plastic, _housing.Plastic),
            _ => (mixed, mixed),
        };
    }

    private double Mean(Stuff what, Func<int, int, bool> which)
    {
        double sum = 0;
        double weight = 0;
        for (int c = 0; c < _t.Length; c++)
        {
            int i = c / _rows;
            if (_stuff[c] == what && which(i, c % _rows))
            {
                double volume = ((_r[i + 1] * _r[i + 1]) - (_r[i] * _r[i])) * (_z[(c % _rows) + 1] - _z[c % _rows]);
                sum += _t[c] * volume;
                weight += volume;
            }
        }

        return sum / weight;
    }

    private void Solve()
    {
        var links = new List<(int Other, double G)>[_t.Length];
        for (int c = 0; c < _t.Length; c++)
        {
            links[c] = [];
        }

        double[] heat = new double[_t.Length];
        for (int i = 0; i < _columns; i++)
        {
            double ring = Math.PI * ((_r[i + 1] * _r[i + 1]) - (_r[i] * _r[i])) * 1e-6;
            double half = (_r[i + 1] - _r[i]) / 2000;
            for (int j = 0; j < _rows; j++)
            {
                int c = (i * _rows) + j;
                double height = (_z[j + 1] - _z[j]) / 1000;
                (double along, double up) = Conductivity(i, j);
                if (i + 1 < _columns)
                {
                    double area = 2 * Math.PI * _r[i + 1] / 1000 * height;
                    Join(c, c + _rows, area / ((half / along) + ((_r[i + 2] - _r[i + 1]) / 2000 / Conductivity(i + 1, j).Along)));
                    Face(c, c + _rows, true, _r[i + 1], _z[j], _z[j + 1], area);
                }

                if (j + 1 < _rows)
                {
                    Join(c, c + 1, ring / ((height / 2 / up) + ((_z[j + 2] - _z[j + 1]) / 2000 / Conductivity(i, j + 1).Up)));
                    Face(c, c + 1, false, _z[j + 1], _r[i], _r[i + 1], ring);
                }
            }
        }

        Spread(heat);
        (int A, int B, double Area)[] seen = Seen();
        double step = double.PositiveInfinity;
        for (int round = 0; round < 60 && step > 1e-4; round++)
        {
            double[] before = [.. _t];
            var more =
                new List<(int A, int B, double G)>(seen.Select(pair => (pair.A, pair.B, pair.Area * Radiated(_t[pair.A], _t[pair.B]))));
            Sweep(links, more, heat);
            step = _t.Zip(before, (a, b) => Math.Abs(a - b)).Max();
        }

        Leaving = Outside().Sum(film => film.G * (_t[film.Cell] - _housing.Ambient));

        void Join(int a, int b, double g)
        {
            links[a].Add((b, g));
            links[b].Add((a, g));
        }

        void Face(int a, int b, bool vertical, double at, double low, double high, double area)
        {
            bool airThere = _stuff[b] == Stuff.Air;
            if ((_stuff[a] == Stuff.Air) != airThere)
            {
                _faces.Add((airThere ? a : b, airThere ? 1 : -1, vertical, at, low, high, area));
            }
        }
    }

    private void Spread(double[] heat)
    {
        foreach ((double from, double to, double watts) in _housing.Sources)
        {
            (int Cell, double Weight)[] under =
            [
                .. Enumerable.Range(0, _t.Length).Where(c => _stuff[c] == Stuff.Board).Select(c =>
                {
                    double low = Math.Max(from, _r[c / _rows]);
                    double high = Math.Min(to, _r[(c / _rows) + 1]);
                    return (c, high <= low ? 0 : ((high * high) - (low * low)) * (_z[(c % _rows) + 1] - _z[c % _rows]));
                }),
            ];
            double all = under.Sum(each => each.Weight);
            foreach ((int cell, double weight) in under)
            {
                heat[cell] += watts * weight / all;
            }
        }
    }

    // Successive over-relaxation at fixed coefficients.
    private void Sweep(List<(int Other, double G)>[] links, List<(int A, int B, double G)> more, double[] heat)
    {
        double[] own = new double[_t.Length];
        double[] source = [.. heat];
        var all = new List<(int Other, double G)>[_t.Length];
        for (int c = 0; c < _t.Length; c++)
        {
            all[c] = [.. links[c]];
        }

        foreach ((int a, int b, double g) in more)
        {
            all[a].Add((b, g));
            all[b].Add((a, g));
        }

        foreach ((int cell, double g) in Outside())
        {
            own[cell] += g;
            source[cell] += g * _housing.Ambient;
        }

        (int Other, double G)[][] rowsOf = [.. all.Select(list => list.ToArray())];
        double[] sum = [.. rowsOf.Select((list, c) => own[c] + list.Sum(link => link.G))];
        const double over = 1.9;
        for (int sweep = 0; sweep < 4000; sweep++)
        {
            double moved = 0;
            for (int c = 0; c < _t.Length; c++)
            {
                double flow = source[c];
                foreach ((int other, double g) in rowsOf[c])
                {
                    flow += g * _t[other];
                }

                double step = over * ((flow / sum[c]) - _t[c]);
                _t[c] += step;
                moved = Math.Max(moved, Math.Abs(step));
            }

            if (moved < 1e-6)
            {
                break;
            }
        }
    }

    // Outer faces: half a cell of plastic, then Churchill and Chu's film and radiation.
    private IEnumerable<(int Cell, double G)> Outside()
    {
        for (int c = 0; c < _t.Length; c++)
        {
            int i = c / _rows;
            int j = c % _rows;
            double height = (_z[j + 1] - _z[j]) / 1000;
            if (j == _rows - 1)
            {
                double area = Math.PI * ((_r[i + 1] * _r[i + 1]) - (_r[i] * _r[i])) * 1e-6;
                yield return (c, InSeries(height, area, Film(_t[c]) + (Emissivity * Radiated(_t[c], _housing.Ambient))));
            }

            if (i == _columns - 1)
            {
                double area = 2 * Math.PI * _r[i + 1] / 1000 * height;
                yield return (c,
                    InSeries((_r[i + 1] - _r[i]) / 1000, area, Film(_t[c]) + (Emissivity * Radiated(_t[c], _housing.Ambient))));
            }

            if (i == 0 && _boreInner > 0)
            {
                // The bore's wall radiates through its mouth only: the other end is closed by the wall that the housing hangs on.
                double area = 2 * Math.PI * _r[0] / 1000 * height;
                double mouth = _r[0] / 2 / _frontEnd;
                double through = 1 / ((1 / Emissivity) - 1 + (1 / Math.Min(1, mouth)));
                yield return (c, InSeries((_r[1] - _r[0]) / 1000, area, Film(_t[c]) + (through * Radiated(_t[c], _housing.Ambient))));
            }
        }

        double InSeries(double thickness, double area, double h) => area / ((thickness / 2 / _housing.Plastic) + (1 / h));
    }

    private double Film(double celsius)
    {
        const double prandtl = 0.71;
        double length = 2 * _wallOuter / 1000;
        double difference = Math.Max(0.1, celsius - _housing.Ambient);
        double film = ((celsius + _housing.Ambient) / 2) + 273.15;
        double viscosity = 1.6e-5 * Math.Pow(film / 303, 1.75);
        double rayleigh = 9.81 / film * difference * Math.Pow(length, 3) / (viscosity * viscosity / prandtl);
        double nusselt = 0.68 + (0.670 * Math.Pow(rayleigh, 0.25) / Math.Pow(1 + Math.Pow(0.492 / prandtl, 9.0 / 16), 4.0 / 9));
        return nusselt * Air / length;
    }

    private static double Radiated(double a, double b)
    {
        double ta = a + 273.15;
        double tb = b + 273.15;
        return Sigma * ((ta * ta) + (tb * tb)) * (ta + tb);
    }

    // Which faces see each other, reflections included: rays by chance from each.
    private (int A, int B, double Area)[] Seen()
    {
        var random = new Random(20260729);
        Dictionary<(int Air, int Solid), int> byFace = [];
        for (int f = 0; f < _faces.Count; f++)
        {
            byFace[(AirBeside(_faces[f]), _faces[f].Cell)] = f;
        }

        var shares = new Dictionary<(int, int), double>();
        for (int f = 0; f < _faces.Count; f++)
        {
            for (int ray = 0; ray < RaysPerFace; ray++)
            {
                int at = f;
                int left = 50;
                do
                {
                    at = byFace[Flight(_faces[at], AirBeside(_faces[at]), random)];
                }
                while (random.NextDouble() > Emissivity && --left > 0);
                if (_faces[at].Cell != _faces[f].Cell)
                {
                    (int, int) key = (Math.Min(_faces[f].Cell, _faces[at].Cell), Math.Max(_faces[f].Cell, _faces[at].Cell));
                    shares[key] = shares.GetValueOrDefault(key) + (Emissivity * _faces[f].Area / RaysPerFace / 2);
                }
            }
        }

        return [.. shares.Select(share => (share.Key.Item1, share.Key.Item2, share.Value))];
    }

    private int AirBeside((int Cell, int Normal, bool Vertical, double At, double Low, double High, double Area) face) =>
        face.Cell + (face.Normal * (face.Vertical ? _rows : 1));

    private (int Air, int Solid) Flight((int Cell, int Normal, bool Vertical, double At, double Low, double High, double Area) face,
        int air, Random random)
    {
        double u = random.NextDouble();
        double sine = Math.Sqrt(random.NextDouble());
        double cosine = Math.Sqrt(1 - (sine * sine));
        double turn = 2 * Math.PI * random.NextDouble();
        double x = face.Vertical ? face.At : Math.Sqrt((face.Low * face.Low) + (u * ((face.High * face.High) - (face.Low * face.Low))));
        double h = face.Vertical ? face.Low + (u * (face.High - face.Low)) : face.At;
        double y = 0;
        double dx = face.Vertical ? face.Normal * cosine : sine * Math.Cos(turn);
        double dy = sine * Math.Sin(turn);
        double dz = face.Vertical ? sine * Math.Cos(turn) : face.Normal * cosine;
        int i = air / _rows;
        int j = air % _rows;
        while (true)
        {
            // The way to each of the cell's four bounds; the nearest ahead is crossed.
            double a = (dx * dx) + (dy * dy);
            double b = (x * dx) + (y * dy);
            double square = (x * x) + (y * y);
            double ToOuter(double radius) =>
                a < 1e-15 ? double.PositiveInfinity : (Math.Sqrt(Math.Max(0, (b * b) - (a * (square - (radius * radius))))) - b) / a;
            double ToInner(double radius)
            {
                double root = (b * b) - (a * (square - (radius * radius)));
                return b >= 0 || a < 1e-15 || root <= 0 ? double.PositiveInfinity : (-b - Math.Sqrt(root)) / a;
            }

            double outer = ToOuter(_r[i + 1]);
            double innerWay = _r[i] > 0 ? ToInner(_r[i]) : double.PositiveInfinity;
            double upright = dz > 0 ? (_z[j + 1] - h) / dz : dz < 0 ? (_z[j] - h) / dz : double.PositiveInfinity;
            double way = Math.Max(0, Math.Min(upright, Math.Min(outer, innerWay)));
            x += dx * way;
            y += dy * way;
            h += dz * way;
            int from = (i * _rows) + j;
            if (upright <= outer && upright <= innerWay)
            {
                j += dz > 0 ? 1 : -1;
            }
            else
            {
                i += outer <= innerWay ? 1 : -1;
            }

            int next = (i * _rows) + j;
            if (_stuff[next] != Stuff.Air)
            {
                return (from, next);
            }
        }
    }
}
