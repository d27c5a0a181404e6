using System.Collections.Immutable;
using ShellForge.Formats.Rendering;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Looks;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Assembly;

/// <summary>A step with its picture.</summary>
/// <param name="Step">The step.</param>
/// <param name="Png">The picture; null for none.</param>
/// <param name="Alternative">The picture in words.</param>
public sealed record PicturedStep(HandStep Step, byte[]? Png, string Alternative);

/// <summary>
/// Draws what lies on the bench at each step: what is there, what the hands hold lifted over it, screws and the like over that, and an
/// arrow that says how it moves.
/// </summary>
public static class StepPictures
{
    private const int Width = 224;
    private const int Height = 168;

    // Lifted high enough to see under it, as a share of the housing's width; less where all is pulled apart.
    private const double LiftShare = 0.28;
    private const double ApartShare = 0.2;

    // Upright arrows stand here, seen from the usual corner, unless their place is known and in sight.
    private const double ArrowDegrees = 20;
    private const double InSightDegrees = 110;

    /// <summary>All steps, each with its picture. The same housing gives the same pictures.</summary>
    public static ImmutableArray<PicturedStep> Of(HousingPlan plan, HousingLooks looks)
    {
        ILookup<string, PicturedPart> bodies = looks.Bodies.ToLookup(body => body.BelongsTo, PictureColours.Part);
        var drawn = new byte[]?[plan.Steps.Length];

        // Pictures of one bench have one scale.
        IEnumerable<IGrouping<(bool, bool), int>> benches =
            Enumerable.Range(0, drawn.Length).GroupBy(i => (plan.Steps[i].FromBelow, plan.Steps[i].Apart));
        foreach (IGrouping<(bool, bool), int> bench in benches)
        {
            int[] numbers = [.. bench.Where(i => plan.Steps[i].Shown.Any(bodies.Contains))];
            if (numbers.Length == 0)
            {
                continue;
            }

            byte[][] pictures = new RememberedPictures(looks.Memory).Of(
                new Bench(plan, bodies).Series([.. numbers.Select(i => plan.Steps[i])]));
            for (int i = 0; i < numbers.Length; i++)
            {
                drawn[numbers[i]] = pictures[i];
            }
        }

        return [.. plan.Steps.Select((step, i) => new PicturedStep(step, drawn[i], InWords(step)))];
    }

    private static string InWords(HandStep step)
    {
        string[] rest = [.. step.Shown.Except(step.Held).Select(name => $"the {name}")];
        string[] held = [.. step.Held.Select(name => $"the {name}"), .. step.Things.GroupBy(thing => thing.Material)
            .Select(kind => HandWords.Count(kind.Count(), Named(kind.Key, 1), Named(kind.Key, kind.Count())))];
        string shown = rest.Length == 0 ? "the bench" : HandWords.Listed(rest);
        string over = held.Length == 0 ? $"Picture of {shown}." : $"Picture of {HandWords.Listed(held)} over {shown}.";
        return step.FromBelow ? over + " It lies turned over." : over;
    }

    private static string Named(HandMaterial material, int count) => (material, count) switch
    {
        (HandMaterial.Steel, 1) => "screw",
        (HandMaterial.Steel, _) => "screws",
        (HandMaterial.Brass, 1) => "insert",
        (HandMaterial.Brass, _) => "inserts",
        (HandMaterial.Magnet, 1) => "magnet",
        (HandMaterial.Magnet, _) => "magnets",
        (HandMaterial.Laminate, _) => "second board",
        (HandMaterial.Battery, 1) => "battery",
        (HandMaterial.Battery, _) => "batteries",
        _ => "small parts",
    };

    // Steps that are drawn from one stand at one scale.
    private sealed class Bench(HousingPlan plan, ILookup<string, PicturedPart> bodies)
    {
        private readonly List<ImmutableArray<PicturedPart>> _things = [];
        private readonly Dictionary<string, int> _named = [];

