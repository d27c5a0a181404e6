using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>Decides window, bezel and diffuser: how it is held, how thick it is, how far it lies from the LEDs.</summary>
internal static class FrontDecision
{
    // How much light a filament must throw back to count as white. Typical.
    private const double DarkReflectance = 0.3;

    // Default thickness, mm: what makers settle on for white, and a thicker one for natural filament.
    private const double WhiteThickness = 0.8;
    private const double NaturalThickness = 1.2;

    // The lap that locks a printed-in diffuser into the bezel, mm; half of it lies in front of, half behind more bezel.
    private const double LapWidth = 1.5;
    private const double LapInset = 0.8;
    private const double LapThickness = 0.4;
    private const int LapLayers = 2;

    // How far a drop-in diffuser reaches behind the bezel, mm.
    private const double LedgeWanted = 2.0;

    // Beyond this a housing is no longer the flat thing that was asked for, mm.
    private const double LargestDistance = 30;

    /// <summary>The front of a housing.</summary>
    public static Decided<FrontDraft> Decide(
        Given given, InPlan choice, FrontLimits limits)
    {
        (BoardFile file, PrintBasis basis) = given;
        (ShellPlan shell, CoverRoom room, LipSection lip) = (choice.Shell, choice.Room, choice.Lip);
        if (file.Housing.Light.Through == LightThrough.Wall)
        {
            return LitWallFront(given, lip, limits);
        }

        var reasons = new Reasons();
        DiffuserFit fit = DiffuserHold.Decide(file, limits, reasons);
        double thickness = Thickness(given, reasons);
        (double bezel, double over) = Bezel(given, fit, thickness, reasons);

        BaffleSection baffle = BaffleSection.Of(file.Print.Printer);
        var lit = LitWindow.Of(file, room, baffle, fit, choice.Closure.PostsInBore(file.Board));
        if (!lit.HasRoom)
        {
            return WithoutWindow(file, room, limits, thickness, bezel, reasons);
        }

        lit.Note(fit, reasons);
        Region window = lit.Outline(shell, room);
        bool inFront = fit is DiffuserFit.DropIn or DiffuserFit.CutSheet;
        Region outline = inFront ? lit.Sheet(shell, room, LedgeWanted) : window;
        Region bars = lit.Bars(basis, fit);
        if (!bars.IsEmpty)
        {
            reasons.Choice("cover.bars", inFront ? "across the window" : "behind the diffuser", Reasons.Rule,
                "they join the bezel's inner and outer part, which nothing else would");
        }

        PlannedLight light = lit.Light(
            thickness, bars: !inFront && !bars.IsEmpty, BaffleDecision.TopOfBridges(choice.Closure, basis, limits) - limits.LedWindow);
        double distance = Distance(given, limits, (thickness + over, bezel), light, reasons);
        double expected = light.MinimumOverMean(distance, given.Memory);
        var diffuser = new DiffuserPlan
        {
            Fit = fit,
            Outline = outline,
            Thickness = thickness,
            Distance = distance,
            Filament = file.Print.Diffuser,
            ExpectedMinimumOverMean = expected,
            Field = lit.Field,
            Lap = fit == DiffuserFit.PrintedIn
                ? Lap(window, shell,
                    reasons.Length("diffuser.lap", ThicknessOfLap(basis), Reasons.Rule,
                        $"{Reasons.Mm(LapThickness)}, and {LapLayers} layers at least: one tears"))
                : null,
        };
        return reasons.Of(new FrontDraft(diffuser, inFront ? window.Less(bars) : window, bezel, over)
        {
            Bars = inFront ? Region.Empty : bars,
        });
    }

    // With light through the wall the board's edge and its gap say how far LEDs lie from the band, and nothing is left to solve for.
    private static void NoteUnused(BoardFile file, FrontLimits limits, Reasons reasons)
    {
        if (file.Housing.Diffuser.Distance is double asked)
        {
            reasons.Replace(
                "diffuser-distance-unused", "diffuser.distance",
                $"With 'light.through: wall' the LEDs' places and the gap at the board's edge say how far the wall lies; the "
                    + $"{Reasons.Mm(asked)} mm asked for change nothing.",
                asked, 0, "mm", new Point3(0, 0, limits.LedWindow),
                "move the LEDs in from the edge or widen 'clearance.board-edge', and leave 'diffuser.distance' to 'auto'");
        }

        reasons.Choice("light.evenness", file.Housing.Light.EvennessWord, Reasons.Origin(file, "housing.light.evenness"),
            "the band's evenness follows from the LEDs' places; it is checked against this, not planned by it");
    }

