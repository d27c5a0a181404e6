namespace ShellForge.Physics.Heat;

/// <summary>
/// A housing as a network: rings round its axis, and for each the floor, two layers of air, the board, two layers of air and the front;
/// beside them the walls, layer by layer. LEDs and controller are points of their own above the board.
/// </summary>
internal sealed class HousingNetwork
{
    private const double StefanBoltzmann = 5.670374419e-8; // W/m2K4, CODATA 2018
    private const double Kelvin = 273.15;
    private const double Gravity = 9.81;

    // A smaller difference drives no flow that could be told from a draught, K.
    private const double LeastDifference = 0.2;

    // Through the board, W/mK. Source: laminate with some copper in its holes; typical, a board is too thin for it to matter.
    private const double BoardThrough = 0.4;

    private readonly HeatInput _input;
    private readonly HeatCoefficients _coefficients;
    private readonly HousingPoints _points;

    public HousingNetwork(HeatInput input, HeatCoefficients coefficients)
    {
        _input = input;
        _coefficients = coefficients;
        _points = new HousingPoints(input, coefficients, Network);
        int below = Network.Gap(t => Convection(t, _points.FloorInside, _points.Board, input.BelowBoard));
        int above = Network.Gap(t => Convection(t, _points.Board, _points.FrontInside, input.AboveToBezel));
        for (int i = 0; i < input.Rings.Length; i++)
        {
            JoinRing(i, below, above);
            if (i + 1 < input.Rings.Length)
            {
                JoinNeighbours(i, i + 1);
            }
        }

        JoinWall(_points.Side, input.Rings.Length - 1, input.Rings[^1].Outer, input.SideFactor, input.SideLength, 1);
        if (_points.Bore is { } bore)
        {
            JoinWall(bore, 0, input.Rings[0].Inner, 1, input.Span, input.BoreFree);
        }

        JoinRooms();
        JoinSources();
        JoinVents();
    }

    public ThermalNetwork Network { get; } = new();

    public HousingPoints Points => _points;

    private double Plastic(HeatWall wall) => wall.Conductivity * _coefficients.PrintedPlastic.Value;

    // Floor, air, board, air and front above each other, and the film in front of what is free.
    private void JoinRing(int i, int below, int above)
    {
        SectionRing ring = _input.Rings[i];
        double air = _coefficients.AirConductivity.Value;
        Network.Join(_points.FloorOutside[i], _points.FloorInside[i], ring.Area * Plastic(_input.Floor) / _input.Floor.Thickness);
        double half = ring.Board ? 0 : _input.BoardThickness / 2 / air;
        double boardFace = ring.Board ? _input.BoardThickness / 2 / BoardThrough : half;
        double quarter = _input.BelowBoard / 4 / air;
        Network.Join(_points.FloorInside[i], _points.LowAir[i], ring.Area / quarter, below);
        Network.Join(_points.LowAir[i], _points.BelowAir[i], ring.Area / (2 * quarter), below);
        Network.Join(_points.BelowAir[i], _points.Board[i], ring.Area / (quarter + boardFace), below);

        double depth = Above(ring);
        double open = 1 - ring.BaffleShare;
        quarter = depth / 4 / air;
        Network.Join(_points.Board[i], _points.AboveAir[i], open * ring.Area / (quarter + boardFace), above);
        Network.Join(_points.AboveAir[i], _points.HighAir[i], open * ring.Area / (2 * quarter), above);
        Network.Join(_points.HighAir[i], _points.FrontInside[i], open * ring.Area / quarter, above);
        if (ring.BaffleShare > 0 && _input.Baffle.Thickness > 0)
        {
            // The baffle's walls carry heat beside the air, but for the gaps at their ends.
            double ends = Math.Max(0, depth - _input.Baffle.Thickness) / air;
            Network.Join(_points.Board[i], _points.FrontInside[i],
                ring.BaffleShare * ring.Area / (ends + (_input.Baffle.Thickness / Plastic(_input.Baffle))));
        }

        double through = (ring.WindowShare * Plastic(_input.Diffuser) / _input.Diffuser.Thickness)
            + ((1 - ring.WindowShare) * Plastic(_input.Bezel) / _input.Bezel.Thickness);
        Network.Join(_points.FrontInside[i], _points.FrontOutside[i], ring.Area * through);
        Film(_points.FrontOutside[i], ring.Area, _input.FrontDirection, _input.Span);
        Film(_points.FloorOutside[i], ring.Area, _input.FloorDirection, _input.Span);
    }

