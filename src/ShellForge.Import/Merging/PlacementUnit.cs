using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Placement;

namespace ShellForge.Import.Merging;

/// <summary>Decides a list's unit: what it says, tried against the size of the board.</summary>
internal static class PlacementUnit
{
    private static readonly (double Unit, string Words)[] Units = [(1, "mm"), (0.0254, "mil"), (25.4, "inch")];

    public static double Of(PlacementFacts facts, ImportedOutline? outline, EcadLog log)
    {
        // Each side by itself: a back written with x mirrored lies as far from the front as the origin is away.
        double extent =
            facts.Rows.GroupBy(r => r.Bottom).Select(side => Box2.Of(side.Select(r => r.At)).Size.Length).DefaultIfEmpty(0).Max();
        double board = outline?.Outer.Bounds.Size.Length ?? 0;
        if (facts.Unit is { } stated)
        {
            // Some lists say mils over numbers in inches: then nothing else than a factor of hundreds explains the size.
            if (board > 0 && facts.Rows.Length >= 3 && extent > 0 && (extent * stated > 8 * board || extent * stated < board / 50))
            {
                foreach ((double unit, string words) in Units)
                {
                    if (unit != stated && extent * unit <= 1.2 * board && extent * unit >= board / 8)
                    {
                        log.Warn(
                            facts.File, facts.HeaderLine, "placement-unit",
                            $"{facts.UnitFrom} say{(facts.UnitFrom.EndsWith('s') ? "" : "s")} {Words(stated)}, but only {words} fits the "
                                + $"board's size; read as {words}");
                        return unit;
                    }
                }
            }

            return stated;
        }

        double chosen = board > 0 ? Units.Select(u => u.Unit).FirstOrDefault(u => extent * u <= 1.2 * board && extent * u >= board / 20, 1)
            : extent > EcadTolerances.LargestBoard ? 0.0254
            : facts.Rows.Length >= 3 && extent < EcadTolerances.SmallestBoard ? 25.4 : 1;
        bool fits = board > 0 && extent * chosen <= 1.2 * board;
        string message = $"no unit is stated; read as {Words(chosen)}{(fits ? ", which fits the board's size" : "")}";
        if (fits)
        {
            log.Note(facts.File, facts.HeaderLine, "placement-unit", message);
        }
        else
        {
            log.Warn(facts.File, facts.HeaderLine, "placement-unit", message, "check the positions");
        }

        return chosen;
    }

    public static string Words(double unit) =>
        unit == 1 ? "mm" : unit == 25.4 ? "inch" : unit == 0.0254 ? "mil" : $"{Numeral.Text(unit, 6)} mm";
}
