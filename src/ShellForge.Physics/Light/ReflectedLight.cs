using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// Light that reaches the diffuser after any number of matt reflections, by walls, board and LEDs and by the diffuser itself, which throws
/// most of what it gets back into the room. From places on the diffuser rays look down, spread like the cosine that weighs them; so do rays
/// from patches of what they meet; E = direct + mean over the rays of (reflectance x E where the ray ends) is then solved for all places by
/// repetition. What comes straight to a place is the mean over its cells, sides of the sheet's steps among them. Source: the radiosity
/// equation, form factors by cosine-weighted rays.
/// </summary>
internal sealed class ReflectedLight
{
    // From one gathering place to the next, mm and at least in cells of the diffuser: what comes back varies slowly.
    private const double Coarse = 2.5;
    private const int LeastCells = 4;

    // 8 x 12 rays from a place of the diffuser, 4 x 4 from a patch: the middles of equal shares of the cosine-weighted hemisphere.
    private static readonly Point3[] FromFace = Hemisphere(8, 12);
    private static readonly Point3[] FromPatch = Hemisphere(4, 4);

    // Rounds of patches that are found by rays from those before; what lies farther off throws next to nothing back to the diffuser.
    private const int Waves = 2;

    // Darker surfaces throw back once what LEDs bring to them; of the rest less than this.
    private const double Dark = 0.1;

    // Places of a block that stand for the light on it lie so far to the sides of its middle, as a share of its side.
    private const double Aside = 0.25;

    // An upright side of a sheet's step sees half of the room.
    private const double FromSides = 0.5;

    // Repetitions: each is one more reflection, and three quarters of the light at most come back from one.
    private const int MostRounds = 40;

    // What a further reflection would add, as a share of all light, where repetition stops: far below the figures that are told.
    private const double Settled = 1e-4;

    private readonly LightScene _scene;
    private readonly DirectLight _direct;
    private readonly ReceiverGrid _face;
    private readonly int _stride;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int[] _cellOf;
    private readonly int[] _openCells;
    private readonly int[] _zoneOf;
    private readonly LightOnSheet[] _brings;
    private readonly int _channels;
    private Site?[] _blocks = [];

    /// <summary>The places of a scene: to be solved when they have gathered what comes straight.</summary>
    /// <param name="scene">LEDs, walls and diffuser.</param>
    /// <param name="direct">What LEDs bring straight.</param>
    public ReflectedLight(LightScene scene, DirectLight direct)
    {
        (_scene, _direct, _face) = (scene, direct, scene.Face);
        _channels = scene.OnlyAll ? 1 : Math.Max(1, direct.Count);
        _stride = Math.Max(LeastCells, (int)Math.Round(Coarse / _face.Step));
        _columns = (_face.Columns + _stride - 1) / _stride;
        _rows = (_face.Rows + _stride - 1) / _stride;
        _cellOf = new int[_columns * _rows];
        _openCells = new int[_columns * _rows];
        _zoneOf = new int[_columns * _rows];
        for (int block = 0; block < _cellOf.Length; block++)
        {
            (_cellOf[block], _openCells[block]) = MiddleOf(block);
            _zoneOf[block] = _cellOf[block] < 0 || direct.Count == 0 ? -1 : LedZones.Nearest(scene, Place(_cellOf[block]).At);
        }

        _brings = new LightOnSheet[_columns * _rows * _channels];
        if (scene.Solids.TriangleCount > 0 && direct.Count > 0 && scene.Materials.Any(material => material.Reflectance > 0))
        {
            float[] kept = scene.DarkRim ? SheetSpread.ThrownBesideDarkRim(_face, SpreadOfThrown()) : [];
            _blocks = [.. _cellOf.Select((cell, block) => cell < 0 ? null : OnFace(block, kept))];
        }
    }

    /// <summary>Cells along the side of a place's share of the face.</summary>
    public int Side => _stride;

