using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;

namespace ShellForge.Physics.Tests.Light;

public class PhotonTests
{
    [Theory]
    [InlineData(0.0, 0)]
    [InlineData(0.85, 0)]
    [InlineData(0.85, 1)]
    public void The_model_agrees_with_photons_within_their_noise(double reflectance, double window)
    {
        // A room with a low wall across it, two LEDs of unlike lobes, one on each side.
        const double half = 6;
        const double z = 7;
        const int bins = 6;
        const int photons = 800_000;
        WallSet walls = new WallSet().Room(half, z, 1).Box(new(0.6, -half, 0), new(1.6, half, 4.5));
        LightMap map = LightModel.Map(Scenes.Of(
            [Scenes.Up(-2.5, 0.5, 120, 3 * window), Scenes.Up(3.5, -1, 80, 2 * window)], Scenes.Square(half, z, 0.25), walls, reflectance));
        double[,] landed = new PhotonTracer(20, walls.Triangles).Land(
            [(new Point3(-2.5, 0.5, 0), 120, 3 * window), (new Point3(3.5, -1, 0), 80, 2 * window)], half, z, bins, reflectance, photons);

        double worst = 0;
        for (int i = 0; i < bins; i++)
        {
            for (int j = 0; j < bins; j++)
            {
                double model = 0;
                for (int k = 0; k < map.Face.Count; k++)
                {
                    Point2 at = map.Face.Middle(k);
                    if ((int)((at.X + half) / 2) == i && (int)((at.Y + half) / 2) == j)
                    {
                        model += map.Irradiance.All[k] * 0.25 * 0.25;
                    }
                }

                // Four standard deviations of a count; 1 % for cells that a shadow's edge crosses, 4 % where windows are drawn as four
                // points or walls throw light at each other patch by patch.
                double slack = window > 0 || reflectance > 0 ? 0.04 : 0.01;
                double photon = landed[i, j] / photons * 2;
                double noise = 4 * Math.Sqrt(Math.Max(1, landed[i, j])) / photons * 2;
                worst = Math.Max(worst, Math.Abs(model - photon) / (noise + (slack * photon)));
            }
        }

        Assert.InRange(worst, 0.01, 1);
    }
}