        public PictureSeries Series(HandStep[] steps)
        {
            double width = plan.Shell.Footprint.Bounds.Size.X;
            double lift = (steps[0].Apart ? ApartShare : LiftShare) * width;
            ImmutableArray<Shot> shots = [.. steps.Select(step => ShotOf(step, lift, width / 2))];
            return new PictureSeries { Things = [.. _things], Shots = shots, Lift = lift, Width = Width, Height = Height };
        }

        private Shot ShotOf(HandStep step, double lift, double radius)
        {
            Transform3 turned = step.FromBelow ? Transform3.TurnX(Angle.FromDegrees(180)) : Transform3.Identity;
            var shown = ImmutableArray.CreateBuilder<ShownThing>();
            string[] held = [.. WithPrintedIn(step.Held)];
            string[] all = [.. WithPrintedIn(step.Shown).Where(bodies.Contains)];
            string[] jobs = [.. all.Where(held.Contains).Select(JobOf).Distinct()];
            int lifts = 0;
            foreach (string name in all)
            {
                int own = !held.Contains(name) ? 0 : step.Apart ? Array.IndexOf(jobs, JobOf(name)) + 1 : 1;
                lifts = Math.Max(lifts, own);
                shown.Add(new ShownThing(NumberOf(name, turned), own));
            }

            Show(step.InPlace, 0);
            Show(step.Things, lifts + 1);
            HandMotion motion = step.Motion == HandMotion.None && !step.Things.IsEmpty ? HandMotion.Down : step.Motion;
            double seat = TopOf([.. all.Except(held)], turned);
            double over = TopOf([.. all.Intersect(held)], turned) + lift;
            PicturedPart[] arrow = PictureArrows.Of(motion, Placed(step), radius, seat + (0.1 * lift), seat + (0.95 * lift), over);
            if (arrow.Length > 0)
            {
                _things.Add([.. arrow]);
                shown.Add(new ShownThing(_things.Count - 1));
            }

            return new Shot(shown.ToImmutable());

            void Show(ImmutableArray<HandThing> small, int high)
            {
                if (!small.IsEmpty)
                {
                    _things.Add(
                        [.. small.Select(
                            thing => new PicturedPart(MeshOf(thing), PictureColours.Of(thing.Material))
                            {
                                Placement = thing.Placement.Then(turned),
                            })]);
                    shown.Add(new ShownThing(_things.Count - 1, high));
                }
            }
        }

        private IEnumerable<string> WithPrintedIn(ImmutableArray<string> names) => names
            .Concat(plan.Parts.Where(part => part.PrintedWith is { } host && names.Contains(host)).Select(part => part.Name)).Distinct();

        private string JobOf(string name) => plan.Parts.FirstOrDefault(part => part.Name == name)?.PrintedWith ?? name;

        private int NumberOf(string name, Transform3 turned)
        {
            if (!_named.TryGetValue(name, out int number))
            {
                number = _things.Count;
                _named.Add(name, number);
                _things.Add([.. bodies[name].Select(part => part with { Placement = turned })]);
            }

            return number;
        }

        private double TopOf(string[] names, Transform3 turned) => names
            .SelectMany(name => bodies[name]).SelectMany(part => part.Mesh.Vertices)
            .Select(vertex => turned.Apply(vertex.ToMillimetres()).Z).DefaultIfEmpty(0).Max();

        private static Angle Placed(HandStep step)
        {
            var usual = Angle.FromDegrees(ArrowDegrees);
            return step.At is { } at && !step.FromBelow && Angle.Between(at, View.Corner.Azimuth).Degrees < InSightDegrees ? at : usual;
        }

        private static Geometry.Solids.Mesh MeshOf(HandThing thing) => Geometry.Solids.Mesh.Joined(
            thing.Discs.Select(disc => SimpleMesh.Upright(SimpleMesh.Disc(thing.At, disc.Diameter), disc.FromZ, disc.ToZ))
                .Concat(thing.Body is var (outline, from, to) ? [SimpleMesh.Upright(outline, from, to)] : []));
    }
}
