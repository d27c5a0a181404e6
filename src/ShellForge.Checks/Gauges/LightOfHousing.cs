using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Physics.Light;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>From board, plan and solids to the light model's plain inputs, and its answers back to circles of LEDs.</summary>
internal static class LightOfHousing
{
    // Side of the grid's cells, mm: a line of plastic; halving it moves contrast by less than 0.01.
    private const double Step = 0.5;

    // Solder mask and parts throw back about this much. Typical: white boards more, black ones less.
    private const double BoardReflectance = 0.2;

    // A side-facing LED's window lies this far off its body, mm, so that its own body does not stand in its light.
    private const double OffBody = 0.05;

    /// <summary>The light; null where the board has no LEDs or no window is lit.</summary>
    /// <param name="housing">The housing.</param>
    /// <param name="step">Side of the grid's cells, mm.</param>
    public static HousingLight? Of(HousingUnderCheck housing, double step = Step)
    {
        HousingPlan plan = housing.Plan;
        ImmutableArray<LedSource> leds = [.. plan.Source.Board.PixelCircles.SelectMany(circle => circle.Pixels.Select(pixel => Source(plan, circle, pixel)))];
        if (leds.IsEmpty || Face(plan, step) is not { } face || face.OpenArea <= 0)
        {
            return null;
        }

        bool cells = plan.Baffle is { Cells: true } && plan.Diffuser.Band is null;
        (ShadowTree solids, ImmutableArray<SurfaceOptics> materials) = Solids(housing);
        FilamentProfile sheet = plan.Diffuser.Filament;
        var scene = new LightScene
        {
            Leds = leds,
            Solids = solids,
            Materials = materials,
            Sheet = Sheet(housing),
            SheetOptics = Optics(sheet),
            Face = face,
            Diffuser = DiffuserOptics.Printed(plan.Diffuser.Thickness, sheet.TransmissionLength),
            Cells = cells,
        };
        LightMap map = LightModel.Map(scene);
        double through = cells ? Optics(plan.Baffle!.Filament).Transmission(plan.Baffle.Wall) : 0;
        return new HousingLight
        {
            Scene = scene,
            Map = map,
            Circles = [.. plan.Source.Board.PixelCircles.Where(circle => Shines(plan, circle)).Select(circle => Judged(plan, scene, map, circle))],
            Leaks = LightLeaks.Of(scene, map),
            Crosstalk = map.Crosstalk + through,
            ThroughCellWall = through,
        };
    }

    private static bool Shines(HousingPlan plan, PixelCircle circle) =>
        !circle.Pixels.IsEmpty && (plan.Diffuser.Band is null ? circle.Facing == PixelFacing.Up : circle.Facing != PixelFacing.Up);

    private static LedSource Source(HousingPlan plan, PixelCircle circle, Pixel pixel)
    {
        double board = plan.Stack.BoardTop;
        if (circle.Facing == PixelFacing.Up)
        {
            return new LedSource(
                new Point3(pixel.At.X, pixel.At.Y, board + circle.Led.Height), new Point3(0, 0, 1),
                circle.Led.ViewingAngleDegrees, circle.Led.WindowWidth);
        }

        double radius = pixel.At.Length;
        Point2 outward = radius > 0 ? (1 / radius) * pixel.At : new Point2(1, 0);
        Point2 along = circle.Facing == PixelFacing.Out ? outward : -1 * outward;
        Point2 at = pixel.At + (((Math.Min(circle.Led.Length, circle.Led.Width) / 2) + OffBody) * along);

        // Side-facing windows are as low as the package: the profile's width would stand out of it.
        double axis = circle.Led.AxisHeight ?? (circle.Led.Height / 2);
        return new LedSource(
            new Point3(at.X, at.Y, board + axis), new Point3(along.X, along.Y, 0), circle.Led.ViewingAngleDegrees,
            Math.Min(circle.Led.WindowWidth, axis));
    }

    private static ReceiverGrid? Face(HousingPlan plan, double step)
    {
        if (plan.Diffuser.Band is not { } band)
        {
            return plan.Cover.Window.IsEmpty ? null : ReceiverGrid.Flat(plan.Cover.Window, plan.Stack.DiffuserInner, step);
        }

        if (plan.Shell.Round is not { } round)
        {
            return null;
        }

        double radius = band.ThroughBore ? round.BoreInner + plan.Diffuser.Thickness : round.Outer - plan.Diffuser.Thickness;
        return ReceiverGrid.Band(radius, band.Bottom, band.Top, step, litFromInside: !band.ThroughBore, _ => true);
    }

