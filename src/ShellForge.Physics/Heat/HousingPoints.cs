namespace ShellForge.Physics.Heat;

/// <summary>The points of a wall, from the floor to the front: floor, air, air, board, air, air, front.</summary>
/// <param name="Inner">On its face towards the board.</param>
/// <param name="Outer">On its outer face.</param>
internal sealed record WallPoints(int[] Inner, int[] Outer);

/// <summary>The numbers of a housing's points in its network, and what each told body is made of.</summary>
internal sealed class HousingPoints
{
    private readonly double[] _ringAreas;
    private readonly double[] _airVolumes;
    private readonly bool[] _board;

    public HousingPoints(HeatInput input, HeatCoefficients coefficients, ThermalNetwork network)
    {
        double share = coefficients.HeatShare.Value;
        Leds = network.Point(Math.Max(1, input.Leds) * coefficients.LedHeat, share * input.LedWatts);
        Controller = input.ControllerWatts > 0 ? network.Point(coefficients.ControllerHeat, input.ControllerWatts) : null;
        _ringAreas = [.. input.Rings.Select(ring => ring.Area)];
        _board = [.. input.Rings.Select(ring => ring.Board)];
        FirstBoard = Math.Max(0, Array.IndexOf(_board, true));
        double above = (input.AboveToBezel + input.AboveToDiffuser) / 2;
        _airVolumes = [.. input.Rings.Select(ring => ring.Area * (input.BelowBoard + above))];
        double plastic = input.PlasticHeat;
        FloorOutside = Layer(input.Floor.Thickness / 2 * plastic);
        FloorInside = Layer(input.Floor.Thickness / 2 * plastic);
        LowAir = Layer(input.BelowBoard / 2 * coefficients.AirHeat);
        BelowAir = Layer(input.BelowBoard / 2 * coefficients.AirHeat);
        Board = [.. input.Rings.Select(ring => network.Point(
            ring.Area * input.BoardThickness * (ring.Board ? input.BoardHeat : coefficients.AirHeat), ring.OtherWatts))];
        AboveAir = Layer(above / 2 * coefficients.AirHeat);
        HighAir = Layer(above / 2 * coefficients.AirHeat);
        FrontInside = Layer(input.Bezel.Thickness / 2 * plastic);
        FrontOutside = Layer(input.Bezel.Thickness / 2 * plastic);
        Heights =
        [
            input.Floor.Thickness, input.BelowBoard / 2, input.BelowBoard / 2, input.BoardThickness, input.AboveToBezel / 2,
            input.AboveToBezel / 2,
            input.Bezel.Thickness,
        ];
        Side = Wall(input.Rings[^1].Outer + (input.Wall.Thickness / 2));
        Bore = input.HasBore ? Wall(Math.Max(input.Wall.Thickness / 2, input.Rings[0].Inner - (input.Wall.Thickness / 2))) : null;

        int[] Layer(double perArea) => [.. input.Rings.Select(ring => network.Point(ring.Area * perArea, 0))];

        WallPoints Wall(double radius) => new(
            [.. Heights.Select(height => network.Point(Math.PI * radius * height * input.Wall.Thickness * plastic, 0))],
            [.. Heights.Select(height => network.Point(Math.PI * radius * height * input.Wall.Thickness * plastic, 0))]);
    }

    public int Leds { get; }

    public int? Controller { get; }

    // One for each ring.
    public int[] FloorOutside { get; }

    public int[] FloorInside { get; }

    // The air below the board: by the floor, and by the board.
    public int[] LowAir { get; }

    public int[] BelowAir { get; }

    // Where a ring has no board: the air there.
    public int[] Board { get; }

    public int[] AboveAir { get; }

    public int[] HighAir { get; }

    public int[] FrontInside { get; }

    public int[] FrontOutside { get; }

    public WallPoints Side { get; }

    public WallPoints? Bore { get; }

    // Heights of the walls' points, m.
    public double[] Heights { get; }

    public int FirstBoard { get; }

    /// <summary>The walls with the radius of the face towards the board, m.</summary>
    public IEnumerable<(WallPoints Wall, double Radius)> WallsAt(HeatInput input)
    {
        yield return (Side, input.Rings[^1].Outer);
        if (Bore is { } bore)
        {
            yield return (bore, input.Rings[0].Inner);
        }
    }

    /// <summary>Mean over the rings in which the board lies.</summary>
    public double MeanOnBoard(double[] t, int[] layer) => Mean(t, layer, i => _board[i] ? _ringAreas[i] : 0);

    /// <summary>Every body with its points and their weights.</summary>
    public IEnumerable<(HeatBody Body, int[] Points, double[] Weights)> Bodies()
    {
        yield return (HeatBody.Leds, [Leds], [1]);
        if (Controller is int controller)
        {
            yield return (HeatBody.Controller, [controller], [1]);
        }

        int[] with = [.. Enumerable.Range(0, _board.Length).Where(i => _board[i])];
        yield return (HeatBody.Board, [.. with.Select(i => Board[i])], [.. with.Select(i => _ringAreas[i])]);
        yield return (HeatBody.InnerAir, [.. LowAir, .. BelowAir, .. AboveAir, .. HighAir],
            [.. _airVolumes, .. _airVolumes, .. _airVolumes, .. _airVolumes]);
        yield return (HeatBody.FloorInside, FloorInside, _ringAreas);
        yield return (HeatBody.FloorOutside, FloorOutside, _ringAreas);
        yield return (HeatBody.SideInside, Side.Inner, Heights);
        yield return (HeatBody.SideOutside, Side.Outer, Heights);
        yield return (HeatBody.FrontInside, FrontInside, _ringAreas);
        yield return (HeatBody.FrontOutside, FrontOutside, _ringAreas);
        if (Bore is { } bore)
        {
            yield return (HeatBody.BoreInside, bore.Inner, Heights);
            yield return (HeatBody.BoreOutside, bore.Outer, Heights);
        }
    }

    /// <summary>Mean of a layer with weights.</summary>
    public static double Mean(double[] t, int[] layer, Func<int, double> weight)
    {
        double sum = 0;
        double all = 0;
        for (int i = 0; i < layer.Length; i++)
        {
            sum += weight(i) * t[layer[i]];
            all += weight(i);
        }

        return sum / all;
    }
}