    /// <summary>Looks up what comes straight at four places of each block, where nobody gathers it cell by cell.</summary>
    public void GatherAtPlaces()
    {
        double step = Aside * _stride * _face.Step;
        (double, double)[] corners = [(step, step), (-step, step), (step, -step), (-step, -step)];
        Parallel.For(0, _blocks.Length, block =>
        {
            Site? site = _blocks[block];
            Point2 middle = site is null ? default : _face.Middle(_cellOf[block]);
            foreach ((double u, double v) in site is null ? [] : corners)
            {
                (Point3 place, Point3 facing) = _face.At(middle.X + u, middle.Y + v);
                foreach ((int led, LightOnSheet light) in LitWalls.LightOn(_direct, place, facing))
                {
                    site!.Straight[_channels == 1 ? 0 : led] += 0.25 * light;
                }
            }
        });
    }

    /// <summary>Light straight from an LED to a cell. Cells of different places may gather at the same time.</summary>
    public void Gather(int cell, int led, in LightOnSheet light)
    {
        if (_blocks.Length > 0)
        {
            int block = BlockAt(cell);
            _blocks[block]!.Straight[_channels == 1 ? 0 : led] += 1.0 / _openCells[block] * light;
        }
    }

    /// <summary>Adds what each LED brings to each zone.</summary>
    public void AddTo(ZoneFlux flux)
    {
        for (int block = 0; block < _zoneOf.Length && _channels == _direct.Count; block++)
        {
            for (int led = 0; led < _channels && _zoneOf[block] >= 0; led++)
            {
                flux.Add(led, _zoneOf[block], _openCells[block] * _brings[(block * _channels) + led]);
            }
        }
    }

    /// <summary>
    /// Adds the light to the cells of a face, this one or a part of it in finer cells: between the four gathering places around a cell;
    /// with cells of their own, from those of the same cell only.
    /// </summary>
    public void AddTo(ReceiverGrid cells, LightFields falls, LightFields enters, int[] zones)
    {
        AddTo(cells, falls, zones, light => light.Falls);
        AddTo(cells, enters, zones, light => light.Enters);
    }

    private void AddTo(ReceiverGrid cells, LightFields fields, int[] zones, Func<LightOnSheet, double> of)
    {
        var gathered = new LightFields(_zoneOf.Length);
        for (int block = 0; block < _zoneOf.Length; block++)
        {
            for (int channel = 0; channel < _channels; channel++)
            {
                gathered.Add(block, _scene.OnlyAll ? -1 : channel, _scene.Alone, of(_brings[(block * _channels) + channel]));
            }
        }

        double[] sums = new double[3];
        for (int i = 0; i < cells.Count; i++)
        {
            if (!cells.Open[i])
            {
                continue;
            }

            Point2 at = cells.Middle(i);
            double weights = _scene.Cells ? Around(gathered, at, zones[i], sums) : 0;
            weights = weights > 0 ? weights : Around(gathered, at, -1, sums);
            double sides = 1 + (FromSides * cells.Sides(i).Sum(side => side.Share));
            for (int f = 0; f < 3 && weights > 0; f++)
            {
                fields.Arrays[f][i] += (float)(sides * sums[f] / weights);
            }
        }
    }

    // Means of the gathering places around a place; of one zone only, or of all with -1.
    private double Around(LightFields gathered, Point2 at, int zone, double[] sums)
    {
        double x = ((at.X - _face.Left) / (_face.Step * _stride)) - 0.5;
        double y = ((at.Y - _face.Bottom) / (_face.Step * _stride)) - 0.5;
        int column = (int)Math.Floor(x);
        int row = (int)Math.Floor(y);
        double weights = 0;
        Array.Clear(sums);
        for (int k = 0; k < 4; k++)
        {
            int c = column + (k & 1);
            int r = row + (k >> 1);
            c = _face.Wraps ? ((c % _columns) + _columns) % _columns : c;
            int block = (r * _columns) + c;
            if (c < 0 || r < 0 || c >= _columns || r >= _rows || _zoneOf[block] < 0 || (zone >= 0 && _zoneOf[block] != zone))
            {
                continue;
            }

            double weight = ((k & 1) == 0 ? 1 - (x - column) : x - column) * ((k >> 1) == 0 ? 1 - (y - row) : y - row);
            weights += weight;
            for (int f = 0; f < 3; f++)
            {
                sums[f] += weight * gathered.Arrays[f][block];
            }
        }

        return weights;
    }

