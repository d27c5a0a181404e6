using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Tests.Light;

/// <summary>How photons of the tests' own tracers leave LEDs and are thrown back by walls.</summary>
/// <param name="dice">Draws them.</param>
internal sealed class Photons(Random dice)
{
    // Below this weight only one photon of so many is followed on, for all of them.
    private const double Light = 0.1;
    private const int Of = 5;

    /// <summary>Place and direction of a photon that leaves an LED.</summary>
    /// <param name="led">Its window and lobe.</param>
    /// <param name="pixel">Where it lies.</param>
    /// <param name="top">z of its window, mm.</param>
    public (Point3 From, Point3 Along) Leaving(LedProfile led, Pixel pixel, double top)
    {
        double half = led.WindowWidth / 2;
        Point2 x = Point2.Polar(half, pixel.Rotation);
        Point2 y = Point2.Polar(half, pixel.Rotation + Angle.FromDegrees(90));
        Point2 plan = pixel.At + (((2 * dice.NextDouble()) - 1) * x) + (((2 * dice.NextDouble()) - 1) * y);
        double m = Math.Log(0.5) / Math.Log(Math.Cos(led.ViewingAngleDegrees / 2 * Math.PI / 180));
        double cosine = Math.Pow(dice.NextDouble(), 1 / (m + 1));
        double flat = Math.Sqrt(1 - (cosine * cosine));
        double turn = 2 * Math.PI * dice.NextDouble();
        return (new Point3(plan.X, plan.Y, top), new Point3(flat * Math.Cos(turn), flat * Math.Sin(turn), cosine));
    }

    /// <summary>Throws a photon back from a wall that scatters evenly.</summary>
    /// <param name="reflectance">What the wall throws back, 0 to 1.</param>
    /// <param name="facing">The wall's normal on the photon's side.</param>
    /// <param name="weight">What is left of the photon.</param>
    /// <param name="along">Its direction.</param>
    /// <returns>Whether it is followed on.</returns>
    public bool Bounces(double reflectance, Point3 facing, ref double weight, ref Point3 along)
    {
        weight *= reflectance;
        if (weight < Light)
        {
            if (dice.NextDouble() > 1.0 / Of)
            {
                return false;
            }

            weight *= Of;
        }

        double h = (2 * dice.NextDouble()) - 1;
        double beside = Math.Sqrt(1 - (h * h));
        double turn = 2 * Math.PI * dice.NextDouble();
        along = facing + new Point3(beside * Math.Cos(turn), beside * Math.Sin(turn), h);
        along = (1 / along.Length) * along;
        return true;
    }
}
