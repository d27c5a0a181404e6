using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Physics.Light;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>From board, plan and solids to the light model's plain inputs, and its answers back to circles of LEDs.</summary>
internal static class LightOfHousing
{
    // Direct light of an LED that reaches the window, as a share, below which it lies in the dark.
    private const double Dark = 0.02;

    // Side of the grid's cells, mm: a line of plastic; halving it moves contrast by less than 0.01.
    private const double Step = 0.5;

    // A ray ahead of an LED ends here, mm; a diffuser of one body with the cover is met at its face: so near it is the window.
    private const double Longest = 100;
    private const double OnFace = 0.05;

    // So far from the band's face a rib is looked for, mm.
    private const double InRib = 0.05;

    // A bezel that throws back less takes the light that a fused diffuser scatters into it.
    private const double DarkReflectance = 0.5;

    // What plated heads of screws throw back. Typical: black ones less.
    private const double HeadReflectance = 0.5;

    // The diffuser is looked at from this far before its face, mm: farther than any collar on it is thick.
    private const double BeforeSheet = 2;

    // What the model keeps of a cell and of a triangle, about.
    private const long BytesOfCell = 64;
    private const long BytesOfTriangle = 200;

    // Corners of round faces stand out by less than this, mm.
    private const double Flatness = 0.05;

    // A side-facing LED's window lies this far off its body, mm, so that its own body does not stand in its light.
    private const double OffBody = 0.05;

    /// <summary>The light; null where the board has no LEDs or no window is lit.</summary>
    /// <param name="housing">The housing.</param>
    /// <param name="step">Side of the grid's cells, mm.</param>
    public static HousingLight? Of(HousingUnderCheck housing, double step = Step)
    {
        HousingLight? light = housing.Memory.Of(LightKey.Of(housing, step), () => Solved(housing, step), BytesOf);

        // It may be the light of an older housing, whose circles of LEDs are those of this board but for being other objects.
        ImmutableArray<PixelCircle> circles = housing.Plan.Source.Board.PixelCircles;
        return light is null ? null : light with
        {
            Circles = [.. light.Circles.Select(each => each.Number is int number ? each with { Circle = circles[number] } : each)],
        };
    }

    // What shadows, cells and patches of the model take, about.
    private static long BytesOf(HousingLight? light) =>
        light is null ? 0 : (BytesOfCell * light.Map.Face.Count) + (BytesOfTriangle * light.Scene.Solids.TriangleCount);

    private static HousingLight? Solved(HousingUnderCheck housing, double step)
    {
        HousingPlan plan = housing.Plan;
        ImmutableArray<LedSource> leds =
            [.. plan.Source.Board.PixelCircles.SelectMany(circle => circle.Pixels.Select(pixel => Source(plan, circle, pixel)))];
        if (leds.IsEmpty || Face(plan, step) is not { } face || face.OpenArea <= 0)
        {
            return null;
        }

        bool cells = plan.Baffle is { Cells: true } && plan.Diffuser.Band is null;
        (ShadowTree solids, ImmutableArray<SurfaceOptics> materials) = Solids(housing);
        SurfaceOptics sheet = FilamentOptics.Of(plan.Diffuser.Filament);
        (ImmutableArray<float> thickness, ImmutableArray<float> nearer) = SheetAt(housing, face);
        var scene = new LightScene
        {
            Leds = leds,
            Solids = solids,
            Materials = materials,
            Sheet = Sheet(housing),
            SheetOptics = sheet,
            Face = nearer.Any(step => step > 0) ? face.Stepped(nearer) : face,
            Thickness = thickness,
            DarkRim = plan.Diffuser.Fit == DiffuserFit.PrintedIn && plan.Source.Print.Shell.Reflectance < DarkReflectance,
            GoesOn = plan.Diffuser.Fit is DiffuserFit.DropIn or DiffuserFit.CutSheet,
            Diffuser = DiffuserOptics.Printed(plan.Diffuser.Thickness, sheet),
            Cells = cells,
        };
        LightMap map = LightModel.Map(scene);
        double through = cells ? FilamentOptics.Of(plan.Baffle!.Filament).Transmission(plan.Baffle.Wall) : 0;
        return new HousingLight
        {
            Scene = scene,
            Map = map,
            Circles = plan.Diffuser.Field is { } field
                ? [JudgedField(plan, scene, map, field)]
                : [.. plan.Source.Board.PixelCircles.Where(circle => Shines(plan, circle) && IsLit(plan, map, circle))
                    .Select(circle => Judged(plan, scene, map, circle))],
            Leaks = LightLeaks.Of(scene, map),
            Crosstalk = map.Crosstalk + through,
            ThroughCellWall = through,
        };
    }

