using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Openings;

/// <summary>
/// An opening for a plug. The port ladder: a closed opening where the overmould may touch the wall; a recess where the mouth lies deeper;
/// a slot with a tongue on the cover where the connector stands in the wall, since the board could not be lowered in otherwise; an
/// opening for the whole overmould where a recess would leave no wall; refusal where no plug can come.
/// </summary>
internal sealed class PortForm : PartOpeningForm
{
    private readonly ConnectorMouth _mouth;

    private PortForm(BoardPart part, ConnectorMouth mouth)
        : base(part) => _mouth = mouth;

    /// <inheritdoc />
    public override (Angle At, double HalfWidth)? AtRim =>
        (Angle.Of(_mouth.Face), Math.Max(_mouth.Profile.RecessWidth, _mouth.Profile.PlugWidth) / 2);

    /// <summary>The form for a connector; null for what takes no plug.</summary>
    public static PortForm? Suiting(BoardPart part) => part.Mouth is { } mouth ? new PortForm(part, mouth) : null;

    /// <inheritdoc />
    public override OpeningInPlan? InPlan(OpeningGiven given, Reasons reasons)
    {
        PortInPlan? port = Rung(given, reasons);
        if (port is not null)
        {
            RefuseBlockedWay(given, port, reasons);
        }

        return port;
    }

    /// <inheritdoc />
    protected override bool IsOpenUnsaid(BoardFile file) =>
        file.Housing.Cables.OfType<ConnectorCable>().Any(cable => cable.PartRef == Part.Ref);

    private PortInPlan? Rung(OpeningGiven given, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis, ShellPlan shell, _) = given;
        BoardPart part = Part;
        MouthProfile profile = _mouth.Profile;
        string path = $"ports.{part.Ref}";
        double mouthU = Point2.Dot(_mouth.Face, Point2.Polar(1, _mouth.Faces));
        double deepest = profile.PlugLength - PlanRules.GripOf(profile) + (profile.IsDrawnByLeads ? 0 : shell.Wall);
        WallSpan? ahead = WallAhead(shell, profile.RecessWidth);
        double behind = ahead?.OuterMost - mouthU ?? 0;
        if (ahead is not { } wall || behind > deepest)
        {
            reasons.Refuse("no-way-for-plug", part.Ref,
                ahead is not null && behind <= profile.PlugLength
                    ? $"the wall's face lies {Reasons.Mm(Math.Round(behind, 2))} mm before its mouth, a plug "
                        + $"{Reasons.Mm(profile.PlugLength)} mm long leaves too little to grip; planned without a port"
                    : "no wall within a plug's length in front of its mouth; planned without a port",
                behind, deepest, "mm",
                new Point3(_mouth.Face.X, _mouth.Face.Y, 0), "turn the connector to the edge, or take the cable out through a notch");
            return null;
        }

        double beside = (WallAhead(shell, Math.Max(profile.ShellWidth, part.Width)) ?? wall).InnerLeast;
        bool inWall = mouthU > beside - file.Print.Printer.SlotFit;
        double thinnest = wall.InnerMost + basis.Wall(PlanRules.RecessWallLines);
        bool needsRecess = behind > PlanRules.MouthBehind + Layers.Slack;
        bool recessHolds = thinnest <= mouthU + PlanRules.MouthBehind + Layers.Slack && thinnest < wall.OuterMost;
        double? recess = needsRecess && recessHolds ? Math.Max(mouthU, thinnest) : null;
        bool through = needsRecess && !recessHolds;
        PortKind kind = inWall ? PortKind.SlotWithTongue
            : needsRecess ? PortKind.OvermouldRecess : PortKind.ClosedOpening;
        string depth = string.Create(CultureInfo.InvariantCulture,
            $"the mouth lies {Reasons.Mm(Math.Round(behind, 3))} behind the wall's face");
        reasons.Choice($"{path}.kind", kind switch
        {
            PortKind.SlotWithTongue => "slot open to the parting line, closed by a tongue on the cover",
            PortKind.OvermouldRecess => through ? "opening for the whole overmould" : "closed opening with a recess for the overmould",
            _ => "closed opening",
        }, Reasons.Rule, inWall
            ? $"{part.Ref} stands {Reasons.Mm(Math.Round(mouthU - beside, 3))} into the wall: the board could not be lowered in otherwise"
            : through ? $"{depth}: a recess would leave less than {PlanRules.RecessWallLines} lines of wall" : depth);
        if (recess is double face)
        {
            reasons.Length($"{path}.recess-depth", Math.Round(wall.OuterMost - face, 3), Reasons.Rule,
                $"{depth}, more than {Reasons.Mm(PlanRules.MouthBehind)}: the overmould enters the wall");
        }

        // A slot is as wide as the connector's body: where the wall bulges beside the plug, it starts farther in.
        double slot = PortInPlan.SlotWidth(part, file.Print.Printer);
        double inner = kind == PortKind.SlotWithTongue && WallAhead(shell, slot) is { } wide
            ? Math.Min(wall.InnerLeast, wide.InnerLeast) : wall.InnerLeast;
        return new PortInPlan(part, inner, wall.OuterMost, mouthU, kind, recess, through);
    }

    // What stands between the mouth and the wall, where the plug's nose or overmould has to go.
    private void RefuseBlockedWay(OpeningGiven given, PortInPlan port, Reasons reasons)
    {
        double length = port.WallInner - port.MouthU;
        if (length <= PlanRules.MouthBehind)
        {
            return;
        }

        double width = port.Through ? port.Mouth.PlugWidth : port.Mouth.ShellWidth;
        Region way = PartEnvelope.Rectangle(
            _mouth.Face + Point2.Polar((length / 2) + (PlanRules.MouthBehind / 2), _mouth.Faces), length - PlanRules.MouthBehind, width,
            _mouth.Faces);
        bool onBack = Part.Side == BoardSide.Bottom;
        ImmutableArray<PartEnvelope> onSide = onBack ? PartEnvelope.OnBottom(given.File.Board) : PartEnvelope.OnTop(given.File.Board);
        string? inTheWay = onSide.FirstOrDefault(e => e.Ref != Part.Ref && e.Outline.Distance(way) == 0)?.Ref
            ?? (onBack ? given.Posts.FirstOrDefault(post => way.Distance(post.At) < post.Diameter / 2)?.Name : null);
        if (inTheWay is not null)
        {
            reasons.Refuse("plug-way-blocked", Part.Ref, $"{Part.Ref}: {inTheWay} stands between its mouth and the wall",
                0, length, "mm", new Point3(_mouth.Face.X, _mouth.Face.Y, 0), "move one of them, or bring the connector to the edge");
        }
    }

    private WallSpan? WallAhead(ShellPlan shell, double width)
    {
        Point2 along = Point2.Polar(1, _mouth.Faces);
        return WallSpan.Ahead(
            shell, _mouth.Faces, Point2.Dot(_mouth.Face, new Point2(0 - along.Y, along.X)), width,
            Math.Min(Point2.Dot(_mouth.Face, along), Point2.Dot(Part.At, along)));
    }
}
