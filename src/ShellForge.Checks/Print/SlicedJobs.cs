using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Sliced;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>Finds which parts a slicer's file prints.</summary>
public static class SlicedJobs
{
    /// <summary>The files with their parts, in their order.</summary>
    /// <param name="housing">The housing.</param>
    /// <param name="files">The files.</param>
    /// <param name="plates">The plates by the names of their files, without ending, each with its parts.</param>
    public static ImmutableArray<SlicedJob> Of(
        HousingUnderCheck housing, ImmutableArray<SlicedFile> files, IEnumerable<(string Name, ImmutableArray<string> Parts)> plates)
    {
        (string Name, ImmutableArray<string> Parts)[] known =
        [
            .. plates, .. housing.SoundParts.Select(part => (housing.Board.NameOf(part.Name), ImmutableArray.Create(part.Name))),
        ];
        return [.. files.Select(file => new SlicedJob(file, PartsOf(housing, file, known), housing.Board.Print.Printer))];
    }

    private static ImmutableArray<MadePart> PartsOf(
        HousingUnderCheck housing, SlicedFile file, (string Name, ImmutableArray<string> Parts)[] known)
    {
        string[] named = Named(Path.GetFileNameWithoutExtension(file.Name), known);
        if (named.Length == 0)
        {
            named = [.. file.Code.Objects.SelectMany(each => Named(each.Name, known))];
        }

        MadePart[] parts = [.. housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty)];
        if (named.Length == 0)
        {
            named = [.. parts.Where(part => part.Plan.PrintedWith is null).Where(part => IsAlike(housing, file, part))
                .Select(part => part.Name).Take(1)];
        }

        // What is printed into another part comes with it.
        HashSet<string> jobs = [.. parts.Where(part => named.Contains(part.Name)).Select(part => part.Plan.PrintedWith ?? part.Name)];
        return [.. parts.Where(part => jobs.Contains(part.Plan.PrintedWith ?? part.Name))];
    }

    private static bool IsAlike(HousingUnderCheck housing, SlicedFile file, MadePart part)
    {
        var alone = new SlicedJob(
            file,
            [.. housing.SoundParts.Where(other => other == part || other.Plan.PrintedWith == part.Name)],
            housing.Board.Print.Printer);
        return alone.Bodies is [var body] && body.IsOfPart;
    }

    // Slicers put their own words before and behind the name of what they sliced: "tub_0.2mm_2h5m". The longest name there is meant:
    // "housing-1", not a part called "housing".
    private static string[] Named(string text, (string Name, ImmutableArray<string> Parts)[] known)
    {
        (string Name, ImmutableArray<string> Parts)[] there = [.. known.Where(each => HasWord(text, each.Name))];
        return [.. there.Where(each => !there.Any(other => other.Name.Length > each.Name.Length && HasWord(other.Name, each.Name)))
            .SelectMany(each => each.Parts).Distinct(StringComparer.Ordinal)];
    }

    private static bool HasWord(string text, string word)
    {
        for (int at = text.IndexOf(word, StringComparison.OrdinalIgnoreCase); at >= 0;
            at = text.IndexOf(word, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            int end = at + word.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (end == text.Length || !char.IsLetterOrDigit(text[end])))
            {
                return true;
            }
        }

        return false;
    }
}
