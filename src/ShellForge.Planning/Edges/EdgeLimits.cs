using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Front;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Edges;

/// <summary>
/// What lies near one rim of a housing, the outer one or that of an open bore, and how round its edges may therefore be.
/// </summary>
internal sealed class EdgeLimits
{
    // Lines of plastic that stay everywhere between an edge and a hollow, and beside what lies in the face on the bed.
    internal const int KeptLines = 2;

    // Level face between an edge and letters, and an edge and the seam, mm: a finger's nail finds the seam on a straight wall.
    private const double BesideLetters = 0.5;
    private const double StraightAtSeam = 1.0;

    // What counts as straight there, mm, and how far the wall may be drawn in at the roof of a pry notch, as a share of its depth.
    private const double AtSeam = 0.05;
    private const double AtNotch = 0.2;

    // Chamfers of a notch for a cable, mm.
    private const double NotchChamfer = 1.0;

    // What is looked for in outlines that are not round: up to this far inside, mm, halved so often.
    private const double MostInside = 12;
    private const int Halvings = 9;

    private const string NarrowerWindow = "a narrower 'light.window'";

    private readonly HousingDraft _draft;
    private readonly double _overhang;
    private readonly double _kept;

    // What the rim goes round: all within the outer one, or the bore.
    private readonly Region _within;
    private readonly bool _isBore;

    /// <summary>The limits of a rim.</summary>
    /// <param name="draft">The housing.</param>
    /// <param name="bore">Whether the rim is that of the open bore.</param>
    public EdgeLimits(HousingDraft draft, bool bore)
    {
        _draft = draft;
        _isBore = bore;
        Region filled = draft.Shell.Footprint.Filled();
        _within = bore ? filled.Less(draft.Shell.Footprint) : filled;
        _overhang = draft.File.Print.Printer.OverhangDegrees;
        _kept = draft.Basis.Wall(KeptLines);
    }

    /// <summary>At the floor, by what is decided before anything looks for a place on it.</summary>
    public IEnumerable<EdgeLimit> OfTub()
    {
        yield return EdgeLimit.BesideHollow(
            _overhang, (_draft.Shell.Wall, _draft.Stack.FloorTop), _kept, "the corner between wall and floor",
            "more 'walls' or a thicker 'floor'");
        yield return new EdgeLimit(CoverDecision.LipBottom(_draft) - StraightAtSeam, "the cover's lip inside the wall", "");
        foreach (EdgeLimit limit in AtCorners().Concat(AtOpenings()))
        {
            yield return limit;
        }

        foreach (BossPlan boss in _draft.Bosses)
        {
            if (boss.Hole is { } hole)
            {
                double inset = InsetOf(boss.At) - (hole.MouthDiameter / 2);
                yield return EdgeLimit.BesideHollow(_overhang, (inset, boss.Top - hole.Depth), _kept,
                    $"the insert hole in {SpokenNames.Of(_draft.File, _draft.Screws, boss)}", "");
            }
        }
    }

    /// <summary>At the floor, by what has found its place on it.</summary>
    public IEnumerable<EdgeLimit> OfFloor(CoverSide cover)
    {
        foreach (CableExitPlan exit in _draft.CableExits)
        {
            if (!_isBore && exit.Outside(0, 0) is { Towards: not null } way)
            {
                yield return new EdgeLimit(way.Lowest - NotchChamfer, exit.Spoken, "'through: floor' at the cable");
            }

            foreach (EdgeLimit limit in InBed(exit.TakenOutside, _kept, exit.NameOf(0), ""))
            {
                yield return limit;
            }
        }

        foreach (OpeningPlan opening in _draft.Openings.Where(opening => opening.InWall is null))
        {
            foreach (EdgeLimit limit in InBed(
                opening.TakenOutside(_draft.Shell), _kept, opening.NameOf(FaceFeature.Port), opening.Without))
            {
                yield return limit;
            }
        }

        IEnumerable<EdgeLimit> others =
        [
            .. InBed(cover.Mount?.OnOuterFloor ?? Region.Empty, _kept, "the mount on the floor", "another 'mount'"),
            .. cover.Vents.SelectMany(vent => InBed(vent.Outline, _kept, "a vent in the floor", "'vents: none'")),
            .. cover.Lettering.Where(line => line.Part == PartNames.Tub && !line.Raised && line.FromZ <= 0)
                .SelectMany(line => InBed(line.Strokes, BesideLetters, "the label", "a smaller label")),
        ];
        foreach (EdgeLimit limit in others)
        {
            yield return limit;
        }
    }

    /// <summary>At the front.</summary>
    public IEnumerable<EdgeLimit> OfFront(CoverSide side)
    {
        StackPlan stack = _draft.Stack;
        CoverPlan cover = side.Cover;
        double wall = stack.Front - stack.PartingLine;
        yield return EdgeLimit.InWall(_overhang, wall - StraightAtSeam, AtSeam, "the seam between cover and tub", "");
        if (InsetOf(cover.Cavity) is double inset)
        {
            // The bezel is as thick as keeps light in; so is what is left beside it.
            yield return EdgeLimit.BesideHollow(
                _overhang, (inset, cover.BezelThickness), Math.Max(_kept, cover.BezelThickness), "the room inside the cover",
                "more 'walls'");
        }

        IEnumerable<EdgeLimit> others =
        [
            .. AtCorners(), .. AtWindow(side), .. InCoverWall(side),
            .. Beside(cover.ToothSlot, stack.Front - cover.ToothSlotTop, "the slot for the baffle's tooth", "more 'walls'"),
        ];
        foreach (EdgeLimit limit in others)
        {
            yield return limit;
        }
    }

