using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Holding;

/// <summary>A clip that breaks when the board goes in, or has no room to bend.</summary>
public sealed class ClipOverstrained() : Rule(
    "clip-overstrained",
    "A clip must bend past the board's edge within what its filament repeats across its layers, and have the room for it.",
    "An upright clip splits between two layers: the first board goes in, the second is loose.",
    "on the tub as made: free length from the floor of its slot to the hook, thickness, hook and room behind it; strain = 1.5 x thickness "
        + "x bend / length squared against the filament's repeatable strain across layers, 1.5 x stops; the force of all clips against "
        + "150 N",
    "beam held at one end; snap-fit design guides; strain across layers from the filament's profile")
{
    private const double Hand = 150;
    private const double BreaksFrom = 1.5;

    // Faces are found from a little way off, mm.
    private const double Hair = 0.05;
    private const double Far = 20;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Plan.Hold.Holder is not ClipsPlan clips || housing.Part(PartNames.Tub) is not { } tub)
        {
            yield break;
        }

        SurfaceTree tree = housing.TreeOf(tub);
        FilamentProfile filament = housing.Board.Print.Shell;
        double allowed = filament.StrainAcrossLayers;
        double accuracy = housing.Board.Print.Printer.Accuracy;
        double top = housing.Plan.Stack.BoardTop;
        for (int i = 0; i < clips.Hooks.Length; i++)
        {
            (Point2 edge, Angle outward) = clips.Hooks[i];
            Point2 way = Point2.Polar(1, outward);
            Point3 At(double off, double z) => new(edge.X + (off * way.X), edge.Y + (off * way.Y), z);
            Point3 outwards = new(way.X, way.Y, 0);

            // Below the board a ray outward meets the post, leaves it, and meets the wall behind its slot.
            Point3 start = At(0, housing.Plan.Stack.BoardBottom);
            if (Ahead(tree, start, outwards, RayFaces.Entering) is not double face
                || Ahead(tree, At(face + Hair, start.Z), outwards, RayFaces.Leaving) is not double leaves
                || Ahead(tree, At(face + Hair + leaves + Hair, start.Z), outwards, RayFaces.Entering) is not double behind)
            {
                continue;
            }

            double thickness = Hair + leaves;
            double room = Hair + behind;
            (double Reach, double Z) tip = HookTip(tree, At, outwards, (top, housing.Plan.Stack.PartingLine), face);
            double bend = tip.Reach + accuracy;
            Point3 slot = At(face + thickness + (room / 2), start.Z);
            double? down = Ahead(tree, slot, new Point3(0, 0, -1), RayFaces.Entering);
            double length = (down ?? Far) + tip.Z - start.Z;
            double strain = 1.5 * thickness * bend / (length * length);
            if (strain > allowed * (1 + Rounding))
            {
                yield return Found(
                    strain > BreaksFrom * allowed ? Severity.Stop : Severity.Warn, clips.NameOf(i),
                    $"putting the board in strains it by {100 * strain:0.00} %; {filament.Name} bears {100 * allowed:0.0} % across its "
                        + "layers",
                    100 * strain, 100 * allowed, start, "'hold: clamp', or a tougher filament for the shell", "%");
            }

            if (room < bend)
            {
                yield return Found(
                    Severity.Stop, clips.NameOf(i), $"it has to bend by {bend:0.00} mm and has {room:0.00} mm behind it", room, bend, start,
                    "'hold: clamp'");
            }
        }

        if (clips.Force > Hand)
        {
            yield return Found(
                Severity.Warn, "clips", $"pressing the board in takes about {clips.Force:0} N, more than a hand gives", clips.Force, Hand,
                new Point3(clips.Hooks[0].Edge.X, clips.Hooks[0].Edge.Y, top), "'hold: clamp', or a softer filament for the shell", "N");
        }
    }

    // Lattice and chords, as a share of the strain.
    private const double Rounding = 0.02;

    // Levels at which the hook is looked for, and what counts as no farther, mm.
    private const double Step = 0.1;
    private const double Same = 0.01;

    // How far the hook reaches over the board's edge, and where: the nearest that rays outward meet above the board.
    private static (double Reach, double Z) HookTip(
        SurfaceTree tree, Func<double, double, Point3> at, Point3 outwards, (double From, double To) z, double face)
    {
        (double nearest, double level) = (face, z.From);
        double start = 0 - (Far / 4);
        for (double height = z.From + Hair; height < z.To; height += Step)
        {
            if (Ahead(tree, at(start, height), outwards, RayFaces.Entering) is double met)
            {
                (nearest, level) = start + met < nearest - Same ? (start + met, height) : (nearest, level);
            }
        }

        return (Math.Max(0, 0 - nearest), level);
    }

    private static double? Ahead(SurfaceTree tree, Point3 from, Point3 way, RayFaces faces) =>
        RayCast.First(tree, from, way, faces) is { } hit && Point3.Distance(hit.At, from) is var distance && distance < Far
            ? distance : null;
}
