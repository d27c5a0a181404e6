using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Exits;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Holding;
using ShellForge.Planning.Openings;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Holders;

/// <summary>What a place at the rim takes, whichever form holds the board there.</summary>
/// <param name="LobeRadius">Radius of the bulge of the wall, mm.</param>
/// <param name="LobeOff">From the room's edge to the bulge's middle, mm.</param>
/// <param name="Over">How far it reaches over the board, mm.</param>
/// <param name="Width">Along the rim, mm.</param>
internal sealed record HoldSize(double LobeRadius, double LobeOff, double Over, double Width);

/// <summary>
/// Places round the board's rim where it can be held: clear of what stands on it, of openings, exits and closure screws, with room for a
/// bulge of the wall outside.
/// </summary>
/// <param name="given">The board file, lines and layers.</param>
/// <param name="shell">Walls with the ears of closure screws.</param>
/// <param name="size">What a place takes.</param>
internal sealed class HoldSites(Given given, ShellPlan shell, HoldSize size)
{
    // Rim length that one place holds, mm. Typical: boards of 1.6 are stiff over twice as much.
    private const double RimPerPlace = 110;

    private const int LeastPlaces = 3;
    private const int LeastBesideHoles = 2;

    // Bulges stand apart by this, and off openings, mm: the rib of the key finds its place between them.
    private const double BetweenLobes = 6;
    private const double BesideOpening = 2;

    // Of the board under a place at least so much must be laminate, as a share: notches in the edge leave less.
    private const double LeastLaminate = 0.7;

    // By how much a bulge may stand nearer to the room than planned, mm: chords of round walls, corners of others.
    private const double Chords = 0.05;

    // So many names are told at the most.
    private const int MostNames = 3;

    // How far outside the line between two holes the centre of mass may lie, mm: what is computed to lie on it.
    private const double OnLine = 0.05;

    private ImmutableArray<string> _inTheWay = [];

    /// <summary>What is in the way, as a clause: "C9 stands in the way"; those that bar most places first.</summary>
    public string Barred => _inTheWay switch
    {
        [] => "openings and corners take the rim",
        [var one] => $"{one} stands in the way",
        { Length: <= MostNames } few => $"{HandWords.Listed(few)} stand in the way",
        var many => $"{HandWords.Listed([.. many.Take(MostNames), "others"])} stand in the way",
    };

    /// <summary>
    /// The places taken, beside the screws of a board with holes; empty where those that are free do not stand round the board's centre of
    /// mass.
    /// </summary>
    public ImmutableArray<RimPlace> Chosen()
    {
        CircuitBoard board = given.File.Board;
        var barred = new Dictionary<string, int>(StringComparer.Ordinal);
        var free = new List<RimPlace>();
        (string Name, Region Outline)[] standing = [.. Standing(given.File)];
        foreach (RimPlace place in RimPlace.Of(board.Outline, given.File.Up))
        {
            if (Bars(place, standing) is { } name)
            {
                barred[name] = barred.GetValueOrDefault(name) + 1;
            }
            else
            {
                free.Add(place);
            }
        }

        _inTheWay = [.. barred.Where(each => each.Key.Length > 0).OrderByDescending(each => each.Value)
            .ThenBy(each => each.Key, StringComparer.Ordinal).Select(each => each.Key)];
        ImmutableArray<Point2> at = [.. free.Select(place => place.Inside(size.Over / 2))];
        ImmutableArray<Point2> holes = [.. board.Holes.Where(hole => hole.For == HolePurpose.Mount).Select(hole => hole.At)];
        int wanted = Math.Max(LeastPlaces, (int)Math.Round(shell.Cavity.Filled().Perimeter / RimPerPlace));
        Point2 centre = BoardMass.Centre(board);
        for (int count = Math.Max(LeastBesideHoles, wanted - holes.Length); count + holes.Length >= LeastPlaces && count > 0; count--)
        {
            var wish = new SupportWish([], 0, count, centre, Math.Max(
                SupportChoice.Apart * 2 * board.Outline.OuterRadius, (2 * size.LobeRadius) + BetweenLobes));
            ImmutableArray<int> chosen = SupportChoice.Choose(wish, at);
            double inside = SupportChoice.Polygon(wish with { Given = holes }, at, chosen).Inside(centre);
            if (chosen.Length + holes.Length >= LeastPlaces && inside > (holes.IsEmpty ? 0 : -OnLine))
            {
                return [.. chosen.Select(i => free[i])];
            }
        }

        return [];
    }