    private double Above(SectionRing ring) =>
        (ring.WindowShare * _input.AboveToDiffuser) + ((1 - ring.WindowShare) * _input.AboveToBezel);

    private double FrontSheet(SectionRing ring) =>
        (ring.WindowShare * Plastic(_input.Diffuser) * _input.Diffuser.Thickness)
            + ((1 - ring.WindowShare) * Plastic(_input.Bezel) * _input.Bezel.Thickness);

    // Along the radius: half of the one ring and half of the next.
    private void JoinNeighbours(int i, int j)
    {
        SectionRing a = _input.Rings[i];
        SectionRing b = _input.Rings[j];
        double round = 2 * Math.PI * a.Outer;
        double halfA = (a.Outer - a.Inner) / 2;
        double halfB = (b.Outer - b.Inner) / 2;
        double air = _coefficients.AirConductivity.Value;
        double floor = Plastic(_input.Floor) * _input.Floor.Thickness / 2;
        double boardA = (a.Board ? _coefficients.BoardConductivity.Value : air) * _input.BoardThickness;
        double boardB = (b.Board ? _coefficients.BoardConductivity.Value : air) * _input.BoardThickness;
        double frontA = FrontSheet(a) / 2;
        double frontB = FrontSheet(b) / 2;
        double low = air * _input.BelowBoard / 2;
        Join(_points.FloorOutside, floor, floor);
        Join(_points.FloorInside, floor, floor);
        Join(_points.LowAir, low, low);
        Join(_points.BelowAir, low, low);
        Join(_points.Board, boardA, boardB);
        Join(_points.AboveAir, air * Above(a) / 2, air * Above(b) / 2);
        Join(_points.HighAir, air * Above(a) / 2, air * Above(b) / 2);
        Join(_points.FrontInside, frontA, frontB);
        Join(_points.FrontOutside, frontA, frontB);

        void Join(int[] layer, double sheetA, double sheetB) =>
            Network.Join(layer[i], layer[j], round / ((halfA / sheetA) + (halfB / sheetB)));
    }

    // A wall beside the outermost or innermost ring: through it, along it, from the ring's layers into it, and the film on its outer face.
    private void JoinWall(WallPoints wall, int i, double radius, double factor, double length, double free)
    {
        SectionRing ring = _input.Rings[i];
        double half = (ring.Outer - ring.Inner) / 2;
        double thickness = _input.Wall.Thickness;
        double outward = wall == _points.Side ? thickness : -thickness;
        double inner = 2 * Math.PI * radius * factor;
        double outer = 2 * Math.PI * Math.Max(0, radius + outward) * factor;
        double middle = (inner + outer) / 2;
        double plastic = Plastic(_input.Wall);
        double air = _coefficients.AirConductivity.Value;
        double[] heights = _points.Heights;
        int[] beside =
        [
            _points.FloorInside[i], _points.LowAir[i], _points.BelowAir[i], _points.Board[i], _points.AboveAir[i], _points.HighAir[i],
            _points.FrontInside[i],
        ];
        double[] sheets =
        [
            Plastic(_input.Floor) * _input.Floor.Thickness, air * heights[1], air * heights[2],
            (ring.Board ? _coefficients.BoardConductivity.Value : air) * heights[3], air * heights[4], air * heights[5], FrontSheet(ring),
        ];
        double rim = Math.Abs((radius * radius) - ((radius + outward) * (radius + outward))) * Math.PI * factor;
        for (int k = 0; k < heights.Length; k++)
        {
            Network.Join(wall.Inner[k], wall.Outer[k], middle * heights[k] * plastic / thickness);
            Network.Join(beside[k], wall.Inner[k], inner * sheets[k] / half);
            FilmOn(wall.Outer[k], outer * heights[k] * free, FaceDirection.Upright, length);
            if (k + 1 < heights.Length)
            {
                double along = middle * thickness / 2 * plastic / ((heights[k] + heights[k + 1]) / 2);
                Network.Join(wall.Inner[k], wall.Inner[k + 1], along);
                Network.Join(wall.Outer[k], wall.Outer[k + 1], along);
            }
        }

        Film(wall.Outer[^1], rim, _input.FrontDirection, _input.Span);
        Film(wall.Outer[0], rim, _input.FloorDirection, _input.Span);
    }

