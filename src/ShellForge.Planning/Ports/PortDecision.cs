using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Ports;

/// <summary>
/// The port ladder: a closed opening where the overmould may touch the wall; a recess where the mouth lies deeper; a slot with a tongue
/// on the cover where the connector stands in the wall, since the board could not be lowered in otherwise; an opening for the
/// whole overmould where a recess would leave no wall; refusal where no plug can come.
/// </summary>
internal static class PortDecision
{
    /// <summary>Decides each port in plan.</summary>
    public static Decided<ImmutableArray<PortInPlan>> InPlan(
        BoardFile file, PrintBasis basis, ShellPlan shell, ImmutableArray<Joint> joints)
    {
        var reasons = new Reasons();
        var ports = ImmutableArray.CreateBuilder<PortInPlan>();
        foreach (BoardPart part in PortedParts.Of(file))
        {
            if (InPlan(file, part, basis, shell, reasons) is { } port)
            {
                ports.Add(port);
                RefuseBlockedWay(file, port, basis, joints, reasons);
            }
        }

        return reasons.Of(ports.ToImmutable());
    }

    /// <summary>Sets each port at its height.</summary>
    public static Decided<ImmutableArray<PortPlan>> AtHeight(
        BoardFile file, PrintBasis basis, ShellPlan shell, ImmutableArray<PortInPlan> ports, BoardLevels levels)
    {
        var reasons = new Reasons();
        return reasons.Of(ports.Select(p => AtHeight(file, p, basis, shell, levels, reasons)).ToImmutableArray());
    }

    private static PortInPlan? InPlan(BoardFile file, BoardPart part, PrintBasis basis, ShellPlan shell, Reasons reasons)
    {
        ConnectorMouth mouth = part.Mouth!;
        MouthProfile profile = mouth.Profile;
        string path = $"ports.{part.Ref}";
        double mouthU = Point2.Dot(mouth.Face, Point2.Polar(1, mouth.Faces));
        double deepest = profile.PlugLength - PlanRules.GripOf(profile) + (profile.IsDrawnByLeads ? 0 : shell.Wall);
        WallSpan? ahead = WallAhead(shell, part, profile.RecessWidth);
        double behind = ahead?.OuterMost - mouthU ?? 0;
        if (ahead is not { } wall || behind > deepest)
        {
            reasons.Refuse("no-way-for-plug", part.Ref,
                ahead is not null && behind <= profile.PlugLength
                    ? $"the wall's face lies {Reasons.Mm(Math.Round(behind, 2))} mm before its mouth, a plug "
                        + $"{Reasons.Mm(profile.PlugLength)} mm long leaves too little to grip; planned without a port"
                    : "no wall within a plug's length in front of its mouth; planned without a port",
                behind, deepest, "mm",
                new Point3(mouth.Face.X, mouth.Face.Y, 0), "turn the connector to the edge, or take the cable out through a notch");
            return null;
        }

        double beside = (WallAhead(shell, part, Math.Max(profile.ShellWidth, part.Width)) ?? wall).InnerLeast;
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

        return new PortInPlan(part, wall.InnerLeast, wall.OuterMost, mouthU, kind, recess, through);
    }

    // What stands between the mouth and the wall, where the plug's nose or overmould has to go.
    private static void RefuseBlockedWay(
        BoardFile file, PortInPlan port, PrintBasis basis, ImmutableArray<Joint> joints, Reasons reasons)
    {
        double length = port.WallInner - port.MouthU;
        if (length <= PlanRules.MouthBehind)
        {
            return;
        }

        ConnectorMouth mouth = port.Part.Mouth!;
        double width = port.Through ? port.Mouth.PlugWidth : port.Mouth.ShellWidth;
        Region way = PartEnvelope.Rectangle(
            mouth.Face + Point2.Polar((length / 2) + (PlanRules.MouthBehind / 2), mouth.Faces), length - PlanRules.MouthBehind, width,
            mouth.Faces);
        IEnumerable<PartEnvelope> onSide = port.Part.Side == BoardSide.Bottom
            ? PartEnvelope.OnBottom(file.Board) : PartEnvelope.OnTop(file.Board);
        string? inTheWay = onSide.FirstOrDefault(e => e.Ref != port.Part.Ref && e.Outline.Distance(way) == 0)?.Ref
            ?? (port.Part.Side == BoardSide.Bottom
                ? joints.FirstOrDefault(j => way.Distance(j.Hole.At) < InsertHoleDecision.BossDiameter(j.Insert, basis) / 2)?.Hole.Name
                    : null);
        if (inTheWay is not null)
        {
            reasons.Refuse("plug-way-blocked", port.Part.Ref, $"{port.Part.Ref}: {inTheWay} stands between its mouth and the wall",
                0, length, "mm", new Point3(mouth.Face.X, mouth.Face.Y, 0), "move one of them, or bring the connector to the edge");
        }
    }

