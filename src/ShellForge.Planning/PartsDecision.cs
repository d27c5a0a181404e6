using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning;

/// <summary>The printed parts, how each lies on the bed, and by how much it is written larger so that it shrinks to size.</summary>
internal static class PartsDecision
{
    private const string FrontDown = "front face down";

    /// <summary>Decides the parts, from the floor up.</summary>
    public static Decided<ImmutableArray<PartPlan>> Decide(
        BoardFile file, StackPlan stack, ImmutableArray<InsertPost> posts, CoverSide side)
    {
        (DiffuserPlan diffuser, BafflePlan? baffle, MountPlan? mount) = (side.Diffuser, side.Baffle, side.Mount);
        var reasons = new Reasons();
        var parts = ImmutableArray.CreateBuilder<PartPlan>();
        bool joined = diffuser.Fit == DiffuserFit.OneWithCover;
        PartPlan Part(string name, FilamentProfile filament, Transform3 toPrint, string liesOn, bool lit = false,
            IEnumerable<InsertPost>? inserts = null) => new()
            {
                Name = name,
                Filament = filament,
                ToPrint = toPrint,
                LiesOn = liesOn,
                ShrinkScale = Scale(name, filament, file, reasons),
                Print = PrintsDecision.Decide(name, filament, lit, inserts ?? [], file, reasons),
            };

        parts.Add(Part(PartNames.Tub, file.Print.Shell, Transform3.Identity, "outer floor down", inserts: posts));
        parts.AddRange((side.Hold.Holder?.Parts ?? []).Select(part => Part(part.Name, file.Print.Shell, part.ToPrint, part.LiesOn) with
        {
            Pieces = part.Pieces,
        }));
        if (baffle is not null)
        {
            parts.Add(Part(PartNames.Baffle, baffle.Filament, Transform3.Shift(0, 0, 0 - baffle.Bottom), "feet down"));
        }

        if (diffuser.Fit is DiffuserFit.DropIn or DiffuserFit.PrintedIn)
        {
            bool within = diffuser.Fit is DiffuserFit.PrintedIn;
            Transform3 down = FaceDown(within ? stack.Front : stack.DiffuserOuter);
            parts.Add(Part(PartNames.Diffuser, diffuser.Filament, down, FrontDown, lit: true) with
            {
                PrintedWith = within ? PartNames.Cover : null,
                Pieces = within ? null : 1,
            });
        }

        parts.Add(Part(PartNames.Cover, joined ? diffuser.Filament : file.Print.Shell, FaceDown(stack.Front), FrontDown,
            lit: joined && (diffuser.Band is not null || !diffuser.Outline.IsEmpty)) with
        {
            Pieces = diffuser.Fit is DiffuserFit.PrintedIn ? null : 1,
        });
        parts.AddRange((mount?.Parts ?? []).Select(part =>
            Part(part.Name, file.Print.Shell, part.ToPrint, part.LiesOn) with { IsOfHousing = false }));
        return reasons.Of(parts.ToImmutable());
    }

    // Turned about x, so that the face towards the viewer lies on the bed.
    private static Transform3 FaceDown(double faceZ) =>
        Transform3.TurnX(Angle.FromDegrees(180)).Then(Transform3.Shift(0, 0, faceZ));

    private static double Scale(string name, FilamentProfile filament, BoardFile file, Reasons reasons)
    {
        bool slicer = file.Print.Printer.SlicerScalesShrinkage;
        double scale = file.Print.Printer.WrittenScale(filament);
        string path = $"parts.{name}";
        reasons.Choice($"{path}.filament", filament.Name, Reasons.Rule, $"{filament.Family}, {filament.Colour}");
        reasons.Choice($"{path}.scale", scale.ToString("0.#####", CultureInfo.InvariantCulture), filament.Name, slicer
            ? "the printer profile says that the slicer scales for shrinkage"
            : $"written larger in x and y so that it shrinks to "
                + $"size{(filament.Shrinkage.IsMeasured ? $" ({filament.Shrinkage.Source})" : "")}: switch off the slicer's own "
                + $"compensation for shrinkage, holes and elephant's foot");
        return scale;
    }
}