    /// <summary>Whether a circle of LEDs looks to where the window is.</summary>
    public static bool Shines(HousingPlan plan, PixelCircle circle) =>
        !circle.Pixels.IsEmpty && (plan.Diffuser.Band is null ? circle.Facing == PixelFacing.Up : circle.Facing != PixelFacing.Up);

    /// <summary>Whether something opaque, not the diffuser, lies straight ahead of an LED's middle.</summary>
    public static bool IsCovered(HousingLight light, int led)
    {
        LedSource source = light.Scene.Leds[led];
        Point3 from = source.At + (OffBody * source.Axis);
        return light.Scene.Solids.Meets(from, source.Axis, Longest, out SurfaceHit hit)
            && !(light.Scene.Face.LeavesAfter(from, source.Axis) - OnFace < hit.Distance);
    }

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
        Point2 at = pixel.At + ((Reach(circle, pixel, along) + OffBody) * along);

        // Side-facing windows are as low as the package: the profile's width would stand out of it.
        double axis = circle.Led.AxisHeight ?? (circle.Led.Height / 2);
        return new LedSource(
            new Point3(at.X, at.Y, board + axis), new Point3(along.X, along.Y, 0), circle.Led.ViewingAngleDegrees,
            Math.Min(circle.Led.WindowWidth, axis));
    }

    // From the middle of an LED's body to its end in a direction.
    private static double Reach(PixelCircle circle, Pixel pixel, Point2 along)
    {
        Point2 own = along.Turned(-1 * pixel.Rotation);
        return Math.Min(
            own.X == 0 ? double.PositiveInfinity : circle.Led.Length / 2 / Math.Abs(own.X),
            own.Y == 0 ? double.PositiveInfinity : circle.Led.Width / 2 / Math.Abs(own.Y));
    }

    /// <summary>Holes of the maker's own through the lit window.</summary>
    public static IEnumerable<Region> HolesIn(HousingPlan plan) => plan.Openings.OfType<FrontOpeningPlan>()
        .Where(opening => opening.InWindow).Select(opening => opening.Outline);

    private static ReceiverGrid? Face(HousingPlan plan, double step)
    {
        if (plan.Diffuser.Band is not { } band)
        {
            if (plan.Cover.Window.IsEmpty)
            {
                return null;
            }

            // Through a hole of the maker's own no diffuser scatters what falls there.
            Region[] holes = [.. HolesIn(plan)];
            var face = ReceiverGrid.Flat(plan.Cover.Window, plan.Stack.DiffuserInner, step);
            return holes.Length == 0 ? face : face.WithHoles(at => holes.Any(hole => hole.Contains(at)));
        }

        if (plan.Shell.Round is not { } round)
        {
            return null;
        }

        double radius = band.ThroughBore ? round.BoreInner + plan.Diffuser.Thickness : round.Outer - plan.Diffuser.Thickness;
        return ReceiverGrid.Band(radius, band.Bottom, band.Top, step, litFromInside: !band.ThroughBore,
            place => !OnRib(band, radius, place.X));
    }

    // Ribs that hold the cover over the band stay dark whatever the LEDs do, so no light is asked of them.
    private static bool OnRib(BandPlan band, double radius, double arc)
    {
        Angle at = Angle.FromDegrees(arc / (2 * Math.PI * radius) * 360);
        return band.Pillars.Contains(Point2.Polar(radius + (band.ThroughBore ? InRib : -InRib), at));
    }

    private static (ShadowTree Solids, ImmutableArray<SurfaceOptics> Materials) Solids(HousingUnderCheck housing)
    {
        var builder = new ShadowTreeBuilder();
        var materials = ImmutableArray.CreateBuilder<SurfaceOptics>();
        foreach (MadePart part in InScene(housing))
        {
            builder.Add(part.MeshInLight, materials.Count);
            materials.Add(FilamentOptics.Of(part.Plan.Filament));
        }

        CircuitBoard board = housing.Board.Board;
        StackPlan stack = housing.Plan.Stack;
        Add(builder, board.Outline.Region, stack.BoardBottom, stack.BoardTop, materials.Count);
        foreach (BoardBody body in BodiesOnTop(housing))
        {
            Add(builder, body.Outline, body.FromZ, body.ToZ, materials.Count);
        }

        materials.Add(new SurfaceOptics(SurfaceOptics.BoardReflectance, 0));
        foreach (BoardBody head in HeadsOnTop(housing))
        {
            Add(builder, head.Outline, head.FromZ, head.ToZ, materials.Count);
        }

        materials.Add(new SurfaceOptics(HeadReflectance, 0));
        foreach (PixelCircle circle in board.PixelCircles)
        {
            foreach (Pixel pixel in circle.Pixels)
            {
                Add(builder, PartEnvelope.OutlineOf(pixel, circle), stack.BoardTop, stack.BoardTop + circle.Led.Height, materials.Count);
            }

            materials.Add(new SurfaceOptics(circle.Led.BodyReflectance, 0));
        }

        return (builder.Build(), materials.ToImmutable());
    }

    // How thick the diffuser is at each cell of its face, and how much nearer to the LEDs than that face it begins, by rays through its
    // mesh: a collar that locks it into the bezel makes it thicker along the window's edge.
    private static (ImmutableArray<float> Thickness, ImmutableArray<float> Nearer) SheetAt(HousingUnderCheck housing, ReceiverGrid face)
    {
        DiffuserPlan plan = housing.Plan.Diffuser;
        if ((plan.Fit == DiffuserFit.OneWithCover ? housing.Part(PartNames.Cover) : housing.Part(PartNames.Diffuser)) is not { } part)
        {
            return ([], []);
        }

        var builder = new ShadowTreeBuilder();
        builder.Add(part.MeshInLight, 0);
        ShadowTree body = builder.Build();
        float[] thickness = new float[face.Count];
        float[] nearer = new float[face.Count];
        for (int cell = 0; cell < face.Count; cell++)
        {
            thickness[cell] = (float)plan.Thickness;
            if (!face.IsOpen(cell))
            {
                continue;
            }

            Point2 middle = face.Middle(cell);
            (Point3 at, Point3 normal) = face.At(middle.X, middle.Y);
            Point3 along = -1 * normal;
            if (body.Meets(at + (BeforeSheet * normal), along, BeforeSheet + plan.Thickness, out SurfaceHit front) && front.FromOutside
                && body.Meets(front.At + (Flatness * along), along, BeforeSheet + plan.Thickness, out SurfaceHit back) && !back.FromOutside)
            {
                double step = BeforeSheet - front.Distance;
                nearer[cell] = step > Flatness ? (float)step : 0;
                thickness[cell] = (float)(back.Distance + Flatness);
            }
        }

        return ([.. thickness], [.. nearer]);
    }

    /// <summary>Parts on the LEDs' side of the board.</summary>
    public static IEnumerable<BoardBody> BodiesOnTop(HousingUnderCheck housing) => BoardBody.Of(housing.Plan)
        .Where(body => body.Side == BoardSide.Top && housing.Board.Board.Parts.Any(part => part.Ref == body.Ref));

    /// <summary>Heads of screws on the LEDs' side of the board.</summary>
    public static IEnumerable<BoardBody> HeadsOnTop(HousingUnderCheck housing) =>
        BoardBody.OfHeads(housing.Plan).Where(head => head.Side == BoardSide.Top);

    /// <summary>Name of the part that a material of the scene is; null for the board and what is on it.</summary>
    public static string? PartOf(HousingUnderCheck housing, int material) => InScene(housing).ElementAtOrDefault(material)?.Name;

    // Materials are numbered in this order.
    private static IEnumerable<MadePart> InScene(HousingUnderCheck housing) =>
        housing.SoundParts.Where(part => part.Name != PartNames.Diffuser);

    // The diffuser as a part of its own, printed or cut: its rim dims what passes the bezel over it.
    private static ShadowTree Sheet(HousingUnderCheck housing)
    {
        var builder = new ShadowTreeBuilder();
        if (housing.Part(PartNames.Diffuser) is { } sheet)
        {
            builder.Add(sheet.MeshInLight, 0);
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
                    source.Vertices[source.Triangles[i]], source.Vertices[source.Triangles[i + 1]],
                    source.Vertices[source.Triangles[i + 2]],
                    material);
            }
        }
    }

    // Evenness says nothing of LEDs whose light does not reach the window but for a glimmer: a rule of its own names them.
    private static bool IsLit(HousingPlan plan, LightMap map, PixelCircle circle)
    {
        int first = plan.Source.Board.PixelCircles.TakeWhile(other => !ReferenceEquals(other, circle)).Sum(other => other.Pixels.Length);
        return circle.Pixels.Select((_, i) => map.DirectOf[first + i]).Any(share => share > Dark);
    }

    private static CircleLight Judged(HousingPlan plan, LightScene scene, LightMap map, PixelCircle circle)
    {
        PitchLine line = scene.Cells ? Line(plan, circle).InCells(circle.Pitch, plan.Baffle!.Wall) : Line(plan, circle);
        LightMap judged = scene.Cells ? LightModel.MapPart(scene, map, line.OnlyOf(map.Face, map.Diffuser.Spread)) : map;
        (Evenness along, Point2? least) = Evenness.AlongWithLeast(judged, line);
        double half = plan.Diffuser.Band is { } band ? (band.Top - band.Bottom) / 2 : circle.Pitch / 2;
        return new CircleLight(
            circle, circle.Pixels.Length, along, Evenness.Across(map, line, half),
            least is { } place ? map.Face.At(place.X, place.Y).At : null)
        {
            Number = plan.Source.Board.PixelCircles.TakeWhile(other => !ReferenceEquals(other, circle)).Count(),
        };
    }

    private static CircleLight JudgedField(HousingPlan plan, LightScene scene, LightMap map, LedFieldPlan field)
    {
        PitchLine line = FieldLines.Judged(field, plan.Cover.Window, scene.Cells ? plan.Baffle!.Wall : null);
        LightMap judged = scene.Cells ? LightModel.MapPart(scene, map, line.OnlyOf(map.Face, map.Diffuser.Spread)) : map;
        (Evenness along, Point2? least) = Evenness.AlongWithLeast(judged, line);
        double half = field.Leds.Min(led => led.Pitch) / 2;
        return new CircleLight(
            null, field.Leds.Length, along, Evenness.Across(map, line, half), least is { } place ? map.Face.At(place.X, place.Y).At : null);
    }

    private static PitchLine Line(HousingPlan plan, PixelCircle circle)
    {
        if (plan.Diffuser.Band is null)
        {
            return circle.Count == 1 ? PitchLine.Row(circle.Pixels.Select(pixel => pixel.At), circle.Pitch)
                : PitchLine.Circle(circle.Pixels.Select(pixel => pixel.At), circle.Count);
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
