using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>
/// Decides how the diffuser is held. Two filaments in the same layers take a printer that changes between them by itself: with one spool
/// somebody would stand beside it and change by hand in each of those layers.
/// </summary>
internal static class DiffuserHold
{
    /// <summary>The fit of a diffuser in the front, with its reason and what it can't be.</summary>
    public static DiffuserFit Decide(BoardFile file, FrontLimits limits, Reasons reasons)
    {
        (DiffuserFit fit, string why) = Of(file);
        string from = file.Housing.Diffuser switch
        {
            { Fit: not null } => Reasons.Origin(file, "housing.diffuser.fit"),
            { Sheet: not null } => Reasons.Origin(file, "housing.diffuser.sheet"),
            _ => Reasons.Origin(file, "print.printer"),
        };
        reasons.Choice("diffuser.fit", Name(fit), from, why);
        if (file.Housing.Diffuser.Fit == DiffuserWish.PrintedIn && fit == DiffuserFit.DropIn)
        {
            reasons.Replace(
                "unlike-plastics-fused", "diffuser.fit",
                $"The diffuser can't be printed into the cover: {file.Print.Shell.Family} and {file.Print.Diffuser.Family} do not fuse. "
                    + $"It is planned as a part of its own.",
                0, 1, "", Place(limits), "take 'print.shell' and 'print.diffuser' of one family, or 'diffuser: {fit: drop-in}'");
        }

        if (file.Housing.Diffuser.Fit == DiffuserWish.PrintedIn && fit == DiffuserFit.OneWithCover)
        {
            TellOneBody(file, limits, reasons);
        }

        return fit;
    }

    /// <summary>The fit of a band in the wall, which nothing but the cover itself can hold.</summary>
    public static DiffuserFit DecideBand(BoardFile file, FrontLimits limits, Reasons reasons)
    {
        bool same = file.Print.Shell.Name == file.Print.Diffuser.Name;
        reasons.Choice("diffuser.fit", "band in the wall", Reasons.Origin(file, "housing.light.through"),
            same ? "cover and band are of one filament" : "printed between the cover's layers, which change filament there");
        if (!same && file.Print.Shell.Family != file.Print.Diffuser.Family)
        {
            reasons.Refuse("unlike-plastics-fused", "diffuser",
                $"The band has to fuse with the cover, and {file.Print.Shell.Family} and {file.Print.Diffuser.Family} do not.",
                0, 1, "", Place(limits), "take both filaments of one family");
        }

        if (file.Housing.Diffuser.Fit == DiffuserWish.DropIn)
        {
            reasons.Replace(
                "band-not-drop-in", "diffuser.fit",
                "A band in the wall can't be a part of its own: the cover above it would hang on nothing.",
                0, 1, "", Place(limits), "leave 'diffuser.fit' out, or let the light through the front with 'light: {through: front}'");
        }
        else if (file.Housing.Diffuser.Fit is not null && same)
        {
            TellOneBody(file, limits, reasons);
        }

        return same ? DiffuserFit.OneWithCover : DiffuserFit.PrintedIn;
    }

    /// <summary>How the diffuser is held, and why.</summary>
    public static (DiffuserFit Fit, string Why) Of(BoardFile file)
    {
        FilamentProfile shell = file.Print.Shell;
        FilamentProfile diffuser = file.Print.Diffuser;
        PrinterProfile printer = file.Print.Printer;
        return file.Housing.Diffuser.Sheet is not null
                ? (DiffuserFit.CutSheet, "a cut sheet was asked for; it lies behind the bezel")
            : file.Housing.Diffuser.Fit == DiffuserWish.DropIn
                ? (DiffuserFit.DropIn, "as asked: a part of its own behind the bezel")
            : shell.Name == diffuser.Name
                ? (DiffuserFit.OneWithCover, "cover and diffuser are of one filament")
            : shell.Family != diffuser.Family
                ? (DiffuserFit.DropIn, $"{shell.Family} and {diffuser.Family} do not bond: a part of its own behind the bezel")
            : file.Housing.Diffuser.Fit == DiffuserWish.PrintedIn
                ? (DiffuserFit.PrintedIn, "as asked; a lap locks it in")
            : printer.Filaments >= 2
                ? (DiffuserFit.PrintedIn,
                    $"{shell.Name} and {diffuser.Name} are one family and fuse, and {printer.Name} changes between them; a lap locks it "
                        + $"in all the same")
                : (DiffuserFit.DropIn, $"{printer.Name} prints one filament at a time: a part of its own behind the bezel");
    }

    private static void TellOneBody(BoardFile file, FrontLimits limits, Reasons reasons) => reasons.Replace(
        "diffuser-one-with-cover", "diffuser.fit",
        $"Cover and diffuser are both of {file.Print.Diffuser.Name}: they are one body, and nothing is printed into it.",
        1, 2, "filaments", Place(limits), "leave 'diffuser.fit' out, or name another filament at 'print.diffuser'");

    private static Point3 Place(FrontLimits limits) => new(0, 0, limits.LedWindow);

    private static string Name(DiffuserFit fit) => fit switch
    {
        DiffuserFit.OneWithCover => "one with the cover",
        DiffuserFit.PrintedIn => "printed in",
        DiffuserFit.DropIn => "drop-in",
        _ => "cut sheet",
    };
}