    // Radiation below and above the board, and from its edge to the walls.
    private void JoinRooms()
    {
        bool full = _points.Bore is null;
        double e = _coefficients.Emissivity.Value;
        foreach ((RoomStrip a, RoomStrip b,
            double area) in RoomSight.Pairs(RoomOf(_points.FloorInside, 1, _ => false, _input.BelowBoard), full))
        {
            Radiate(a.Point, b.Point, area * Exchange(e, a.Black || b.Black));
        }

        double depth = _input.Rings.Sum(ring => ring.Area * Above(ring)) / _input.Rings.Sum(ring => ring.Area);
        foreach ((RoomStrip a, RoomStrip b,
            double area) in RoomSight.Pairs(RoomOf(_points.FrontInside, 4, ring => ring.BaffleShare > 0, depth), full))
        {
            Radiate(a.Point, b.Point, area * Exchange(e, a.Black || b.Black));
        }

        for (int i = 0; i < _input.Rings.Length; i++)
        {
            SectionRing ring = _input.Rings[i];
            if (ring.BaffleShare > 0)
            {
                Radiate(_points.Board[i], _points.FrontInside[i],
                    (1 - ring.BaffleShare) * ring.Area * Exchange(e, !ring.Board) * CellSight(Above(ring)));
            }
        }

        Edge(_points.Side.Inner[3], _input.Rings.Length - 1, -1, 2 * Math.PI * _input.Rings[^1].Outer * _input.SideFactor);
        if (_points.Bore is { } bore)
        {
            Edge(bore.Inner[3], 0, 1, 2 * Math.PI * _input.Rings[0].Inner);
        }

        void Edge(int wall, int from, int step, double round)
        {
            int i = from;
            while (i >= 0 && i < _input.Rings.Length && !_input.Rings[i].Board)
            {
                i += step;
            }

            if (i >= 0 && i < _input.Rings.Length && Math.Abs(i - from) <= 1)
            {
                Radiate(_points.Board[i], wall, round * _input.BoardThickness * Exchange(e, false));
            }
        }
    }

    // Strips of the room below or above the board; rings that the baffle closes in are rooms of their own.
    private List<RoomStrip> RoomOf(int[] plates, int wallFrom, Func<SectionRing, bool> closed, double depth)
    {
        var strips = new List<RoomStrip>();
        for (int i = 0; i < _input.Rings.Length; i++)
        {
            SectionRing ring = _input.Rings[i];
            if (!closed(ring))
            {
                strips.Add(new RoomStrip(plates[i], ring.Inner, 0, ring.Outer, 0));
                strips.Add(new RoomStrip(_points.Board[i], ring.Inner, depth, ring.Outer, depth, !ring.Board));
            }
        }

        // The plate lies at 0: below the board its walls run from the floor up, above it from the front down.
        int near = wallFrom == 1 ? 1 : 5;
        int far = wallFrom == 1 ? 2 : 4;
        foreach ((WallPoints wall, double radius) in _points.WallsAt(_input))
        {
            strips.Add(new RoomStrip(wall.Inner[near], radius, 0, radius, depth / 2));
            strips.Add(new RoomStrip(wall.Inner[far], radius, depth / 2, radius, depth));
        }

        return strips;
    }

    // Two ends of a cell whose walls send on what they catch. Source: crossed strings for a strip half as wide as the hydraulic diameter,
    // and walls that give off as much as they take.
    private double CellSight(double depth)
    {
        double slenderness = 2 * depth / Math.Max(_input.BaffleOpening, depth / MostSlender);
        double direct = Math.Sqrt(1 + (slenderness * slenderness)) - slenderness;
        return (1 + direct) / 2;
    }