    private IEnumerable<EdgeLimit> AtWindow(CoverSide side)
    {
        double thickness = _draft.Stack.Front - _draft.Stack.DiffuserInner;
        IEnumerable<EdgeLimit> window = side.Diffuser.Fit is DiffuserFit.OneWithCover
            ? Beside(side.Cover.Window, thickness, "the lit window", NarrowerWindow)
            : InBed(side.Cover.Window, _kept, "the lit window", NarrowerWindow);
        return window.Concat(Beside(side.Diffuser.Lap?.Outline ?? Region.Empty, thickness, "the diffuser's lap", NarrowerWindow));
    }

    private IEnumerable<EdgeLimit> InCoverWall(CoverSide side)
    {
        StackPlan stack = _draft.Stack;
        double wall = stack.Front - stack.PartingLine;
        foreach (PryNotchPlan notch in _isBore ? [] : side.PryNotches)
        {
            yield return EdgeLimit.InWall(_overhang, wall - notch.Height, AtNotch * notch.Depth, "a pry notch in the cover's edge", "");
        }

        if (side.Diffuser.Band is { } band && band.ThroughBore == _isBore)
        {
            yield return new EdgeLimit(stack.Front - band.Top, "the lit band in the wall", NarrowerWindow);
        }

        foreach (ScrewJointPlan screw in _draft.Screws.Where(screw => screw.Use == ScrewUse.Closure))
        {
            double inset = InsetOf(screw.At) - (screw.CounterboreDiameter / 2);
            yield return EdgeLimit.OnBed(_overhang, inset, _kept, $"the head of {screw.Name}", "another 'closure'");
        }

        foreach (OpeningPlan opening in AtRim().Where(opening => opening.InWall!.Top > stack.PartingLine))
        {
            yield return new EdgeLimit(stack.Front - opening.InWall!.Top, opening.NameOf(FaceFeature.Port), "");
        }

        foreach (EdgeLimit limit in _draft.Openings.Where(opening => !opening.TakenInFront.IsEmpty).SelectMany(
            opening => InBed(opening.TakenInFront, _kept, opening.NameOf(FaceFeature.Port), opening.Without)))
        {
            yield return limit;
        }
    }

    // Openings in this rim's wall.
    private IEnumerable<OpeningPlan> AtRim() => _draft.Openings.Where(opening => opening.InWall is { } inWall
        && Point2.Dot(inWall.Through, Point2.Polar(1, inWall.Direction)) < 0 == _isBore);

    private IEnumerable<EdgeLimit> AtOpenings() => AtRim().Select(opening => new EdgeLimit(
            opening.InWall!.Bottom - _draft.Basis.Layer, opening.NameOf(FaceFeature.Port), opening.Without));

    // Outlines that are not round are moved sideways corner by corner, which tight corners bound.
    private IEnumerable<EdgeLimit> AtCorners()
    {
        if (_draft.Shell.Round is not null)
        {
            yield break;
        }

        double fits = 0;
        double tooFar = MostInside;
        for (int i = 0; i < Halvings; i++)
        {
            double tried = (fits + tooFar) / 2;
            (fits, tooFar) = _draft.Shell.Footprint.Filled().Loops.All(loop =>
                OutlineOffsets.Mitred(loop, -tried) is not null && OutlineOffsets.Mitred(loop, EdgePlan.PastWall) is not null)
                ? (tried, tooFar) : (fits, tried);
        }

        yield return EdgeLimit.OnBed(_overhang, fits, EdgePlan.PastBed, "the outline's tightest corner", "an outline with wider corners");
    }

    private IEnumerable<EdgeLimit> InBed(Region region, double keep, string what, string remedy) =>
        InsetOf(region) is double inset ? [EdgeLimit.OnBed(_overhang, inset, keep, what, remedy)] : [];

    private IEnumerable<EdgeLimit> Beside(Region region, double height, string what, string remedy) =>
        InsetOf(region) is double inset ? [EdgeLimit.BesideHollow(_overhang, (inset, height), _kept, what, remedy)] : [];

    private double InsetOf(Point2 at) => _isBore ? _within.Distance(at) : _within.DistanceToOutline(at);

    // Least distance from the rim to what lies inside the plastic; either may have the nearest corner.
    private double? InsetOf(Region region)
    {
        if (region.IsEmpty || _isBore)
        {
            return region.IsEmpty ? null : _within.Distance(region);
        }

        Point2[] corners = [.. region.Loops.SelectMany(loop => loop)];
        return !corners.All(_within.Contains) ? 0 : Math.Min(
            corners.Min(_within.DistanceToOutline), _within.Loops.SelectMany(loop => loop).Min(region.DistanceToOutline));
    }
}
