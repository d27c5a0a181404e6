using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Openings;

/// <summary>A port as far as it is decided before the heights are: everything in plan.</summary>
/// <param name="Part">The connector's part.</param>
/// <param name="WallInner">u of the nearest inner wall face across what is cut, mm.</param>
/// <param name="WallFace">u of the farthest outer wall face across the plug's width, mm.</param>
/// <param name="MouthU">u of the mouth's face, mm.</param>
/// <param name="Kind">Rung of the ladder.</param>
/// <param name="RecessFace">u of the recess's floor; null without a recess.</param>
/// <param name="Through">Whether the wall opens as wide as the overmould.</param>
internal sealed record PortInPlan(
    BoardPart Part, double WallInner, double WallFace, double MouthU, PortKind Kind, double? RecessFace, bool Through) : OpeningInPlan(Part.Ref)
{
    /// <summary>Sizes of mouth and plug.</summary>
    public MouthProfile Mouth => Part.Mouth!.Profile;

    /// <inheritdoc />
    public override (string What, double Height)? BelowBoard =>
        Part.Side == BoardSide.Bottom ? ($"the plug at {Part.Ref}", AxisOffBoard + (TallestCut / 2)) : null;

    /// <inheritdoc />
    public override WallStretch InWall => new(
        Part.Mouth!.Face, Part.Mouth.Faces, Math.Max(Mouth.RecessWidth, Mouth.ShellWidth), Kind == PortKind.SlotWithTongue);

    // Height of whatever is cut widest along z, mm.
    private double TallestCut => RecessFace is not null || Through ? Mouth.RecessHeight : Mouth.OpeningHeight;

    // Height of the mouth's axis off the board face that the part sits on, mm.
    private double AxisOffBoard => Mouth.AxisHeight + Part.Lift;

    /// <summary>Width of a slot that a connector's body is lowered into, mm.</summary>
    public static double SlotWidth(BoardPart part, PrinterProfile printer) =>
        Math.Max(part.Mouth!.Profile.ShellWidth, part.Width) + (2 * printer.LooseFit);

    /// <inheritdoc />
    public override OpeningPlan AtHeight(HeightGiven given, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis, _, BoardLevels levels, _) = given;
        ShellPlan shell = given.Shell;
        MouthProfile mouth = Mouth;
        string path = $"ports.{Part.Ref}";
        double axis = Part.Side == BoardSide.Bottom
            ? levels.BoardBottom - AxisOffBoard : levels.BoardTop + AxisOffBoard;
        double width = Through ? mouth.RecessWidth : mouth.OpeningWidth;
        double height = Through ? mouth.RecessHeight : mouth.OpeningHeight;
        double lowest = axis - (height / 2);
        double highest = axis + (height / 2);
        if (Kind == PortKind.SlotWithTongue)
        {
            // The connector itself stands in the wall: the slot clears its whole body, which may be taller than the plug's opening.
            double loose = file.Print.Printer.LooseFit;
            (double low, double high) = BodyHeights(Part, levels);
            width = Math.Max(width, SlotWidth(Part, file.Print.Printer));
            lowest = Math.Min(lowest, Math.Max(low - loose, levels.FloorTop));
            highest = Math.Max(highest, high + loose);
        }

        double bottom = basis.Down(lowest);
        double top = basis.Up(highest);
        double recessBottom = basis.Down(axis - (mouth.RecessHeight / 2));
        double recessTop = basis.Up(axis + (mouth.RecessHeight / 2));
        var roof = RoofSlant.For(file.Print.Printer.OverhangDegrees);
        double bridged = file.Print.Printer.BridgeNote;
        RecessPlan? recess = RecessFace is double face
            ? new RecessPlan(mouth.RecessWidth, recessBottom, recessTop,
                roof.PlugCorner((mouth.RecessWidth, recessTop - recessBottom), mouth, bridged), face)
            : null;
        double gap = file.Print.Printer.SlotFit;
        TonguePlan? tongue = Kind == PortKind.SlotWithTongue
            ? new TonguePlan(width - (2 * gap), top, gap, shell.Wall, width) : null;
        double behind = (RecessFace ?? (Through ? MouthU : WallFace)) - MouthU;
        reasons.Length($"{path}.axis", axis, Part.Package?.Name ?? Reasons.Rule, "height of the mouth's axis over the outer floor");
        if (Kind != PortKind.SlotWithTongue || recess is not null)
        {
            reasons.Choice($"{path}.roof",
                string.Create(CultureInfo.InvariantCulture, $"slants {roof.Lean.Degrees:0.#} degrees from the vertical"),
                file.Print.Printer.Name,
                string.Create(CultureInfo.InvariantCulture,
                    $"they print without support: the printer manages {(double)file.Print.Printer.OverhangDegrees:0.#}, and on a curved "
                        + $"wall layers step out a little farther"));
        }

        if (recess is not null)
        {
            reasons.Length($"{path}.recess-corner", recess.CornerRadius, Part.Package?.Name ?? Reasons.Rule,
                $"corners of {Reasons.Mm(mouth.PlugCornerRadius)} on the plug's overmould pass it: {mouth.PlugCornerRadius.Source}");
        }

        reasons.Length($"{path}.opening-width", width, Part.Package?.Name ?? Reasons.Rule,
            Through ? mouth.RecessWidth.Source : mouth.OpeningWidth.Source);
        reasons.Length($"{path}.opening-height", Math.Round(top - bottom, 6), Part.Package?.Name ?? Reasons.Rule,
            "the profile's, out to whole layers");
        return new PortPlan
        {
            Ref = Part.Ref,
            Kind = Kind,
            Faces = Part.Mouth!.Faces,
            Face = Part.Mouth.Face,
            AxisZ = axis,
            Mouth = mouth,
            OpeningWidth = width,
            OpeningBottom = bottom,
            OpeningTop = top,
            Roof = roof,
            OpeningCornerRadius = Through ? roof.PlugCorner((width, top - bottom), mouth, bridged)
                : roof.Corner((width, top - bottom), mouth, bridged),
            WallFace = WallFace,
            WallInner = WallInner,
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
}
