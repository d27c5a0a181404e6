namespace ShellForge.Physics.Heat;

/// <summary>A housing as bodies and conductances: LEDs, controller, board, inner air, both faces of every wall, the surrounding air.</summary>
internal sealed class HousingNetwork
{
    private const double StefanBoltzmann = 5.670374419e-8; // W/m2K4, CODATA 2018
    private const double Kelvin = 273.15;
    private const double Gravity = 9.81;

    // A smaller difference drives no flow that could be told from a draught, K.
    private const double LeastDifference = 0.2;

    private readonly HeatCoefficients coefficients;

    public HousingNetwork(HeatInput input, HeatCoefficients coefficients)
    {
        this.coefficients = coefficients;
        double share = coefficients.HeatShare.Value;
        Leds = Network.Body("leds", Math.Max(1, input.Leds) * coefficients.LedHeat, share * input.LedWatts);
        Controller = input.ControllerWatts > 0 ? Network.Body("controller", coefficients.ControllerHeat, input.ControllerWatts) : null;
        Board = Network.Body("board", input.BoardHeatCapacity, input.OtherWatts);
        Air = Network.Body("inner air", Math.Max(1, coefficients.AirHeat * input.AirVolume), 0);
        Network.Join(Leds, Board, Fixed(Math.Max(1, input.Leds) / coefficients.LedToBoard.Value));
        if (Controller is int controller)
        {
            Network.Join(controller, Board, Fixed(1 / coefficients.ControllerToBoard.Value));
        }

        Network.Join(Board, Air, Fixed(2 * input.BoardArea * coefficients.InnerConvection.Value));
        double innerArea = input.Walls.Sum(wall => wall.InnerArea);
        foreach (HousingWall wall in input.Walls)
        {
            JoinWall(input, wall, innerArea);
        }

        if (input.Vents.Rise > 0)
        {
            Network.Join(Air, ThermalNetwork.Outside, Chimney(input.Vents));
        }
    }

    public ThermalNetwork Network { get; } = new();

    public int Leds { get; }

    public int? Controller { get; }

    public int Board { get; }

    public int Air { get; }

    /// <summary>Inner and outer face of each wall.</summary>
    public List<(HousingWall Wall, int Inner, int Outer)> Walls { get; } = [];

    private void JoinWall(HeatInput input, HousingWall wall, double innerArea)
    {
        int inner = Network.Body($"{wall.Name} inside", wall.HeatCapacity / 2, 0);
        int outer = Network.Body($"{wall.Name} outside", wall.HeatCapacity / 2, 0);
        Walls.Add((wall, inner, outer));
        Network.Join(Air, inner, Fixed(wall.InnerArea * coefficients.InnerConvection.Value));

        // Both faces of the board see the walls, each as much as its area says. Source: grey surfaces that face each other.
        double e = coefficients.Emissivity.Value;
        double exchange = 1 / ((2 / e) - 1);
        double seen = 2 * input.BoardArea * wall.InnerArea / innerArea;
        Network.Join(Board, inner, (a, b) => seen * exchange * Radiation(a, b));
        Network.Join(inner, outer, Fixed(wall.Conductivity * wall.InnerArea / wall.Thickness));
        if (wall.Direction != FaceDirection.Covered)
        {
            double factor = wall.Direction switch
            {
                FaceDirection.Up => coefficients.UpConvection.Value,
                FaceDirection.Down => coefficients.DownConvection.Value,
                _ => coefficients.UprightConvection.Value,
            };
            Network.Join(outer, ThermalNetwork.Outside, (a, b) =>
                wall.OuterArea * ((factor * Root4(Math.Max(LeastDifference, Math.Abs(a - b)) / wall.Length)) + (e * Radiation(a, b))));
        }
    }

    // Warm air leaves as fast as its lift drives it through both openings in turn.
    // Source: Q = Cd A sqrt(2 g H dT / T), A = Ain Aout / sqrt(Ain2 + Aout2).
    private Func<double, double, double> Chimney(VentOpenings vents)
    {
        double area = vents.InletArea * vents.OutletArea
            / Math.Max(double.Epsilon, Math.Sqrt((vents.InletArea * vents.InletArea) + (vents.OutletArea * vents.OutletArea)));
        return (inner, outer) => coefficients.AirHeat * coefficients.VentDischarge.Value * area
            * Math.Sqrt(2 * Gravity * vents.Rise * Math.Max(0, inner - outer) / (Kelvin + outer));
    }

    private static Func<double, double, double> Fixed(double conductance) => (_, _) => conductance;

    private static double Root4(double value) => Math.Sqrt(Math.Sqrt(value));

    // sigma (Ta2 + Tb2)(Ta + Tb), so that times (Ta - Tb) it is the difference of fourth powers.
    private static double Radiation(double a, double b)
    {
        double ta = a + Kelvin;
        double tb = b + Kelvin;
        return StefanBoltzmann * ((ta * ta) + (tb * tb)) * (ta + tb);
    }
}
