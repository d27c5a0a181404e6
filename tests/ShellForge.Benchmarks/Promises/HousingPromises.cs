using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Benchmarks.Promises;

/// <summary>
/// What a housing that is to be printed promises, measured on its meshes by means that the rules don't use: parts are closed and whole,
/// LEDs see their window, plugs and screws reach, and it comes apart again.
/// </summary>
internal static class HousingPromises
{
    // Ways beside an axis keep off it by this share of what runs along it, so that contact does not count.
    private const double Share = 0.97;

    // What holds something back is as wide, mm.
    private const double Width = 0.6;

    // Directions round a screw.
    private const int Round = 12;

    /// <summary>Parts that are no closed solids, or in pieces; what is promised of every housing, whatever is found of it.</summary>
    public static IEnumerable<string> Unsound(IEnumerable<MadePart> parts)
    {
        foreach (MadePart part in parts)
        {
            KernelDefect? defect = part.InPrint.Defect;
            if (defect is not null)
            {
                yield return $"{part.Name}: {defect}";
            }
            else if (part.PrintMesh.IsEmpty)
            {
                yield return $"{part.Name} is empty";
            }
            else if (part.Plan.Pieces is { } pieces && Measure.Shells(part.PrintMesh.Mesh) is int bodies && bodies != pieces)
            {
                yield return $"{part.Name} in {bodies} bodies, {pieces} are planned";
            }
        }
    }

    /// <summary>Promises that a housing does not keep.</summary>
    /// <param name="housing">A housing of sound parts.</param>
    public static IEnumerable<string> Broken(HousingUnderCheck housing) =>
        [.. LedsBehindPlastic(housing), .. PlugsStopped(housing), .. ScrewsStopped(housing), .. Shut(housing)];

    /// <summary>LEDs that shine to the front with opaque plastic straight over them.</summary>
    public static IEnumerable<string> LedsBehindPlastic(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        if (plan.Source.Housing.Light.Through == LightThrough.Wall)
        {
            return [];
        }

        Mesh[] opaque = [.. housing.Parts
            .Where(part => part.Name != PartNames.Diffuser
                && !(part.Name == PartNames.Cover && plan.Diffuser.Fit == DiffuserFit.OneWithCover)).Select(part => part.AssembledMesh)];
        return plan.Source.Board.PixelCircles.Where(circle => circle.Facing == PixelFacing.Up)
            .SelectMany(circle => circle.Pixels.Where(pixel =>
        {
            double z = plan.Stack.BoardTop + circle.Led.Height + 0.001;
            int free = new[] { (0.0131, 0.0071), (0.31, 0.02), (-0.31, -0.03), (0.04, 0.31), (-0.05, -0.31) }
                .Count(off => opaque.All(mesh =>
                Rays.Crossed(mesh, new Point3(pixel.At.X + off.Item1, pixel.At.Y + off.Item2, z),
                    new Point3(pixel.At.X + off.Item1, pixel.At.Y + off.Item2, 600)) == 0));
            return free < 3;
        })).Select(pixel => $"{pixel.Ref} does not see the window");
    }

    /// <summary>Plugs whose overmould, coming straight from outside, meets a part before it seats.</summary>
    public static IEnumerable<string> PlugsStopped(HousingUnderCheck housing)
    {
        foreach (PortPlan port in housing.Plan.Ports)
        {
            Point2 along = Point2.Polar(1, port.Faces);
            var left = new Point2(-along.Y, along.X);
            double seat = Math.Max(port.MouthBehind, port.Mouth.SeatDepthWarn) + 0.05;
            double far = seat + port.Mouth.PlugLength + 25;
            double corner = Math.Min(port.Mouth.PlugCornerRadius, Math.Min(port.Mouth.PlugWidth, port.Mouth.PlugHeight) / 2);
            for (int k = 0; k < 2 * Round; k++)
            {
                // All round the overmould, in its middle lines and at its corners.
                var turn = Angle.FromDegrees(360.0 * k / (2 * Round));
                double across = Share * (((port.Mouth.PlugWidth / 2) - corner) * Math.Sign(Math.Round(turn.Cos, 6)) + (corner * turn.Cos));
                double up = Share * (((port.Mouth.PlugHeight / 2) - corner) * Math.Sign(Math.Round(turn.Sin, 6)) + (corner * turn.Sin));
                Point2 start = port.Face + (far * along) + (across * left);
                Point2 end = port.Face + (seat * along) + (across * left);
                MadePart? met = housing.Parts.FirstOrDefault(part => Rays.Crossed(
                    part.AssembledMesh, new Point3(start.X, start.Y, port.AxisZ + up), new Point3(end.X, end.Y, port.AxisZ + up)) > 0);
                if (met is not null)
                {
                    yield return $"the plug of {port.Ref} meets the {met.Name}";
                    break;
                }
            }
        }
    }