    private static PortPlan AtHeight(
        BoardFile file, PortInPlan port, PrintBasis basis, ShellPlan shell, BoardLevels levels, Reasons reasons)
    {
        MouthProfile mouth = port.Mouth;
        string path = $"ports.{port.Part.Ref}";
        double axis = port.Part.Side == BoardSide.Bottom
            ? levels.BoardBottom - port.AxisOffBoard : levels.BoardTop + port.AxisOffBoard;
        double width = port.Through ? mouth.RecessWidth : mouth.OpeningWidth;
        double height = port.Through ? mouth.RecessHeight : mouth.OpeningHeight;
        double lowest = axis - (height / 2);
        double highest = axis + (height / 2);
        if (port.Kind == PortKind.SlotWithTongue)
        {
            // The connector itself stands in the wall: the slot clears its whole body, which may be taller than the plug's opening.
            double loose = file.Print.Printer.LooseFit;
            (double low, double high) = BodyHeights(port.Part, levels);
            width = Math.Max(width, Math.Max(mouth.ShellWidth, port.Part.Width) + (2 * loose));
            lowest = Math.Min(lowest, Math.Max(low - loose, levels.FloorTop));
            highest = Math.Max(highest, high + loose);
        }

        double bottom = basis.Down(lowest);
        double top = basis.Up(highest);
        double recessBottom = basis.Down(axis - (mouth.RecessHeight / 2));
        double recessTop = basis.Up(axis + (mouth.RecessHeight / 2));
        var roof = RoofSlant.For(file.Print.Printer.OverhangDegrees);
        double roundness = mouth.RecessCornerRadius / (Math.Min(mouth.RecessWidth, mouth.RecessHeight) / 2);
        RecessPlan? recess = port.RecessFace is double face
            ? new RecessPlan(mouth.RecessWidth, recessBottom, recessTop,
                Corner(mouth.RecessWidth, recessTop - recessBottom, roundness, roof, file), face)
            : null;
        double gap = file.Print.Printer.SlotFit;
        TonguePlan? tongue = port.Kind == PortKind.SlotWithTongue
            ? new TonguePlan(width - (2 * gap), top, gap, shell.Wall, width) : null;
        double behind = (port.RecessFace ?? (port.Through ? port.MouthU : port.WallFace)) - port.MouthU;
        reasons.Length($"{path}.axis", axis, port.Part.Package?.Name ?? Reasons.Rule, "height of the mouth's axis over the outer floor");
        if (port.Kind != PortKind.SlotWithTongue || recess is not null)
        {
            reasons.Choice($"{path}.roof",
                string.Create(CultureInfo.InvariantCulture, $"slants {roof.Lean.Degrees:0.#} degrees from the vertical"),
                file.Print.Printer.Name,
                string.Create(CultureInfo.InvariantCulture,
                    $"they print without support: the printer manages {(double)file.Print.Printer.OverhangDegrees:0.#}, and on a curved "
                        + $"wall layers step out a little farther"));
        }

        reasons.Length($"{path}.opening-width", width, port.Part.Package?.Name ?? Reasons.Rule,
            port.Through ? mouth.RecessWidth.Source : mouth.OpeningWidth.Source);
        reasons.Length($"{path}.opening-height", Math.Round(top - bottom, 6), port.Part.Package?.Name ?? Reasons.Rule,
            "the profile's, out to whole layers");
        return new PortPlan
        {
            Ref = port.Part.Ref,
            Kind = port.Kind,
            Faces = port.Part.Mouth!.Faces,
            Face = port.Part.Mouth.Face,
            AxisZ = axis,
            Mouth = mouth,
            OpeningWidth = width,
            OpeningBottom = bottom,
            OpeningTop = top,
            Roof = roof,
            OpeningCornerRadius = Corner(width, top - bottom, roundness, roof, file),
            WallFace = port.WallFace,
            WallInner = port.WallInner,
            MouthBehind = Math.Max(0, behind),
            Recess = recess,
            Tongue = tongue,
        };
    }

    // Body of a part between the heights z, as far as it is known.
    private static (double Low, double High) BodyHeights(BoardPart part, BoardLevels levels)
    {
        double near = part.Lift;
        double far = part.Height ?? part.Lift;
        return part.Side == BoardSide.Bottom
            ? (levels.BoardBottom - far, levels.BoardBottom - near)
            : (levels.BoardTop + near, levels.BoardTop + far);
    }

    // As round as the overmould is, and round enough that the flat of the roof between its slants can be bridged.
    private static double Corner(double width, double height, double roundness, RoofSlant roof, BoardFile file)
    {
        double half = Math.Min(width, height) / 2;
        double wanted = Math.Max(half * Math.Min(roundness, 1), (width - file.Print.Printer.BridgeNote) / (2 * roof.Across));
        return Math.Min(Math.Floor(100 * Math.Clamp(wanted, Math.Min(1, half), half)) / 100, half);
    }

    private static WallSpan? WallAhead(ShellPlan shell, BoardPart part, double width)
    {
        ConnectorMouth mouth = part.Mouth!;
        Point2 along = Point2.Polar(1, mouth.Faces);
        return WallSpan.Ahead(
            shell, mouth.Faces, Point2.Dot(mouth.Face, new Point2(0 - along.Y, along.X)), width,
            Math.Min(Point2.Dot(mouth.Face, along), Point2.Dot(part.At, along)));
    }
}
