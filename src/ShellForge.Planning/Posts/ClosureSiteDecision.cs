using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Edges;
using ShellForge.Planning.Exits;
using ShellForge.Planning.Front;
using ShellForge.Planning.Openings;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>Where a closure screw stands.</summary>
internal enum ClosureSiteKind
{
    /// <summary>It shares a board hole: one long screw holds cover and board.</summary>
    SharedHole,

    /// <summary>In a bulge of the bore wall, out of the board's way.</summary>
    BoreSide,

    /// <summary>Inside a closed bore, where no board is.</summary>
    BoreRoom,

    /// <summary>In an ear outside the wall.</summary>
    Ear,
}

/// <summary>A place for a closure screw.</summary>
/// <param name="At">Its axis.</param>
/// <param name="Kind">Where that is.</param>
/// <param name="Diameter">Diameter of boss and cover post there, mm.</param>
/// <param name="Lobe">The bulge of the wall; null where none is needed.</param>
/// <param name="Shared">The board hole that it shares; null otherwise.</param>
internal sealed record ClosureSite(Point2 At, ClosureSiteKind Kind, double Diameter, ShellLobe? Lobe, Joint? Shared);

/// <summary>
/// Closure screws: at the bore side on rings; through the board's own holes on discs where the posts clear the LEDs; else in ears
/// outside, which any board can have.
/// </summary>
internal static class ClosureSiteDecision
{
    /// <summary>Rim length that one screw keeps closed, mm. Typical: 80 to 120 for a 1.7 mm wall.</summary>
    private const double RimPerScrew = 110;

    /// <summary>How far a boss reaches into the wall it bulges from, or stays off the face it must not pass, mm.</summary>
    private const double IntoWall = 0.2;

    private const int LinesRoundHead = 3;

    // Between two of them the rib of the key finds its place, mm.
    private const double BetweenEars = 6;

    // So few stand apart round any board.
    private const int LeastEars = 3;

    /// <summary>Sites for a closure by screws.</summary>
    public static Decided<ImmutableArray<ClosureSite>> Decide(
        Given given, ShellPlan shell, ImmutableArray<Joint> joints, LipRing lip)
    {
        (BoardFile file, PrintBasis basis) = given;
        var reasons = new Reasons();
        ScrewProfile screw = file.Housing.Screw!;
        LitWindow? lit = file.Housing.Light.Through == LightThrough.Wall ? null
            : LitWindow.Of(file, CoverRoom.Of(shell, lip), BaffleSection.Of(file.Print.Printer), DiffuserHold.Of(file).Fit,
                posts: file.Board.Outline.BoreRadius > 0);
        double diameter = PostDiameter(screw, file.Housing.Insert!, basis);
        int count = file.Housing.ClosureScrews
            ?? Math.Max(3, (int)Math.Round(shell.Footprint.Filled().Perimeter / RimPerScrew));
        double beside = EdgeDecision.AtScrews(given, basis.Wall(LinesRoundHead));
        (ImmutableArray<ClosureSite> sites, string why) = shell.Round is { HasBore: true } ring
            ? AtBore(file, ring, diameter, (count, beside)) ?? AtBore(file, ring, diameter, (count, 0))
                ?? Ears(file, shell, diameter, (count, beside), "the bore is too small for bosses", reasons)
            : file.Board.Outline.BoreRadius > 0 && InClosedBore(file, shell, diameter, count, lit) is { } inBore ? inBore
            : Shared(file, joints, basis, lit)
                ?? Ears(file, shell, diameter, (count, beside),
                    "posts through the board's holes would stand in the light or there are too few", reasons);
        reasons.Choice("closure.screws", sites.Length.ToString(System.Globalization.CultureInfo.InvariantCulture),
            file.Housing.ClosureScrews is null ? Reasons.Rule : Reasons.Origin(file, "housing.closure-screws"), why);
        return reasons.Of(sites);
    }

    /// <summary>Diameter of a closure boss and of the cover's post over it, mm: wall round the insert and round the sunk head.</summary>
    public static double PostDiameter(ScrewProfile screw, InsertProfile insert, PrintBasis basis) => Math.Max(
        InsertHoleDecision.BossDiameter(insert, basis),
        PlanRules.UpToTenth(screw.HeadDiameter + PlanRules.CounterboreOver + (2 * basis.Wall(LinesRoundHead))));

    // So many, in bulges wider than the boss by so much on either side, mm.
    private static (ImmutableArray<ClosureSite>, string)? AtBore(
        BoardFile file, RoundShell ring, double diameter, (int Count, double Beside) lobes)
    {
        int count = lobes.Count;
        double radius = (diameter / 2) + lobes.Beside;
        double onCircle = ring.BoreOuter - IntoWall - radius;
        bool apart = count == 1 || 2 * onCircle * Angle.FromDegrees(180.0 / count).Sin > (2 * radius) + PlanRules.TieDistance;
        if (onCircle - radius < PlanRules.LeastBore / 2 || !apart)
        {
            return null;
        }

        return ([.. Directions(file, ring.BoreOuter, radius, count).Select(direction =>
        {
            Point2 at = Lattice.Snap(Point2.Polar(onCircle, direction));
            return new ClosureSite(at, ClosureSiteKind.BoreSide, diameter, new ShellLobe(at, radius, IntoBore: true), null);
        })], "at the bore side, where no board and no light is");
    }