    private static (ShadowTree Solids, ImmutableArray<SurfaceOptics> Materials) Solids(HousingUnderCheck housing)
    {
        var builder = new ShadowTreeBuilder();
        var materials = ImmutableArray.CreateBuilder<SurfaceOptics>();
        foreach (MadePart part in InScene(housing))
        {
            builder.Add(part.AssembledMesh, materials.Count);
            materials.Add(Optics(part.Plan.Filament));
        }

        CircuitBoard board = housing.Board.Board;
        StackPlan stack = housing.Plan.Stack;
        Add(builder, board.Outline.Region, stack.BoardBottom, stack.BoardTop, materials.Count);
        foreach (BoardBody body in BoardBody.Of(housing.Plan).Where(body => body.Side == BoardSide.Top && board.Parts.Any(part => part.Ref == body.Ref)))
        {
            Add(builder, body.Outline, body.FromZ, body.ToZ, materials.Count);
        }

        materials.Add(new SurfaceOptics(BoardReflectance, 0));
        return (builder.Build(), materials.ToImmutable());
    }

    /// <summary>Name of the part that a material of the scene is; null for the board and what is on it.</summary>
    public static string? PartOf(HousingUnderCheck housing, int material) => InScene(housing).ElementAtOrDefault(material)?.Name;

    // Materials are numbered in this order.
    private static IEnumerable<MadePart> InScene(HousingUnderCheck housing) => housing.SoundParts.Where(part => part.Name != PartNames.Diffuser);

    // The diffuser as a part of its own, printed or cut: its rim dims what passes the bezel over it.
    private static ShadowTree Sheet(HousingUnderCheck housing)
    {
        var builder = new ShadowTreeBuilder();
        if (housing.Part(PartNames.Diffuser) is { } sheet)
        {
            builder.Add(sheet.AssembledMesh, 0);
        }
        else if (housing.Plan.Diffuser is { Fit: DiffuserFit.CutSheet } cut)
        {
            double inner = housing.Plan.Stack.DiffuserInner;
            Add(builder, cut.Outline, inner, inner + cut.Thickness, 0);
        }

        return builder.Build();
    }

    private static void Add(ShadowTreeBuilder builder, Region outline, double from, double to, int material)
    {
        if (to > from && Shapes.Extrude(outline, from, to) is SourceSolid source)
        {
            for (int i = 0; i < source.Triangles.Length; i += 3)
            {
                builder.Add(
                    source.Vertices[source.Triangles[i]], source.Vertices[source.Triangles[i + 1]], source.Vertices[source.Triangles[i + 2]],
                    material);
            }
        }
    }

    private static SurfaceOptics Optics(FilamentProfile filament) => new(filament.Reflectance, filament.TransmissionLength, DarkFrom(filament));

    // Black and other dark colours by their transmission lengths, 0.02 and 0.08 mm in the shipped profiles. White and natural scatter, and are
    // dark at no thickness that is printed.
    private static double DarkFrom(FilamentProfile filament) => (double)filament.TransmissionLength switch
    {
        <= 0.03 => OpaqueThickness.Black,
        <= 0.12 => OpaqueThickness.Other,
        _ => double.PositiveInfinity,
    };

    private static CircleLight Judged(HousingPlan plan, LightScene scene, LightMap map, PixelCircle circle)
    {
        PitchLine line = scene.Cells ? Line(plan, circle).InCells(circle.Pitch, plan.Baffle!.Wall) : Line(plan, circle);
        LightMap judged = scene.Cells ? LightModel.Map(scene with { Face = line.OnlyOf(map.Face, map.Diffuser.Spread) }) : map;
        (Evenness along, Point2? least) = Evenness.AlongWithLeast(judged, line);
        double half = plan.Diffuser.Band is { } band ? (band.Top - band.Bottom) / 2 : circle.Pitch / 2;
        return new CircleLight(
            circle, along, Evenness.Across(map, line, half), least is { } place ? map.Face.At(place.X, place.Y).At : null);
    }

    private static PitchLine Line(HousingPlan plan, PixelCircle circle)
    {
        if (plan.Diffuser.Band is null)
        {
            return circle.Count == 1 ? PitchLine.Row(circle.Pixels.Select(pixel => pixel.At), circle.Pitch) : PitchLine.Circle(circle.Pixels.Select(pixel => pixel.At), circle.Count);
        }

        double radius = plan.Diffuser.Band.ThroughBore
            ? plan.Shell.Round!.BoreInner + plan.Diffuser.Thickness : plan.Shell.Round!.Outer - plan.Diffuser.Thickness;
        double around = 2 * Math.PI * radius;
        double z = plan.Stack.BoardTop + (circle.Led.AxisHeight ?? (circle.Led.Height / 2));
        return PitchLine.Row(
            circle.Pixels.Select(pixel => new Point2(Angle.Of(pixel.At).Normalized.Degrees / 360 * around, z)),
            around / Math.Max(1, circle.Count));
    }
}