    // Neither a ring or disc about the board's middle nor a window round its LEDs has room: the front is closed.
    private static Decided<FrontDraft> WithoutWindow(
        BoardFile file, CoverRoom room, FrontLimits limits, double thickness, double bezel, Reasons reasons)
    {
        Region inside = room.Cavity.Filled();
        bool within = !inside.IsEmpty && inside.Contains(Point2.Origin);
        double radius = within ? inside.DistanceToOutline(Point2.Origin) : 0;
        string where = within ? $"the cover's wall passes {Reasons.Mm(radius)} mm from the board's middle"
            : "the board's middle, [0, 0] of the plan, lies outside of the cover's walls";
        reasons.Choice("cover.window", "none", Reasons.Rule, where);
        reasons.Refuse(
            "no-room-for-window", "light.window",
            $"There is no room for a lit window: {where}. The front is planned closed.",
            radius, LitBand.LeastRadius, "mm", new Point3(0, 0, limits.LedWindow),
            "a board outline with its middle farther inside ('board.centre' moves the middle), or fewer 'walls'");
        double front = Math.Max(limits.LowestFront, limits.LowestInner + bezel);
        double distance = Math.Max(file.Housing.Diffuser.Distance ?? 0, front - bezel - limits.LedWindow);
        var diffuser = new DiffuserPlan
        {
            Fit = DiffuserFit.OneWithCover,
            Outline = Region.Empty,
            Thickness = thickness,
            Distance = distance,
            Filament = file.Print.Diffuser,
            ExpectedMinimumOverMean = 0,
        };
        return reasons.Of(new FrontDraft(diffuser, Region.Empty, bezel, Math.Max(0, bezel - thickness)));
    }

    // The front is closed: the band is worked out with the stack.
    private static Decided<FrontDraft> LitWallFront(Given given, LipSection lip, FrontLimits limits)
    {
        (BoardFile file, PrintBasis basis) = given;
        var reasons = new Reasons();
        LitWallSection section = LitWallSection.Of(given, lip);
        DiffuserFit fit = DiffuserHold.DecideBand(file, limits, reasons);
        NoteUnused(file, limits, reasons);
        double bezel = reasons.Length("cover.bezel.thickness", basis.Up(OpaqueThickness.Other), Reasons.Rule, "closed front");
        reasons.Length("diffuser.thickness", section.Thickness, Reasons.Rule, "2 lines of wall");
        double tallestUp = file.Board.PixelCircles.Where(circle => circle.Facing == PixelFacing.Up)
            .Select(circle => circle.Led.Height.Value).DefaultIfEmpty(0).Max();
        double axis = limits.LedWindow - tallestUp + LitWallSection.AxisHeight(file);
        double front = basis.Up(Math.Max(
            Math.Max(limits.LowestFront, limits.LowestInner + bezel), axis + section.HalfHeight + bezel + basis.Layer));
        return reasons.Of(new FrontDraft(
            new DiffuserPlan
            {
                Fit = fit,
                Outline = Region.Empty,
                Thickness = section.Thickness,
                Distance = front - bezel - limits.LedWindow,
                Filament = file.Print.Diffuser,
                ExpectedMinimumOverMean = 1,
            },
            Region.Empty, bezel, bezel - section.Thickness));
    }

    private static LapPlan Lap(Region window, ShellPlan shell, double thickness) => new(
        window.Offset(LapWidth).Intersect(shell.Footprint.Offset(-LapWidth)).Less(window.Offset(-LapInset)), thickness, LapInset);

    private static double ThicknessOfLap(PrintBasis basis) => basis.UpDistance(Math.Max(LapThickness, LapLayers * basis.Layer));

    private static double Thickness(Given given, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis) = given;
        DiffuserSpec spec = file.Housing.Diffuser;
        if (spec.Sheet is double sheet)
        {
            return reasons.Length("diffuser.thickness", sheet, Reasons.Origin(file, "housing.diffuser.sheet"), "the sheet's thickness");
        }

