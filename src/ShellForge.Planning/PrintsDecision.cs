using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Prints;

namespace ShellForge.Planning;

/// <summary>
/// How a part is printed. Lines, skins and infill are the printer profile's; what light passes is solid, and so is a post that holds a
/// heat-set insert, since an insert in sparse infill spins and pulls out.
/// </summary>
internal static class PrintsDecision
{
    private const double Solid = 1;

    // In turn from layer to layer: no direction is favoured.
    private static readonly ImmutableArray<double> Crosswise = [45, 135];

    /// <summary>Decides for one part.</summary>
    /// <param name="part">Name of the part.</param>
    /// <param name="filament">Its filament.</param>
    /// <param name="lit">Whether light passes it.</param>
    /// <param name="posts">Posts of it that hold inserts.</param>
    /// <param name="file">What was asked for.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public static PartPrint Decide(
        string part, FilamentProfile filament, bool lit, IEnumerable<InsertPost> posts, BoardFile file, Reasons reasons)
    {
        PrinterProfile printer = file.Print.Printer;
        PrintBasis basis = PrintBasis.Of(printer);
        string path = $"parts.{part}";
        int perimeters = (int)printer.Motion.Perimeters;
        int skins = (int)printer.Motion.SkinLayers;
        double infill = lit ? Solid : printer.Motion.Infill;
        string why = lit ? "light passes it, and infill would show as a pattern: solid"
            : "what lines and skins leave open, which is little in walls this thin";
        reasons.Choice($"{path}.perimeters", perimeters.ToString(CultureInfo.InvariantCulture), printer.Name,
            "lines round every layer");
        reasons.Choice($"{path}.infill", Percent(infill), lit ? Reasons.Rule : printer.Name, why);
        bool clear = lit && filament.TransmissionLength >= PlanRules.PigmentedLength;
        if (clear)
        {
            reasons.Choice($"{path}.fill-angles", string.Join(" and ", Crosswise.Select(a => a.ToString(CultureInfo.InvariantCulture))),
                Reasons.Rule, "a clear filament shows the lines of its fill: laid crosswise they spread light alike to all sides");
        }

        ImmutableArray<SolidPlace> solid = infill >= Solid ? []
            : [.. posts.Where(post => !IsSolidAnyway(post, basis, perimeters, skins))
                .Select(post => new SolidPlace(post.Name, post.At, post.Diameter, post.Bottom, post.Top))];
        if (!solid.IsEmpty)
        {
            reasons.Choice($"{path}.solid", string.Join(", ", solid.Select(place => place.Name)), Reasons.Rule,
                $"{perimeters} lines do not fill it, and an insert in sparse infill spins and pulls out");
        }

        return new PartPrint
        {
            LineWidth = basis.LineWidth,
            LayerHeight = basis.Layer,
            FirstLayer = basis.FirstLayer,
            Perimeters = perimeters,
            SkinLayers = skins,
            Infill = infill,
            InfillWhy = why,
            FillAngles = clear ? Crosswise : [],
            Solid = solid,
        };
    }

    /// <summary>The tub's posts that hold inserts.</summary>
    public static ImmutableArray<InsertPost> Posts(HousingDraft draft, MountPlan? mount)
    {
        double floor = draft.Stack.FloorTop;
        return
        [
            .. from boss in draft.Bosses
               where boss.Hole is not null
               select new InsertPost(SpokenNames.Of(draft.File, draft.Screws, boss), boss.At, boss.Diameter, boss.Hole!.Diameter, floor,
                   boss.Top, Math.Max(0, boss.Top - boss.Hole.Depth - floor)),
            .. mount?.InsertPosts ?? [],
        ];
    }

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %");

    // Round the hole lines come from both sides; where no hole is they come from outside only, and skins close what lies under the hole.
    private static bool IsSolidAnyway(InsertPost post, PrintBasis basis, int perimeters, int skins)
    {
        bool round = (post.Diameter - post.HoleDiameter) / 2 <= basis.Wall(2 * perimeters) + Layers.Slack;
        bool below = post.Diameter <= (2 * basis.Wall(perimeters)) + basis.LineWidth
            || post.PlainHeight <= (skins * basis.Layer) + Layers.Slack;
        return round && below;
    }
}