    /// <summary>Solves it.</summary>
    /// <param name="cancel">Stops it.</param>
    public void Solve(CancellationToken cancel)
    {
        if (_blocks.Length == 0)
        {
            return;
        }

        var room = new LitRoom(_scene, _direct, _channels, BlockAt);
        room.Look([.. _blocks.OfType<Site>()], FromFace, true, cancel);
        int from = 0;
        for (int wave = 1; wave <= Waves; wave++)
        {
            int to = room.Patches.Count;
            room.Look([.. room.Patches.Skip(from).Take(to - from).Where(patch => patch.Reflectance >= Dark)], FromPatch, wave < Waves,
                cancel);
            from = to;
        }

        room.Reciprocate(_blocks);
        room.Balance(_blocks, MostRounds, Settled);
        for (int block = 0; block < _blocks.Length; block++)
        {
            for (int channel = 0; channel < _channels && _blocks[block] is { } site; channel++)
            {
                _brings[(block * _channels) + channel] = site.Reflected[channel];
            }
        }

        // What is brought is kept as long as the light is; who sees whom is not.
        _blocks = [];
    }

    // The gathering place whose share of the face a cell lies in.
    private int BlockAt(int cell) => (cell / _face.Columns / _stride * _columns) + (cell % _face.Columns / _stride);

    // The open cell that lies nearest to a block's middle, -1 for none, and how many are open.
    private (int Cell, int Open) MiddleOf(int block)
    {
        (int found, int open, double least) = (-1, 0, double.PositiveInfinity);
        foreach (int cell in OpenCells(block))
        {
            open++;
            double x = (cell % _face.Columns % _stride) - ((_stride - 1) / 2.0);
            double y = (cell / _face.Columns % _stride) - ((_stride - 1) / 2.0);
            if ((x * x) + (y * y) < least)
            {
                (found, least) = (cell, (x * x) + (y * y));
            }
        }

        return (found, open);
    }

    // Open cells of a block, row by row.
    private IEnumerable<int> OpenCells(int block)
    {
        int column = block % _columns * _stride;
        int row = block / _columns * _stride;
        for (int r = row; r < Math.Min(row + _stride, _face.Rows); r++)
        {
            for (int c = column; c < Math.Min(column + _stride, _face.Columns); c++)
            {
                int cell = (r * _face.Columns) + c;
                if (_face.Open[cell])
                {
                    yield return cell;
                }
            }
        }
    }

    private double SpreadOfThrown() =>
        _scene.RimThickness(_face) is { } thickness ? DiffuserOptics.SpreadOfThrown(thickness) : _scene.Diffuser.Spread / 2;

    // The site in the middle of a block.
    private Site OnFace(int block, float[] kept)
    {
        // Beside walls between cells of light, those on its middle's side.
        int[] starts =
            [.. OpenCells(block).Where(cell => !_scene.Cells || LedZones.Nearest(_scene, Place(cell).At) == _zoneOf[block])];
        (Point3 at, Point3 normal) = Place(_cellOf[block]);
        return new Site(at, normal, _scene.SheetAt(_cellOf[block]).Reflectance)
        {
            Starts = [.. starts.Select(Place)],
            Cells = _openCells[block],
            Keeps = kept.Length == 0 ? 1 : starts.Average(cell => kept[cell]),
            Straight = new LightOnSheet[_channels],
        };
    }

    private (Point3 At, Point3 Normal) Place(int cell)
    {
        Point2 middle = _face.Middle(cell);
        return _face.At(middle.X, middle.Y);
    }

    private static Point3[] Hemisphere(int elevations, int azimuths)
    {
        var directions = new Point3[elevations * azimuths];
        for (int i = 0; i < directions.Length; i++)
        {
            double share = ((i / azimuths) + 0.5) / elevations;
            double turn = ((i % azimuths) + ((i / azimuths % 2) * 0.5) + 0.25) / azimuths;
            Angle at = Angle.FromDegrees(360 * turn);
            directions[i] = new Point3(Math.Sqrt(share) * at.Cos, Math.Sqrt(share) * at.Sin, Math.Sqrt(1 - share));
        }

        return directions;
    }
}
