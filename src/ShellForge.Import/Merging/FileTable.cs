using ShellForge.Import.Drill;
using ShellForge.Import.Files;
using ShellForge.Import.Idf;

namespace ShellForge.Import.Merging;

/// <summary>What each file turned out to be and gave.</summary>
internal static class FileTable
{
    public static IEnumerable<ImportedFile> Of(
        ReadFiles read, IReadOnlyList<DrillFacts> drills, IReadOnlyList<OutlineCandidate> candidates, OutlineCandidate? chosen)
    {
        foreach (RecognisedFile f in read.All)
        {
            string name = f.File.Name;
            OutlineCandidate? candidate = candidates.FirstOrDefault(c => c.File == name);
            DrillFacts? drill = drills.FirstOrDefault(d => d.File == name);
            IdfBoardFacts? board = read.Boards.Find(b => b.File == name);
            Placement.PlacementFacts? placement = read.Placements.Find(p => p.File == name);
            ImmutableGerber? gerber = ImmutableGerber.Of(read, name);
            yield return new ImportedFile(name, f.Kind, f.Words, Unit(f, candidate, drill, board, placement, gerber))
            {
                Holes = drill?.Holes.Length ?? board?.Holes.Length ?? gerber?.DrillHoles,
                Slots = drill?.Slots.Length,
                Parts = placement?.Rows.Length ?? board?.Placements.Length ?? read.Libraries.Find(l => l.File == name)?.Packages.Length,
                OpenChains = candidate?.Chained.OpenChains,
                Loops = candidate?.Chained.Loops,
                RepeatedLoops = candidate?.Chained.RepeatedLoops ?? 0,
                Role = candidate is not null ? (ReferenceEquals(candidate, chosen) ? "outline" : "not used for the outline") : "",
            };
        }
    }

    private static string Unit(
        RecognisedFile f, OutlineCandidate? candidate, DrillFacts? drill, IdfBoardFacts? board, Placement.PlacementFacts? placement,
        ImmutableGerber? gerber) =>
        f.Kind switch
        {
            FileKind.IdfBoard => board?.Unit switch { "MM" => "mm", "THOU" => "mil", { } other => other.ToLowerInvariant(), null => "" },
            FileKind.IdfLibrary => "per package",
            FileKind.Drill => drill is null ? "" : drill.Unit,
            FileKind.Placement => placement?.Unit is { } u ? PlacementUnit.Words(u) : "unstated",
            FileKind.JobFile => "mm",
            _ => candidate?.Unit ?? gerber?.Unit ?? "",
        };

    private sealed record ImmutableGerber(string Unit, int? DrillHoles)
    {
        public static ImmutableGerber? Of(ReadFiles read, string name)
        {
            if (read.DrillLayers.Find(g => g.File == name) is { } layer)
            {
                return new ImmutableGerber(layer.Unit, layer.FlashCount);
            }

            return read.Gerbers.Find(g => g.File == name) is { } other ? new ImmutableGerber(other.Unit, null) : null;
        }
    }
}
