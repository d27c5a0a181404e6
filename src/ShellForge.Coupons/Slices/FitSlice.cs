using System.Collections.Immutable;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Housing;
using ShellForge.Output.Words;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Slices;

/// <summary>A slice of a housing that is printed before the housing, to try board, screws, plug and lid.</summary>
/// <param name="Pieces">Its pieces with their names, as they lie on the bed.</param>
/// <param name="Estimate">Time and mass of all of them, heating included.</param>
/// <param name="Checks">What to try, step by step, and what to do where something does not go.</param>
/// <param name="Cautions">Cautions.</param>
public sealed record FitSlice(
    ImmutableArray<(string Name, Mesh Mesh)> Pieces, PrintEstimate Estimate, ImmutableArray<string> Checks, ImmutableArray<string> Cautions)
{
    /// <summary>Name of the piece with the posts.</summary>
    public const string TubName = "fit-slice-tub";

    /// <summary>Name of the strip of wall.</summary>
    public const string WallName = "fit-slice-wall";

    /// <summary>Name of the strip of lip.</summary>
    public const string LidName = "fit-slice-lid";

    /// <summary>Cuts a slice out of a housing, from the same solids that its parts are made of.</summary>
    /// <exception cref="InvalidOperationException">A solid ended in a defect: a fault of the program.</exception>
    public static FitSlice Of(HousingPlan plan, CancellationToken cancel = default)
    {
        var cut = FitSlicePlan.Of(plan);
        ImmutableArray<HousingPart> parts = HousingBuilder.Build(plan);
        HousingPart tub = parts.First(part => part.Name == PartNames.Tub);
        HousingPart cover = parts.First(part => part.Name == PartNames.Cover);
        double top = plan.Stack.Front + 1;
        double bed = cut.FloorZ - cut.FloorThickness;
        Solid room = Solid.Union(
        [
            .. cut.Walls.Select(wall => Shapes.Extrude(wall.Outline, cut.FloorZ, wall.Top)),
            .. cut.Posts.Select(post => post.Room(cut.FloorZ, top)),
        ]);
        Solid posts = Solid.Intersection(tub.Assembled, room)
            .And(Shapes.Extrude(cut.Floor, bed, cut.FloorZ))
            .Moved(Transform3.Shift(0, 0, -bed));
        Solid wall = Solid.Intersection(tub.Assembled, Shapes.Extrude(cut.WallStrip, cut.WallBottom, top))
            .And(Shapes.Extrude(cut.WallStrip, cut.WallBottom - cut.FloorThickness, cut.WallBottom))
            .Moved(Transform3.Shift(0, 0, cut.FloorThickness - cut.WallBottom));
        Solid lid = Solid.Intersection(cover.Assembled, Shapes.Extrude(cut.LidStrip, plan.Cover.LipBottom - 1, cut.LidTop))
            .Moved(Transform3.TurnX(Angle.FromDegrees(180)).Then(Transform3.Shift(0, 0, cut.LidTop)));
        ImmutableArray<(string Name, Mesh Mesh)> pieces =
        [
            (TubName, OneBed.Written(posts, tub.Plan.ShrinkScale, cancel)),
            (WallName, OneBed.Written(wall, tub.Plan.ShrinkScale, cancel)),
            (LidName, OneBed.Written(lid, cover.Plan.ShrinkScale, cancel)),
        ];
        return new FitSlice(
            pieces, OneBed.Estimate(pieces.Select(piece => piece.Mesh), plan.Source.Print.Printer, tub.Plan.Filament), Try(plan),
            CautionsFor(plan));
    }

    private static ImmutableArray<string> CautionsFor(HousingPlan plan) => FitSlicePlan.Carriers(plan).Any(boss => boss.Hole is not null)
        ? ["The iron that sets inserts burns skin, and hot plastic gives off fumes: ventilate, and hold the print with pliers."]
        : [];

    private static ImmutableArray<string> Try(HousingPlan plan)
    {
        var steps = ImmutableArray.CreateBuilder<string>();
        BossPlan[] carriers = [.. FitSlicePlan.Carriers(plan)];
        string[] inserts = [.. carriers.Where(FitSlicePlan.TakesInsert).Select(boss => boss.Hole!.Insert.Name).Distinct()];
        bool thin = carriers
            .Where((boss, number) => boss.Hole is not null && !FitSlicePlan.TakesInsert(boss, number)).Any();
        foreach (string insert in inserts)
        {
            steps.Add(
                $"Set an insert {insert} into the {(thin ? "thick " : "")}post, as for the housing. If it will not sink, or drops in: "
                    + $"shellforge coupon insert-holes --insert {ShellWord.Of(insert)}.");
        }

        steps.Add(plan.Screws.IsEmpty
            ? "Lay the board onto the posts, LED side up. It must lie on all of them, without a rock and without touching a wall."
            : "Lay the board onto the posts, LED side up. It must lie on all of them; the screw must start by hand and draw tight"
                + (thin ? ", and the holes of the thin posts must lie under the board's. " : ". ")
                + "If a hole is not over its post, compare the board's holes with the board file; if all lie too far out or in: shellforge "
                + "coupon size-bar.");
        steps.AddRange(plan.Openings.Select(opening => opening.Trial).OfType<string>());
        if (plan.CableExits.Any(exit => exit.AtRim is not null))
        {
            steps.Add("Lay the cable into its notch. It must lie in it to the bottom, and not be pinched.");
        }

        steps.Add(
            "Press the strip of lid into the strip of wall, rim on rim. It must go in under light pressure of one thumb, and not rattle. "
                + "If it jams or falls out: shellforge coupon lid-fit.");
        steps.Add("If all goes, print the housing with the same settings.");
        return steps.ToImmutable();
    }
}