    private const double MostSlender = 100;

    private void JoinSources()
    {
        double leds = Math.Max(1, _input.Leds);
        for (int i = 0; i < _input.Rings.Length; i++)
        {
            SectionRing ring = _input.Rings[i];
            if (ring.Leds > 0)
            {
                Network.Join(_points.Leds, _points.Board[i], ring.Leds / _coefficients.LedToBoard.Value);
            }

            if (_points.Controller is int controller && ring.ControllerShare > 0)
            {
                Network.Join(controller, _points.Board[i], ring.ControllerShare / _coefficients.ControllerToBoard.Value);
            }
        }

        if (_input.Leds <= 0)
        {
            Network.Join(_points.Leds, _points.Board[_points.FirstBoard], leds / _coefficients.LedToBoard.Value);
        }
    }

    // Warm air leaves as fast as its lift drives it through both openings in turn; each ring with vents gives its part.
    // Source: Q = Cd A sqrt(2 g H dT / T), A = Ain Aout / sqrt(Ain2 + Aout2).
    private void JoinVents()
    {
        VentOpenings vents = _input.Vents;
        double slots = _input.Rings.Sum(ring => ring.VentArea);
        if (vents.Rise <= 0 || vents.InletArea <= 0 || vents.OutletArea <= 0 || slots <= 0)
        {
            return;
        }

        double area = vents.InletArea * vents.OutletArea
            / Math.Sqrt((vents.InletArea * vents.InletArea) + (vents.OutletArea * vents.OutletArea));
        for (int i = 0; i < _input.Rings.Length; i++)
        {
            double share = _input.Rings[i].VentArea / slots / 2;
            foreach (int air in share > 0 ? new[] { _points.LowAir[i], _points.BelowAir[i] } : [])
            {
                Network.Join(air, ThermalNetwork.Outside,
                    (inner, outer) => share * _coefficients.AirHeat * _coefficients.VentDischarge.Value * area
                    * Math.Sqrt(2 * Gravity * vents.Rise * Math.Max(0, inner - outer) / (Kelvin + outer)));
            }
        }
    }

    private void Film(int point, double area, FaceDirection direction, double length)
    {
        if (direction != FaceDirection.Covered)
        {
            FilmOn(point, area, direction, length);
        }
    }

    private void FilmOn(int point, double area, FaceDirection direction, double length)
    {
        double factor = direction switch
        {
            FaceDirection.Up => _coefficients.UpConvection.Value,
            FaceDirection.Down => _coefficients.DownConvection.Value,
            _ => _coefficients.UprightConvection.Value,
        };
        double e = _coefficients.Emissivity.Value;
        Network.Join(point, ThermalNetwork.Outside, (a, b) =>
            area * ((factor * Root4(Math.Max(LeastDifference, Math.Abs(a - b)) / length)) + (e * Radiation(a, b))));
    }

    private void Radiate(int a, int b, double area) => Network.Join(a, b, (ta, tb) => area * Radiation(ta, tb));

    // Grey faces that see each other. Source: parallel plates.
    private static double Exchange(double emissivity, bool oneIsBlack) => oneIsBlack ? emissivity : 1 / ((2 / emissivity) - 1);

    private double Convection(double[] t, int[] lower, int[] upper, double gap)
    {
        bool upright = _input.FrontDirection == FaceDirection.Upright;
        return GapConvection.Nusselt(_points.MeanOnBoard(t, lower), _points.MeanOnBoard(t, upper), gap, _input.Span, upright);
    }

    private static double Root4(double value) => Math.Sqrt(Math.Sqrt(value));

    // sigma (Ta2 + Tb2)(Ta + Tb), so that times (Ta - Tb) it is the difference of fourth powers.
    private static double Radiation(double a, double b)
    {
        double ta = a + Kelvin;
        double tb = b + Kelvin;
        return StefanBoltzmann * ((ta * ta) + (tb * tb)) * (ta + tb);
    }
}
