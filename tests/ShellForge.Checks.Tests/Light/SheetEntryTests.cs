using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;
using Xunit.Abstractions;

namespace ShellForge.Checks.Tests.Light;

/// <summary>What a sheet passes of a beam, by its direction, beside photons that walk through a cloud with faces.</summary>
public class SheetEntryTests(ITestOutputHelper output)
{
    private const int Photons = 150_000;

    // What the law itself may be off, as a share: of a sheet of three mean ways a hundredth at grazing light.
    private const double Law = 0.012;
    private const double Sigmas = 3;

    [Theory]
    [InlineData(0.3)]
    [InlineData(1.2)]
    public void A_beam_passes_a_thin_and_a_thick_sheet_as_photons_do_whichever_way_it_comes(double thickness)
    {
        (double diffuse, double noiseOfDiffuse) = Traced(thickness, null);
        Assert.All([1, 0.85, 0.7, 0.5, 0.35], cosine =>
        {
            (double passes, double noise) = Traced(thickness, cosine);
            double traced = passes / diffuse;
            double ours = OfModel(cosine);
            output.WriteLine(FormattableString.Invariant($"{thickness} mm, cosine {cosine}: model {ours:0.000}, photons {traced:0.000}"));
            Assert.InRange(ours / traced, 1 - Law - (Sigmas * (noise + noiseOfDiffuse)), 1 + Law + (Sigmas * (noise + noiseOfDiffuse)));
        });
    }

    // Share that leaves in front, and its noise as a share of it.
    private static (double Passes, double Noise) Traced(double thickness, double? cosine)
    {
        const double radius = 2000;
        var dice = new Random(11);
        var sheet = new ScatteringSheet(dice) { Window = (radius - 500, radius + 500), Faces = (0, thickness), Collar = (0.1, 0.1, 0) };
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < Photons; i++)
        {
            (double x, double y, double z) = (radius, 0, 0);
            double dz = cosine ?? Math.Sqrt(dice.NextDouble());
            (double dx, double dy) = (0, Math.Sqrt(1 - (dz * dz)));
            (int side, double weight) = sheet.Follow(ref x, ref y, ref z, ref dx, ref dy, ref dz, 1);
            (sum, squares) = side > 0 ? (sum + weight, squares + (weight * weight)) : (sum, squares);
        }

        double mean = sum / Photons;
        return (mean, Math.Sqrt(((squares / Photons) - (mean * mean)) / Photons) / mean);
    }

    // What is seen of a narrow beam over what would be if it came from everywhere.
    private static double OfModel(double cosine)
    {
        const double height = 20;
        double sine = Math.Sqrt(1 - (cosine * cosine));
        var beam = new LedSource(new Point3(-height * sine / cosine, 0, 0), new Point3(sine, 0, cosine), 2, 0);
        var sheet = new DiffuserOptics(0.3, 0.65, 0);
        LightMap map = LightModel.Map(new LightScene
        {
            Leds = [beam],
            Solids = ShadowTree.Empty,
            Materials = [],
            Face = ReceiverGrid.Flat(new Box2(new Point2(-6, -6), new Point2(6, 6)), height, 0.25, _ => true),
            Diffuser = sheet,
        });
        return map.SeenShare / (sheet.Transmission * map.DirectShare);
    }
}