    private static (ImmutableArray<ClosureSite>, string)? InClosedBore(
        BoardFile file, ShellPlan shell, double diameter, int count, LitWindow? lit)
    {
        double radius = diameter / 2;
        double onCircle = file.Board.Outline.BoreRadius - shell.BoardEdgeGap - radius;
        if (onCircle < radius + PlanRules.TieDistance
            || 2 * onCircle * Angle.FromDegrees(180.0 / count).Sin <= diameter + PlanRules.TieDistance)
        {
            return null;
        }

        ImmutableArray<ClosureSite> sites = [.. Directions(file, onCircle, radius, count).Select(direction => new ClosureSite(
            Lattice.Snap(Point2.Polar(onCircle, direction)), ClosureSiteKind.BoreRoom, diameter, null, null))];
        return lit is not null && sites.Any(site => !lit.Clears(site.At, radius)) ? null : (sites,
            "inside the closed bore, where no board and no light is");
    }

    private static (ImmutableArray<ClosureSite>, string)? Shared(
        BoardFile file, ImmutableArray<Joint> joints, PrintBasis basis, LitWindow? lit)
    {
        if (joints.Length < 3)
        {
            return null;
        }

        ImmutableArray<PartEnvelope> onTop = PartEnvelope.OnTop(file.Board);
        bool Clear(Joint joint)
        {
            double radius = PostDiameter(joint.Screw, joint.Insert, basis) / 2;
            return onTop.All(e => e.Outline.Distance(joint.Hole.At) >= radius + PlanRules.Beside)
                && (lit is null || lit.Clears(joint.Hole.At, radius));
        }

        return !joints.All(Clear) ? null : ([.. joints.Select(j => new ClosureSite(
            j.Hole.At, ClosureSiteKind.SharedHole, PostDiameter(j.Screw, j.Insert, basis), null, j))],
            "through the board's own holes: one screw holds cover and board");
    }

    // As many as asked for, or as stand beside each other: heads sunk closer would cut the cover in two.
    private static (ImmutableArray<ClosureSite>, string) Ears(
        BoardFile file, ShellPlan shell, double diameter, (int Count, double Beside) lobes, string because, Reasons reasons)
    {
        double radius = (diameter / 2) + lobes.Beside;
        double rim = Math.Sqrt(shell.Cavity.Area / Math.PI);
        ImmutableArray<ClosureSite> At(int count) =>
            [.. Directions(file, rim, radius, count).Select(direction =>
            {
                Point2 at = Lattice.Snap(Point2.Polar(EarDistance(shell, direction, radius + IntoWall), direction));
                return new ClosureSite(at, ClosureSiteKind.Ear, diameter, new ShellLobe(at, radius, IntoBore: false), null);
            })];
        ImmutableArray<ClosureSite> sites = At(lobes.Count);
        while (sites.Length > LeastEars && !AreApart(sites, diameter + BetweenEars))
        {
            sites = At(sites.Length - 1);
        }

        if (sites.Length < lobes.Count)
        {
            reasons.Replace(
                "closure-screws-crowded", "closure-screws",
                $"Round this housing {sites.Length} of the {lobes.Count} screws have room beside each other.", sites.Length, lobes.Count,
                "screws", new Point3(sites[0].At.X, sites[0].At.Y, 0), $"'closure-screws: {sites.Length}'");
        }

        return (sites, $"in ears outside the wall: {because}");
    }

    private static bool AreApart(ImmutableArray<ClosureSite> sites, double distance) => Enumerable.Range(0, sites.Length)
        .All(i => Point2.Distance(sites[i].At, sites[(i + 1) % sites.Length].At) >= distance);

    // The nearest point on a ray that keeps its distance from the room inside.
    private static double EarDistance(ShellPlan shell, Angle direction, double off)
    {
        if (shell.Round is not null)
        {
            return shell.Round.Inner + off;
        }

        double near = 0;
        double far = shell.Cavity.Loops.SelectMany(l => l).Max(p => p.Length) + off;
        while (far - near > Lattice.Step)
        {
            double middle = (near + far) / 2;
            (near, far) = shell.Cavity.Distance(Point2.Polar(middle, direction)) >= off ? (near, middle) : (middle, far);
        }

        return far;
    }

    // Evenly round the axis, turned so that the nearest port or cable is as far away as can be.
    private static IEnumerable<Angle> Directions(BoardFile file, double onRadius, double radius, int count)
    {
        ImmutableArray<(Angle At, double HalfWidth)> exits = Exits(file);
        double step = 360.0 / count;
        Angle symmetric = file.Up + Angle.FromDegrees(step / 2);
        double Room(double turn) => exits.IsEmpty ? 0 : Math.Min(step / 4, Enumerable.Range(0, count).Min(i => exits.Min(exit =>
            Angle.Between(symmetric + Angle.FromDegrees(turn + (i * step)), exit.At).Degrees
            - Angle.FromRadians((exit.HalfWidth + radius) / Math.Max(onRadius, radius)).Degrees)));
        const int tries = 24;
        double best = Enumerable.Range(0, tries)
            .Select(i => (i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * (step / tries))
            .MaxBy(turn => Math.Round(Room(turn), 6));
        return Enumerable.Range(0, count).Select(i => (symmetric + Angle.FromDegrees(best + (i * step))).Normalized);
    }

    private static ImmutableArray<(Angle At, double HalfWidth)> Exits(BoardFile file)
    {
        var exits = ImmutableArray.CreateBuilder<(Angle, double)>();
        foreach (OpeningForm opening in OpeningForm.Of(file))
        {
            if (opening.AtRim is { } open)
            {
                exits.Add(open);
            }
        }

        exits.AddRange(ExitForm.Of(file).Select(exit => exit.AtRim).OfType<(Angle, double)>());
        return exits.ToImmutable();
    }
}
