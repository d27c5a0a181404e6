using System.Text.RegularExpressions;

namespace ShellForge.Architecture.Tests;

/// <summary>Folders are rooms: small enough to know, named as their namespace, and without cycles between them.</summary>
public class RoomTests
{
    private const int FullRoom = 30;

    private static readonly Regex Namespace = new(@"^namespace (ShellForge[\w.]*);", RegexOptions.Multiline);

    // An unnecessary using is a compile error, so a using is a real arrow.
    private static readonly Regex Using = new(@"^using (?:static )?(ShellForge[\w.]*);", RegexOptions.Multiline);

    // The words of board and profile files, the forms made of them, the profiles they read and the schema they write are one trade.
    private static readonly string[] OneTrade =
    [
        "ShellForge.Board.Description", "ShellForge.Board.Profiles", "ShellForge.Board.Schema", "ShellForge.Board.Yaml.Forms",
        "ShellForge.Board.Yaml.ProfileForms", "ShellForge.Board.Yaml.Tree", "ShellForge.Board.Yaml.Vocabulary",
    ];

    [Fact]
    public void No_folder_holds_more_files_than_one_can_know()
    {
        foreach (IGrouping<string, string> folder in Repository.SourceFiles.Concat(Repository.TestFiles)
            .GroupBy(path => Path.GetDirectoryName(path)!))
        {
            Assert.True(folder.Count() <= FullRoom, $"{Repository.Relative(folder.Key)} holds {folder.Count()} files");
        }
    }

    [Fact]
    public void A_file_of_the_source_has_the_namespace_of_its_folder()
    {
        foreach (string path in Repository.SourceFiles)
        {
            if (NamespaceOf(path) is { } name)
            {
                string folder = Path.GetDirectoryName(Repository.Relative(path))!["src/".Length..].Replace('/', '.');
                Assert.Equal((Repository.Relative(path), folder), (Repository.Relative(path), name));
            }
        }
    }

    [Fact]
    public void No_room_leads_back_to_itself_through_others()
    {
        Dictionary<string, HashSet<string>> arrows = Arrows();
        Assert.True(arrows.Values.Sum(to => to.Count) > 300, "the search met too few arrows to mean anything");
        foreach (string room in arrows.Keys)
        {
            string? back = arrows[room].FirstOrDefault(next => next != room && Reaches(arrows, next, room));
            Assert.True(back is null, $"{room} leads to {back}, and that leads back");
        }
    }

    // Arrows between rooms of one project; what stands in a project's own folder joins its rooms and is left out.
    private static Dictionary<string, HashSet<string>> Arrows()
    {
        var arrows = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        foreach (string path in Repository.SourceFiles)
        {
            if (NamespaceOf(path) is not { } name || IsWholeProject(name))
            {
                continue;
            }

            string from = RoomOf(name);
            if (!arrows.TryGetValue(from, out HashSet<string>? to))
            {
                arrows.Add(from, to = new HashSet<string>(StringComparer.Ordinal));
            }

            to.UnionWith(Using.Matches(File.ReadAllText(path)).Select(match => match.Groups[1].Value)
                .Where(other => !IsWholeProject(other)).Select(RoomOf).Where(other => other != from));
        }

        return arrows;
    }

    private static string RoomOf(string name) => OneTrade.Contains(name) ? "the words of the board file" : name;

    private static bool IsWholeProject(string name) => name.Count(letter => letter == '.') < 2;

    private static string? NamespaceOf(string path) =>
        Namespace.Match(File.ReadAllText(path)) is { Success: true } match ? match.Groups[1].Value : null;

    private static bool Reaches(Dictionary<string, HashSet<string>> arrows, string from, string wanted)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { from };
        var open = new Stack<string>([from]);
        while (open.TryPop(out string? room))
        {
            foreach (string next in arrows.GetValueOrDefault(room, []))
            {
                if (next == wanted)
                {
                    return true;
                }

                if (seen.Add(next))
                {
                    open.Push(next);
                }
            }
        }

        return false;
    }
}