    /// <summary>The bulge of the wall at a place.</summary>
    public ShellLobe Lobe(RimPlace place, string what) => new(
        Lattice.Snap(place.Inside(0 - shell.BoardEdgeGap - size.LobeOff)), size.LobeRadius, IntoBore: false)
    {
        For = what,
        OpensRim = true,
    };

    // What is in the way of a place: a name, an empty one for the outline itself; null for nothing.
    private string? Bars(RimPlace place, (string Name, Region Outline)[] standing)
    {
        Point2 middle = place.Inside(0 - shell.BoardEdgeGap - size.LobeOff);
        Region cavity = shell.Cavity.Filled();
        if (cavity.Contains(middle) || cavity.DistanceToOutline(middle) < size.LobeOff - Chords)
        {
            return "";
        }

        Region over = Strips.Along(place.Edge, Angle.Of(place.Outward), size.Width, -size.Over, 0);
        if (over.Intersect(given.File.Board.Outline.Region).Area < LeastLaminate * size.Over * size.Width)
        {
            return "";
        }

        foreach (ShellLobe lobe in shell.Lobes)
        {
            if (Point2.Distance(lobe.At, middle) < lobe.Radius + size.LobeRadius + BetweenLobes)
            {
                return "";
            }
        }

        Angle direction = Angle.Of(middle);
        foreach ((Angle at, double halfWidth) in AtRim())
        {
            Angle between = Angle.Between(direction, at);
            if (between.Degrees < 90 && between.Sin * middle.Length < halfWidth + size.LobeRadius + BesideOpening)
            {
                return "";
            }
        }

        return standing.Where(thing => thing.Outline.Distance(over) < PlanRules.Beside - Layers.Slack).Select(thing => thing.Name)
            .FirstOrDefault();
    }

    private IEnumerable<(Angle At, double HalfWidth)> AtRim() => OpeningForm.Of(given.File).Select(opening => opening.AtRim)
        .Concat(ExitForm.Of(given.File).Select(exit => exit.AtRim)).OfType<(Angle, double)>();

    /// <summary>
    /// Everything on the board's face that what lies over its rim keeps off, by its name: parts, LEDs, leads, screw heads.
    /// </summary>
    public static IEnumerable<(string Name, Region Outline)> Standing(BoardFile file)
    {
        CircuitBoard board = file.Board;
        IEnumerable<(string, Region)> heads = board.Holes.Where(hole => hole.For == HolePurpose.Mount)
            .Select(hole => (hole, Screw: hole.Screw ?? file.Housing.Screw!))
            .Select(each => ($"the screw at {each.hole.Name}", Region.Disc(each.hole.At, Ring.Hole(Math.Max(
                each.Screw.HeadDiameter, file.Housing.Washers ? each.Screw.WasherDiameter : 0) / 2))));
        return PartEnvelope.OnTop(board).Select(part => (part.Ref, part.Outline))
            .Concat(board.Parts.Where(part => part.Mounted == PartMounting.MidBoard)
                .Select(part => (part.Ref, PartEnvelope.OutlineOf(part))))
            .Concat(board.Wires.Where(wire => wire.Side == BoardSide.Top)
                .Select(wire => (wire.Name, Region.Disc(wire.At, Ring.Hole(wire.Conductors * wire.Diameter)))))
            .Concat(heads);
    }
}
