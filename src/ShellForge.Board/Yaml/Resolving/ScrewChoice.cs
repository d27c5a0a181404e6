using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>
/// Pairs inserts with screws by thread. The insert leads: changing it alone re-does the screw, with the same head, and says so.
/// </summary>
internal sealed class ScrewChoice(ProfileLibrary profiles, DiagnosticSink sink)
{
    /// <summary>The screw for an insert; null when there is none, which then has been told.</summary>
    /// <param name="insert">The insert.</param>
    /// <param name="said">What was said of the screw, or nothing.</param>
    /// <param name="place">Where to point.</param>
    public ScrewProfile? For(InsertProfile insert, ParsedScrew? said, FilePlace place)
    {
        if (said is { Profile: { } wanted } && wanted.Thread == insert.Thread)
        {
            return wanted;
        }

        ScrewHead head = said?.Head ?? ScrewHead.Pan;
        ScrewProfile? found = profiles.Screws.All.FirstOrDefault(s => s.Thread == insert.Thread && s.Head == head);
        if (found is null)
        {
            string[] known = [.. profiles.Screws.All.Where(s => s.Thread == insert.Thread).Select(s => s.Name)];
            sink.Error(
                place,
                "no-screw-for-insert",
                said is { Profile: { } given }
                    ? $"the screw {given.Name} does not go into the insert {insert.Name} ({insert.Thread})"
                    : $"there is no {head.ToString().ToLowerInvariant()}-head screw for the insert {insert.Name} ({insert.Thread})",
                known.Length == 0 ? "expected a screw profile of that thread" : "expected " + string.Join(", ", known));
        }
        else if (said is { Profile: { } other })
        {
            sink.Warning(
                place,
                "thread-differs",
                $"the screw {other.Name} ({other.Thread}) does not go into the insert {insert.Name} ({insert.Thread}): {found.Name} is "
                    + $"taken",
                $"expected screw: {found.Name}, or {head.ToString().ToLowerInvariant()} for whatever insert is named");
        }

        return found;
    }
}
