using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Openings;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning;

/// <summary>Tells each wish that the finished plan has no use for, by its key: none is taken and dropped.</summary>
internal static class UnusedWishes
{
    /// <summary>Notes them.</summary>
    public static void Tell(HousingDraft draft, CoverSide cover, Reasons reasons)
    {
        HousingSpec wish = draft.File.Housing;
        Point3 front = new(0, 0, draft.Stack.LedWindow);
        if (wish.Light.Through == LightThrough.Wall)
        {
            TellOfWall(draft.File, cover, front, reasons);
        }

        if (cover.Baffle is null && draft.File.Print.Baffle is { } filament)
        {
            reasons.Replace(
                "no-baffle", "print.baffle", $"This housing has no baffle: {filament.Name} is not used for one.",
                0, 1, "baffles", front, "leave 'print.baffle' out");
        }

        ScrewJointPlan[] closing = [.. draft.Screws.Where(screw => screw.Use is ScrewUse.Closure)];
        int screws = closing.Length;
        bool shared = draft.File.Board.Holes.Any(hole => closing.Any(screw => screw.At == hole.At));
        if (cover.Closure is ScrewClosurePlan && shared && wish.ClosureScrews is int asked && screws != asked)
        {
            reasons.Replace(
                "closure-screws-by-holes", "closure-screws",
                $"The cover's screws go through the board's own holes: they are {screws}, not the {asked} asked for.",
                screws, asked, "screws", front, $"leave 'closure-screws' out, or give the board {asked} holes for them");
        }

        foreach (BoardPart part in draft.File.Board.Parts.Where(
            part => part.Port == PortWish.Open && PartOpeningForm.For(part) is null))
        {
            reasons.Replace(
                "port-without-mouth", part.Ref, $"{part.Ref} takes no plug and is no button, so 'port: open' opens nothing.",
                0, 1, "ports", new Point3(part.At.X, part.At.Y, draft.Stack.BoardBottom),
                "leave 'port' out; packages of connectors have a 'mouth', those of buttons a 'pusher'");
        }
    }

    // The band's thickness is that of the printed wall, its light is not parted, and nothing stands over the LEDs.
    private static void TellOfWall(BoardFile file, CoverSide cover, Point3 at, Reasons reasons)
    {
        DiffuserSpec diffuser = file.Housing.Diffuser;
        if (diffuser.Thickness is double thickness)
        {
            reasons.Replace(
                "band-thickness-fixed", "diffuser.thickness",
                $"A band in the wall is two lines thick, {Reasons.Mm(cover.Diffuser.Thickness)} mm: the {Reasons.Mm(thickness)} mm asked "
                    + $"for change nothing.",
                cover.Diffuser.Thickness, thickness, "mm", at, "leave 'diffuser.thickness' out, or let the light through the front");
        }

        if (diffuser.Sheet is double sheet)
        {
            reasons.Replace(
                "band-not-of-sheet", "diffuser.sheet",
                $"A band in the wall is printed with it: a cut sheet of {Reasons.Mm(sheet)} mm has no place there.",
                0, 1, "sheets", at, "leave 'diffuser.sheet' out, or let the light through the front");
        }

        if (file.Housing.Light.Look == LightLook.Pixels)
        {
            reasons.Replace(
                "band-without-cells", "light.look",
                "Behind a band in the wall there are no cells: neighbours blend.",
                0, 1, "", at, "take 'look: blend', or let the light through the front");
        }

        if (file.Housing.BaffleJoined)
        {
            reasons.Replace(
                "baffle-not-joined", "baffle", "With light through the wall there is no baffle that could be joined to the cover.",
                0, 1, "baffles", at, "leave out 'baffle: joined'");
        }
    }
}
