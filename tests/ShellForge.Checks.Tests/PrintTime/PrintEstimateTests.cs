using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Checks.Tests.Print;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.PrintTime;

public sealed class PrintEstimateTests
{
    private static readonly FilamentProfile Filament = WrittenBoard.Shipped.Filaments.Find("petg-black")!;
    private static readonly PrinterProfile Printer = KnownShapes.Printer;

    private static Solid Block => Shapes.Box(new Point3(0, 0, 0), new Point3(40, 40, 20));

    [Fact]
    public void A_solid_block_weighs_what_its_lines_and_infill_weigh()
    {
        // 40 x 40 x 20: 4 lines round it, 4 layers under and over, infill between; the layer over the infill is of threads as thick as the
        // nozzle. Strokes end a quarter of a line into the innermost line. They are joined at their ends: two sides' length a layer.
        const double height = 0.2;
        double spacing = WallLines.Spacing(Printer, height);
        double section = spacing * height;
        double walls = 1600 - Math.Pow(40 - (8 * spacing), 2);
        double side = 40 - (8 * spacing) - (0.5 * spacing);
        double solid = Math.Pow(side + spacing, 2) * height;
        double threads = solid * Math.PI * 0.04 / section;
        double infill = (0.2 * side * side * height) + (2 * side * section);
        double skirt = ((4 * 40) + (2 * Math.PI * 6)) * section;
        double volume = (walls * 20) + (7 * solid) + threads + (92 * infill) + skirt;
        PrintEstimate estimate = Of(Block, Printer);
        Assert.Equal(volume * Filament.Density / 1000, estimate.Grams, 0.01 * estimate.Grams);
        Assert.Equal(estimate.Grams * 1000 / Filament.Density / (Math.PI * 1.75 * 1.75 / 4) / 1000, estimate.FilamentMetres, 1e-9);
    }

    [Fact]
    public void Skin_under_a_step_is_solid()
    {
        // Over the lower half's rim the four layers below the step are solid; under the upper half they are infill.
        Solid stepped =
            Shapes.Box(new Point3(0, 0, 0), new Point3(40, 40, 10)).And(Shapes.Box(new Point3(10, 10, 10), new Point3(30, 30, 20)));
        Solid low = Shapes.Box(new Point3(0, 0, 0), new Point3(40, 40, 10));
        Solid high = Shapes.Box(new Point3(10, 10, 0), new Point3(30, 30, 10));
        double apart = Of(low, Printer).Grams + Of(high, Printer).Grams;

        // On one another they save the skins between them within the upper block's walls: 4 under, 4 over, laid as infill instead.
        double saved = 0.8 * 8 * 0.2 * Math.Pow(20 - (2 * 4 * WallLines.Spacing(Printer, 0.2)), 2) * Filament.Density / 1000;
        Assert.Equal(apart - saved, Of(stepped, Printer).Grams, 0.03 * apart);
    }

    [Fact]
    public void Every_number_of_the_drive_changes_time_or_mass()
    {
        // A post and a slab with a hole over a narrower foot: small loops, bridges, infill, short layers, long moves.
        PartLayers layers = KnownShapes.Layers(Shapes.Box(new Point3(0, 0, 0), new Point3(30, 30, 3))
            .And(Shapes.Box(new Point3(-8, 0, 3), new Point3(30, 30, 8)))
            .And(Shapes.Box(new Point3(10, 10, 8), new Point3(15, 15, 12)))
            .And(Shapes.Box(new Point3(23, 23, 8), new Point3(28, 28, 12)))
            .Less(Shapes.Box(new Point3(3, 3, -1), new Point3(8, 8, 9))));
        PrinterMotion drive = Printer.Motion;
        PrintEstimate now = PrintEstimate.Of(layers, Printer, Filament).Started(Printer).Changed(layers, layers, Printer, Filament);
        PrinterMotion[] others =
        [
            drive with { Perimeters = Less(drive.Perimeters, 1) }, drive with { SkinLayers = Less(drive.SkinLayers, 1) },
            drive with { Infill = Half(drive.Infill) },
            drive with { SpeedOuter = Half(drive.SpeedOuter) }, drive with { SpeedInner = Half(drive.SpeedInner) },
            drive with { SpeedSmall = Half(drive.SpeedSmall) },
            drive with { SpeedSkin = Half(drive.SpeedSkin) }, drive with { SpeedTop = Half(drive.SpeedTop) },
            drive with { SpeedInfill = Half(drive.SpeedInfill) },
            drive with { SpeedBridge = Half(drive.SpeedBridge) }, drive with { SpeedFirstLayer = Half(drive.SpeedFirstLayer) },
            drive with { SpeedTravel = Half(drive.SpeedTravel) }, drive with { Acceleration = Half(drive.Acceleration) },
            drive with { TravelAcceleration = Half(drive.TravelAcceleration) }, drive with { CornerStep = Half(drive.CornerStep) },
            drive with { LayerTime = Half(drive.LayerTime) }, drive with { SpeedLeast = Half(drive.SpeedLeast) },
            drive with { Retraction = Half(drive.Retraction) },
            drive with { RetractionSpeed = Half(drive.RetractionSpeed) }, drive with { RetractionFrom = new Sourced(100, "") },
            drive with { StartTime = Half(drive.StartTime) }, drive with { ChangeTime = Half(drive.ChangeTime) },
            drive with { ChangePlastic = Half(drive.ChangePlastic) },
        ];
        Assert.Equal(typeof(PrinterMotion).GetProperties().Length, others.Length);
        Assert.All(others, other =>
        {
            PrinterProfile printer = Printer with { Motion = other };
            PrintEstimate then = PrintEstimate.Of(layers, printer, Filament).Started(printer).Changed(layers, layers, printer, Filament);
            Assert.NotEqual((now.Grams, now.Minutes), (then.Grams, then.Minutes));
        });
    }

    [Fact]
    public void Filament_changes_once_in_each_layer_that_holds_both()
    {
        PartLayers low = KnownShapes.Layers(Shapes.Box(new Point3(0, 0, 0), new Point3(20, 20, 2)));
        PartLayers tall = KnownShapes.Layers(Block);
        PrintEstimate alone = PrintEstimate.Of(low, Printer, Filament);
        PrintEstimate both = alone.Changed(low, tall, Printer, Filament);
        Assert.Equal(10, both.Changes);
        Assert.Equal(alone.Minutes + (10 * Printer.Motion.ChangeTime / 60), both.Minutes, 1e-9);
        Assert.Equal(alone.Grams + (10 * Printer.Motion.ChangePlastic * Filament.Density / 1000), both.Grams, 1e-9);
    }

    private static PrintEstimate Of(Solid shape, PrinterProfile printer) => PrintEstimate.Of(KnownShapes.Layers(shape), printer, Filament);

    private static Sourced Half(Sourced number) => new(number / 2, number.Source);

    private static Sourced Less(Sourced number, double by) => new(number - by, number.Source);
}