        bool pigmented = file.Print.Diffuser.TransmissionLength < PlanRules.PigmentedLength;
        double wanted = spec.Thickness ?? (pigmented ? WhiteThickness : NaturalThickness);
        double thickness = basis.Up(wanted);
        return reasons.Length(
            "diffuser.thickness",
            thickness,
            Reasons.Origin(file, "housing.diffuser.thickness"),
            spec.Thickness is not null ? "as asked, in whole layers"
                : pigmented ? "0.8 of white: thinner shows dots, thicker is dim" : "1.2 of natural filament: it scatters less");
    }

    private static (double Bezel, double Over) Bezel(
        Given given, DiffuserFit fit, double thickness, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis) = given;
        bool dark = file.Print.Shell.Reflectance < DarkReflectance;
        double opaque = dark ? OpaqueThickness.Black : OpaqueThickness.Other;
        (double wanted, string why) = fit switch
        {
            DiffuserFit.PrintedIn => (
                Math.Max(opaque, thickness + (2 * ThicknessOfLap(basis))),
                "the diffuser, its lap and as much bezel behind the lap"),
            _ => (Math.Max(opaque, fit == DiffuserFit.OneWithCover ? thickness : 0),
                dark ? "1.2 of black stops light" : "1.6 of an opaque colour stops light"),
        };
        double bezel = reasons.Length("cover.bezel.thickness", basis.Up(wanted), Reasons.Rule, why);
        return (bezel, fit is DiffuserFit.DropIn or DiffuserFit.CutSheet ? bezel : 0);
    }

    private static double Distance(
        Given given, FrontLimits limits, (double OverInner, double Bezel) thick, PlannedLight planned, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis) = given;
        DiffuserSpec spec = file.Housing.Diffuser;
        LightSpec light = file.Housing.Light;
        (double wanted, bool even) = spec.Distance is double said
            ? (said, true) : planned.DistanceFor(light.MinimumOverMean, LargestDistance, given.Memory);
        double overParts = Math.Max(limits.LowestInner, limits.LowestBezel + thick.Bezel - thick.OverInner);
        double least = Math.Max(overParts, limits.LowestFront - thick.OverInner) - limits.LedWindow;
        double free = basis.Up(limits.LedWindow + Math.Max(wanted, least));
        double most = spec.Distance is null && given.FrontAtMost is double front ? basis.Down(front - thick.OverInner) : free;
        double inner = Math.Max(basis.Up(limits.LedWindow + least), Math.Min(free, most));
        double distance = inner - limits.LedWindow;
        string from = Reasons.Origin(file, "housing.diffuser.distance");
        if (inner < free - Layers.Slack)
        {
            reasons.Note(new PlanRefusal(
                "size-costs-evenness", "diffuser",
                $"The diffuser comes {Reasons.Mm(Math.Round(free - inner, 2))} mm nearer to the LEDs than "
                    + $"'evenness: {light.EvennessWord}' asks: the height is fixed.",
                distance, free - limits.LedWindow, "mm", new Point3(0, 0, inner),
                $"'size: {{height: {Reasons.Mm(Math.Round(free + thick.OverInner, 2))}}}' for light as even as asked"));
        }

        string why = inner < free - Layers.Slack
                ? $"as far as the height asked for leaves; '{light.EvennessWord}' asks for "
                    + $"{Reasons.Mm(Math.Round(free - limits.LedWindow, 2))}"
            : wanted < least - Layers.Slack ? $"raised from {Reasons.Mm(wanted)}: {limits.Why}"
            : spec.Distance is not null ? "as asked, in whole layers"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{(even ? "least distance" : "the most even there is, not enough")} for '{light.EvennessWord}', which asks for "
                    + $"{100 * light.MinimumOverMean:0} % of the mean light {planned.JudgedAlong}");
        reasons.Length("diffuser.distance", distance, from, why);
        if (spec.Distance is double asked && distance > asked + basis.Layer)
        {
            reasons.Replace(
                "diffuser-distance-raised", "diffuser", $"The diffuser can't lie {Reasons.Mm(asked)} from the LEDs: {limits.Why}.",
                distance, asked, "mm", new Point3(0, 0, inner), "ask for a larger distance, or leave it to 'auto'");
        }

        return distance;
    }
}