    /// <summary>Screws that no driver reaches, that meet plastic on their way in, or that have no plastic round their insert.</summary>
    public static IEnumerable<string> ScrewsStopped(HousingUnderCheck housing)
    {
        foreach (ScrewJointPlan screw in housing.Plan.Screws)
        {
            string loose = screw.IsInTub ? PartNames.Tub : PartNames.Cover;
            double sign = screw.FromFront ? 1 : -1;
            double under = screw.SeatZ + (sign * (screw.Washer ? screw.Screw.WasherThickness : 0));
            double head = under + (sign * screw.Screw.HeadHeight);
            double tip = under - (sign * screw.Length);
            int Met(MadePart part, double radius, double from, double to) => Enumerable.Range(0, Round).Count(k =>
            {
                Point2 at = screw.At + Point2.Polar(radius, Angle.FromDegrees((360.0 * k / Round) + 0.37));
                return Rays.Crossed(part.AssembledMesh, new Point3(at.X, at.Y, from), new Point3(at.X, at.Y, to)) > 0;
            });
            foreach (MadePart part in housing.Parts)
            {
                // The driver comes while only the tub, or at last the cover, is in place.
                if (part.Name == loose && Met(part, Share * screw.Screw.DriverDiameter / 2, head + sign, head + (sign * 300)) > 0)
                {
                    yield return $"no driver reaches {screw.Name} past the {part.Name}";
                }

                if (Met(part, Share * screw.Screw.ThreadDiameter / 2, head, tip) > 0)
                {
                    yield return $"{screw.Name} meets the {part.Name} on its way";
                }
            }

            // Straight down beside the insert's hole there is plastic.
            if (screw.Boss.Hole is { } hole && housing.Parts.FirstOrDefault(part => part.Name == PartNames.Tub) is { } tub)
            {
                double middle = screw.Boss.Top - (hole.Depth / 2);
                int held = Met(tub, (Math.Max(hole.Diameter, hole.MouthDiameter) / 2) + 0.4, middle, -5);
                if (held < Round - 1)
                {
                    yield return string.Create(CultureInfo.InvariantCulture,
                        $"the insert of {screw.Name} has plastic round {held} of {Round} directions");
                }
            }
        }
    }

    /// <summary>Parts that hold each other where they should come apart.</summary>
    public static IEnumerable<string> Shut(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        if (!plan.Closure.Reopens)
        {
            yield break;
        }

        Mesh[] board = [.. OnBoard(housing)];
        MadePart tub = housing.Parts.First(part => part.Name == PartNames.Tub);
        MadePart? baffle = housing.Parts.FirstOrDefault(part => part.Name == PartNames.Baffle);
        bool together = baffle is not null && plan.Closure.TurnsCover;
        Mesh[] cover = [.. housing.Parts
            .Where(part => part.Name is PartNames.Cover or PartNames.Diffuser || (together && part.Name == PartNames.Baffle))
            .Select(part => part.AssembledMesh)];
        Mesh[] stays = [tub.AssembledMesh, .. board, .. baffle is not null && !together ? [baffle.AssembledMesh] : Array.Empty<Mesh>()];
        if (Caught(plan, cover, plan.Closure.Entry?.Turn ?? Angle.Zero, stays) is { } over)
        {
            yield return $"the cover does not come off: {over}";
        }

        if (baffle is not null && !together
            && Caught(plan, [baffle.AssembledMesh], Angle.Zero, [tub.AssembledMesh, .. board]) is { } caught)
        {
            yield return $"the baffle does not come out: {caught}";
        }
    }

    private static string? Caught(HousingPlan plan, Mesh[] moves, Angle turn, Mesh[] stays)
    {
        double reach = 0.5 + plan.Shell.Footprint.Loops.SelectMany(loop => loop)
            .Max(point => Math.Max(Math.Abs(point.X), Math.Abs(point.Y)));
        double gives = plan.Closure is SnapClosurePlan snap ? snap.Interference : 0;
        var pictures = new LiftOff(new Point2(-reach, -reach), new Point2(reach, reach), Math.Max(Width, (2 * gives) + (Width / 2)));
        foreach (Mesh mesh in moves)
        {
            pictures.Moves(mesh, turn);
        }

        foreach (Mesh mesh in stays)
        {
            pictures.Stays(mesh);
        }

        return pictures.Caught() is var (at, by)
            ? string.Create(CultureInfo.InvariantCulture, $"held at ({at.X:0.0}, {at.Y:0.0}) by {by:0.00} mm") : null;
    }

    // Laminate, parts and LEDs, and the heads of its screws.
    private static IEnumerable<Mesh> OnBoard(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        IEnumerable<Solid> bodies =
        [
            Shapes.Extrude(plan.Source.Board.Outline.Region, plan.Stack.BoardBottom, plan.Stack.BoardTop),
            .. BoardBody.Of(plan).Concat(BoardBody.OfHeads(plan)).Where(body => body.ToZ > body.FromZ).Select(body => body.Solid),
        ];
        return bodies.Select(Meshes.Of);
    }
}
