using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>
/// Section of a lit band in the cover's wall, decided before the stack, which has to make room for it:
/// <code>
///   █████████████  bezel
///   ██████         wall
///   ▒▒             band: two lines of diffuser, printed between the layers of the cover
///   ███            lower wall, its inner side widening at 45 degrees so that it prints on the band
///   █████
///   ───────  parting line
/// </code>
/// </summary>
/// <param name="Thickness">Thickness of the band, mm: two lines.</param>
/// <param name="HalfHeight">Half of its height, mm.</param>
/// <param name="Slope">Height that the lower wall needs to reach its full thickness, mm.</param>
internal sealed record LitWallSection(double Thickness, double HalfHeight, double Slope)
{
    // The band's height when nobody says, mm: a side-facing LED lights about as much of a near wall.
    private const double DefaultHeight = 5.0;

    // Full wall left between slope and parting line, mm.
    private const double Land = 0.4;

    private const int Lines = 2;

    // Ribs behind the band that join the cover's upper and lower part: how many, and how wide, mm.
    private const int PillarCount = 6;
    private const double PillarWidth = 2.0;

    // Ribs are told a little longer than they stand out, mm: they are what is left of a wall, and two cuts that met just at its face would
    // leave a fin of a thousandth.
    private const double PillarRoot = 0.1;

    /// <summary>The section for a board file.</summary>
    public static LitWallSection Of(Given given, LipRing lip)
    {
        (BoardFile file, PrintBasis basis) = given;
        double wall = file.Housing.WallThickness ?? basis.Wall(file.Housing.WallLines ?? PlanRules.WallLines);
        double thickness = basis.Wall(Lines);
        return new LitWallSection(
            thickness, (file.Housing.Light.WindowWidth ?? DefaultHeight) / 2, Math.Max(0, wall + lip.Reach - thickness) + Land);
    }

    /// <summary>Height of the LEDs' axis above the board's top face, mm.</summary>
    public static double AxisHeight(BoardFile file) => file.Board.PixelCircles
        .Select(circle => (circle.Led.AxisHeight ?? circle.Led.Height).Value).DefaultIfEmpty(0).Min();

    /// <summary>Whether the LEDs shine inward, to an open bore.</summary>
    public static bool ThroughBore(HousingDraft draft) =>
        draft.Shell.Round is { HasBore: true }
        && draft.File.Board.PixelCircles.Any(circle => circle.Facing == PixelFacing.In)
        && draft.File.Board.PixelCircles.All(circle => circle.Facing != PixelFacing.Out);

    /// <summary>The band for a draft, or why it can't be built.</summary>
    public (BandPlan? Band, string? Obstacle) Band(HousingDraft draft, CoverRoom room)
    {
        double axis = draft.Stack.BoardTop + AxisHeight(draft.File);
        double bottom = draft.Basis.Up(axis - HalfHeight);
        double top = draft.Basis.Down(Math.Min(axis + HalfHeight, draft.Stack.Front - draft.Front.BezelThickness));
        if (draft.Shell.Round is null)
        {
            return (null, "only round housings get a band");
        }

        if (bottom - Slope < draft.Stack.PartingLine - Layers.Slack || top <= axis)
        {
            return (null, $"between parting line and band the wall needs {Reasons.Mm(Slope)} mm to widen without support");
        }

        return (new BandPlan(bottom, top, Pillars(draft, room), ThroughBore(draft)), null);
    }

    private Region Pillars(HousingDraft draft, CoverRoom room)
    {
        double[] at = [.. draft.File.Board.PixelCircles.SelectMany(circle => circle.Pixels)
            .Where(pixel => pixel.At.Length > PillarWidth).Select(pixel => Angle.Of(pixel.At).Normalized.Degrees).Order()];
        double[] between = at.Length < 2
            ? [.. Enumerable.Range(0, PillarCount).Select(i => i * 360.0 / PillarCount)]
            : [.. at.Select((degrees, i) => (degrees + (i + 1 < at.Length ? at[i + 1] : at[0] + 360)) / 2)];
        int step = Math.Max(1, between.Length / PillarCount);
        RoundShell round = draft.Shell.Round!;
        Region behind = ThroughBore(draft)
            ? room.Cavity.Filled().Less(room.Cavity).Less(
                RoundRegions.Disc(round, round.BoreInner + Thickness, RingSide.Outside))
            : RoundRegions.Disc(round, round.Outer - Thickness, RingSide.Inside).Less(room.Cavity.Filled());
        return Region.Union(between.Where((_, i) => i % step == 0)
            .Select(degrees =>
                Strips.Radial(Angle.FromDegrees(degrees), PillarWidth, 0, round.Outer + 1).Intersect(behind.Offset(PillarRoot))));
    }
}
