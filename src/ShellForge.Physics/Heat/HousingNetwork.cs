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

    private readonly HeatInput input;
    private readonly HeatCoefficients coefficients;
    private readonly HousingPoints points;

    public HousingNetwork(HeatInput input, HeatCoefficients coefficients)
    {
        this.input = input;
        this.coefficients = coefficients;
        points = new HousingPoints(input, coefficients, Network);
        int below = Network.Gap(t => Convection(t, points.FloorInside, points.Board, input.BelowBoard));
        int above = Network.Gap(t => Convection(t, points.Board, points.FrontInside, input.AboveToBezel));
        for (int i = 0; i < input.Rings.Length; i++)
        {
            JoinRing(i, below, above);
            if (i + 1 < input.Rings.Length)
            {
                JoinNeighbours(i, i + 1);
            }
        }

        JoinWall(points.Side, input.Rings.Length - 1, input.Rings[^1].Outer, input.SideFactor, input.SideLength, 1);
        if (points.Bore is { } bore)
        {
            JoinWall(bore, 0, input.Rings[0].Inner, 1, input.Span, input.BoreFree);
        }

        JoinRooms();
        JoinSources();
        JoinVents();
    }

    public ThermalNetwork Network { get; } = new();

    public HousingPoints Points => points;

    private double Plastic(HeatWall wall) => wall.Conductivity * coefficients.PrintedPlastic.Value;

    // Floor, air, board, air and front above each other, and the film in front of what is free.
    private void JoinRing(int i, int below, int above)
    {
        SectionRing ring = input.Rings[i];
        double air = coefficients.AirConductivity.Value;
        Network.Join(points.FloorOutside[i], points.FloorInside[i], ring.Area * Plastic(input.Floor) / input.Floor.Thickness);
        double half = ring.Board ? 0 : input.BoardThickness / 2 / air;
        double boardFace = ring.Board ? input.BoardThickness / 2 / BoardThrough : half;
        double quarter = input.BelowBoard / 4 / air;
        Network.Join(points.FloorInside[i], points.LowAir[i], ring.Area / quarter, below);
        Network.Join(points.LowAir[i], points.BelowAir[i], ring.Area / (2 * quarter), below);
        Network.Join(points.BelowAir[i], points.Board[i], ring.Area / (quarter + boardFace), below);

        double depth = Above(ring);
        double open = 1 - ring.BaffleShare;
        quarter = depth / 4 / air;
        Network.Join(points.Board[i], points.AboveAir[i], open * ring.Area / (quarter + boardFace), above);
        Network.Join(points.AboveAir[i], points.HighAir[i], open * ring.Area / (2 * quarter), above);
        Network.Join(points.HighAir[i], points.FrontInside[i], open * ring.Area / quarter, above);
        if (ring.BaffleShare > 0 && input.Baffle.Thickness > 0)
        {
            // The baffle's walls carry heat beside the air, but for the gaps at their ends.
            double ends = Math.Max(0, depth - input.Baffle.Thickness) / air;
            Network.Join(points.Board[i], points.FrontInside[i], ring.BaffleShare * ring.Area / (ends + (input.Baffle.Thickness / Plastic(input.Baffle))));
        }

        double through = (ring.WindowShare * Plastic(input.Diffuser) / input.Diffuser.Thickness) + ((1 - ring.WindowShare) * Plastic(input.Bezel) / input.Bezel.Thickness);
        Network.Join(points.FrontInside[i], points.FrontOutside[i], ring.Area * through);
        Film(points.FrontOutside[i], ring.Area, input.FrontDirection, input.Span);
        Film(points.FloorOutside[i], ring.Area, input.FloorDirection, input.Span);
    }

    private double Above(SectionRing ring) =>
        (ring.WindowShare * input.AboveToDiffuser) + ((1 - ring.WindowShare) * input.AboveToBezel);

    private double FrontSheet(SectionRing ring) =>
        (ring.WindowShare * Plastic(input.Diffuser) * input.Diffuser.Thickness) + ((1 - ring.WindowShare) * Plastic(input.Bezel) * input.Bezel.Thickness);

    // Along the radius: half of the one ring and half of the next.
    private void JoinNeighbours(int i, int j)
    {
        SectionRing a = input.Rings[i];
        SectionRing b = input.Rings[j];
        double round = 2 * Math.PI * a.Outer;
        double halfA = (a.Outer - a.Inner) / 2;
        double halfB = (b.Outer - b.Inner) / 2;
        double air = coefficients.AirConductivity.Value;
        double floor = Plastic(input.Floor) * input.Floor.Thickness / 2;
        double boardA = (a.Board ? coefficients.BoardConductivity.Value : air) * input.BoardThickness;
        double boardB = (b.Board ? coefficients.BoardConductivity.Value : air) * input.BoardThickness;
        double frontA = FrontSheet(a) / 2;
        double frontB = FrontSheet(b) / 2;
        double low = air * input.BelowBoard / 2;
        Join(points.FloorOutside, floor, floor);
        Join(points.FloorInside, floor, floor);
        Join(points.LowAir, low, low);
        Join(points.BelowAir, low, low);
        Join(points.Board, boardA, boardB);
        Join(points.AboveAir, air * Above(a) / 2, air * Above(b) / 2);
        Join(points.HighAir, air * Above(a) / 2, air * Above(b) / 2);
        Join(points.FrontInside, frontA, frontB);
        Join(points.FrontOutside, frontA, frontB);

        void Join(int[] layer, double sheetA, double sheetB) =>
            Network.Join(layer[i], layer[j], round / ((halfA / sheetA) + (halfB / sheetB)));
    }

    // A wall beside the outermost or innermost ring: through it, along it, from the ring's layers into it, and the film on its outer face.
    private void JoinWall(WallPoints wall, int i, double radius, double factor, double length, double free)
    {
        SectionRing ring = input.Rings[i];
        double half = (ring.Outer - ring.Inner) / 2;
        double thickness = input.Wall.Thickness;
        double outward = wall == points.Side ? thickness : -thickness;
        double inner = 2 * Math.PI * radius * factor;
        double outer = 2 * Math.PI * Math.Max(0, radius + outward) * factor;
        double middle = (inner + outer) / 2;
        double plastic = Plastic(input.Wall);
        double air = coefficients.AirConductivity.Value;
        double[] heights = points.Heights;
        int[] beside =
        [
            points.FloorInside[i], points.LowAir[i], points.BelowAir[i], points.Board[i], points.AboveAir[i], points.HighAir[i], points.FrontInside[i],
        ];
        double[] sheets =
        [
            Plastic(input.Floor) * input.Floor.Thickness, air * heights[1], air * heights[2],
            (ring.Board ? coefficients.BoardConductivity.Value : air) * heights[3], air * heights[4], air * heights[5], FrontSheet(ring),
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

        Film(wall.Outer[^1], rim, input.FrontDirection, input.Span);
        Film(wall.Outer[0], rim, input.FloorDirection, input.Span);
    }

    // Radiation below and above the board, and from its edge to the walls.
    private void JoinRooms()
    {
        bool full = points.Bore is null;
        double e = coefficients.Emissivity.Value;
        foreach ((RoomStrip a, RoomStrip b, double area) in RoomSight.Pairs(RoomOf(points.FloorInside, 1, _ => false, input.BelowBoard), full))
        {
            Radiate(a.Point, b.Point, area * Exchange(e, a.Black || b.Black));
        }

        double depth = input.Rings.Sum(ring => ring.Area * Above(ring)) / input.Rings.Sum(ring => ring.Area);
        foreach ((RoomStrip a, RoomStrip b, double area) in RoomSight.Pairs(RoomOf(points.FrontInside, 4, ring => ring.BaffleShare > 0, depth), full))
        {
            Radiate(a.Point, b.Point, area * Exchange(e, a.Black || b.Black));
        }

        for (int i = 0; i < input.Rings.Length; i++)
        {
            SectionRing ring = input.Rings[i];
            if (ring.BaffleShare > 0)
            {
                Radiate(points.Board[i], points.FrontInside[i], (1 - ring.BaffleShare) * ring.Area * Exchange(e, !ring.Board) * CellSight(Above(ring)));
            }
        }

        Edge(points.Side.Inner[3], input.Rings.Length - 1, -1, 2 * Math.PI * input.Rings[^1].Outer * input.SideFactor);
        if (points.Bore is { } bore)
        {
            Edge(bore.Inner[3], 0, 1, 2 * Math.PI * input.Rings[0].Inner);
        }

        void Edge(int wall, int from, int step, double round)
        {
            int i = from;
            while (i >= 0 && i < input.Rings.Length && !input.Rings[i].Board)
            {
                i += step;
            }

            if (i >= 0 && i < input.Rings.Length && Math.Abs(i - from) <= 1)
            {
                Radiate(points.Board[i], wall, round * input.BoardThickness * Exchange(e, false));
            }
        }
    }

    // Strips of the room below or above the board; rings that the baffle closes in are rooms of their own.
    private List<RoomStrip> RoomOf(int[] plates, int wallFrom, Func<SectionRing, bool> closed, double depth)
    {
        var strips = new List<RoomStrip>();
        for (int i = 0; i < input.Rings.Length; i++)
        {
            SectionRing ring = input.Rings[i];
            if (!closed(ring))
            {
                strips.Add(new RoomStrip(plates[i], ring.Inner, 0, ring.Outer, 0));
                strips.Add(new RoomStrip(points.Board[i], ring.Inner, depth, ring.Outer, depth, !ring.Board));
            }
        }

        // The plate lies at 0: below the board its walls run from the floor up, above it from the front down.
        int near = wallFrom == 1 ? 1 : 5;
        int far = wallFrom == 1 ? 2 : 4;
        foreach ((WallPoints wall, double radius) in points.WallsAt(input))
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
        double slenderness = 2 * depth / Math.Max(input.BaffleOpening, depth / MostSlender);
        double direct = Math.Sqrt(1 + (slenderness * slenderness)) - slenderness;
        return (1 + direct) / 2;
    }

    private const double MostSlender = 100;

    private void JoinSources()
    {
        double leds = Math.Max(1, input.Leds);
        for (int i = 0; i < input.Rings.Length; i++)
        {
            SectionRing ring = input.Rings[i];
            if (ring.Leds > 0)
            {
                Network.Join(points.Leds, points.Board[i], ring.Leds / coefficients.LedToBoard.Value);
            }

            if (points.Controller is int controller && ring.ControllerShare > 0)
            {
                Network.Join(controller, points.Board[i], ring.ControllerShare / coefficients.ControllerToBoard.Value);
            }
        }

        if (input.Leds <= 0)
        {
            Network.Join(points.Leds, points.Board[points.FirstBoard], leds / coefficients.LedToBoard.Value);
        }
    }

    // Warm air leaves as fast as its lift drives it through both openings in turn; each ring with vents gives its part.
    // Source: Q = Cd A sqrt(2 g H dT / T), A = Ain Aout / sqrt(Ain2 + Aout2).
    private void JoinVents()
    {
        VentOpenings vents = input.Vents;
        double slots = input.Rings.Sum(ring => ring.VentArea);
        if (vents.Rise <= 0 || vents.InletArea <= 0 || vents.OutletArea <= 0 || slots <= 0)
        {
            return;
        }

        double area = vents.InletArea * vents.OutletArea / Math.Sqrt((vents.InletArea * vents.InletArea) + (vents.OutletArea * vents.OutletArea));
        for (int i = 0; i < input.Rings.Length; i++)
        {
            double share = input.Rings[i].VentArea / slots / 2;
            foreach (int air in share > 0 ? new[] { points.LowAir[i], points.BelowAir[i] } : [])
            {
                Network.Join(air, ThermalNetwork.Outside, (inner, outer) => share * coefficients.AirHeat * coefficients.VentDischarge.Value * area
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
            FaceDirection.Up => coefficients.UpConvection.Value,
            FaceDirection.Down => coefficients.DownConvection.Value,
            _ => coefficients.UprightConvection.Value,
        };
        double e = coefficients.Emissivity.Value;
        Network.Join(point, ThermalNetwork.Outside, (a, b) =>
            area * ((factor * Root4(Math.Max(LeastDifference, Math.Abs(a - b)) / length)) + (e * Radiation(a, b))));
    }

    private void Radiate(int a, int b, double area) => Network.Join(a, b, (ta, tb) => area * Radiation(ta, tb));

    // Grey faces that see each other. Source: parallel plates.
    private static double Exchange(double emissivity, bool oneIsBlack) => oneIsBlack ? emissivity : 1 / ((2 / emissivity) - 1);

    private double Convection(double[] t, int[] lower, int[] upper, double gap)
    {
        bool upright = input.FrontDirection == FaceDirection.Upright;
        return GapConvection.Nusselt(points.MeanOnBoard(t, lower), points.MeanOnBoard(t, upper), gap, input.Span, upright);
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
