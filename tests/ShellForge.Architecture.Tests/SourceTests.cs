using System.Text.RegularExpressions;

namespace ShellForge.Architecture.Tests;

public class SourceTests
{
    private const int FullFile = 400;

    private static readonly string[] Drawers = ["Utils", "Utilities", "Helpers", "Helper", "Extensions", "Common", "Manager", "Misc"];

    [Fact]
    public void A_file_above_four_hundred_lines_says_at_its_top_why_it_reads_better_whole()
    {
        foreach (string path in Repository.SourceFiles.Concat(Repository.TestFiles))
        {
            string[] lines = File.ReadAllLines(path);
            if (lines.Length > FullFile)
            {
                Assert.True(
                    lines.Take(30).Any(line => line.Contains("reads better whole", StringComparison.Ordinal)),
                    $"{Repository.Relative(path)} has {lines.Length} lines and no sentence at its top with 'reads better whole'");
            }
        }
    }

    // The few that can't be broken are pieces of other languages within raw strings, and texts that are taken apart for their culture.
    [Fact]
    public void Lines_end_at_140_columns_but_for_a_few_within_strings()
    {
        const int widest = 140;
        const int few = 45;
        string[] wide =
        [
            .. Repository.SourceFiles.Concat(Repository.TestFiles).SelectMany(path => File.ReadAllLines(path)
                .Select((line, i) => (Line: line, Place: $"{Repository.Relative(path)}:{i + 1}"))).Where(each => each.Line.Length > widest)
                .Select(each => each.Place),
        ];

        Assert.True(wide.Length <= few, string.Join('\n', wide));
    }

    [Fact]
    public void No_file_folder_or_type_is_a_drawer_for_everything()
    {
        foreach (string path in Repository.SourceFiles.Concat(Repository.TestFiles))
        {
            string relative = Repository.Relative(path);
            foreach (string part in Path.ChangeExtension(relative, null).Split('/', '.'))
            {
                Assert.DoesNotContain(Drawers, drawer => part == drawer || part.EndsWith(drawer, StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void A_tiny_number_stands_in_tolerances_or_as_a_constant_with_its_reason()
    {
        var tiny = new Regex(@"(?<![\w.])\d+(\.\d+)?[eE]-\d+", RegexOptions.None);
        int met = 0;
        foreach (string path in Repository.SourceFiles.Where(p => Path.GetFileName(p) != "Tolerances.cs"))
        {
            string[] lines = File.ReadAllLines(path);
            for (int i = 0; i < lines.Length; i++)
            {
                string code = lines[i].Split("//")[0];
                if (tiny.IsMatch(code))
                {
                    met++;
                    bool constant = code.Contains(" const double ", StringComparison.Ordinal);
                    string above = i > 0 ? lines[i - 1].TrimStart() : "";
                    bool reasoned = above.StartsWith("//", StringComparison.Ordinal)
                        || above.Contains(" const double ", StringComparison.Ordinal) || lines[i].Contains("//", StringComparison.Ordinal);
                    Assert.True(constant && reasoned, $"{Repository.Relative(path)}:{i + 1}: {lines[i].Trim()}");
                }
            }
        }

        Assert.True(met > 0, "the search met nothing and means nothing");
    }

    [Fact]
    public void A_silenced_warning_says_why()
    {
        foreach (string path in Repository.SourceFiles.Concat(Repository.TestFiles))
        {
            string[] lines = File.ReadAllLines(path);
            for (int i = 0; i < lines.Length; i++)
            {
                if (lines[i].TrimStart().StartsWith("#pragma warning disable", StringComparison.Ordinal))
                {
                    bool reasoned = lines[i].Contains("//", StringComparison.Ordinal)
                        || (i > 0 && lines[i - 1].TrimStart().StartsWith("//", StringComparison.Ordinal));
                    Assert.True(reasoned, $"{Repository.Relative(path)}:{i + 1} silences a warning without a reason");
                }
            }
        }
    }

    [Fact]
    public void Every_project_has_a_readme_of_one_screen()
    {
        foreach ((string project, string folder) in Repository.SourceProjects)
        {
            string readme = Path.Combine(folder, "README.md");
            Assert.True(File.Exists(readme), $"ShellForge.{project} has no README.md");
            Assert.InRange(File.ReadAllLines(readme).Length, 5, 60);
        }
    }

    [Fact]
    public void Every_package_version_stands_in_one_place()
    {
        // The examples are built as by strangers, who see nothing of the place.
        string examples = Path.Combine(Repository.Root, "src", "examples");
        foreach (string path in Directory.EnumerateFiles(Repository.Root, "*.csproj", SearchOption.AllDirectories)
            .Where(path => !path.StartsWith(examples, StringComparison.Ordinal)))
        {
            Assert.DoesNotMatch("PackageReference[^>]* Version=", File.ReadAllText(path));
        }
    }

    [Fact]
    public void The_visible_top_level_is_the_agreed_one()
    {
        string[] allowed = ["DEVELOPERS.md", "LICENSE", "README.md", "ShellForge.sln", "out-samples", "profiles", "src", "tests"];
        string[] visible =
        [
            .. Directory.EnumerateFileSystemEntries(Repository.Root).Select(path => Path.GetFileName(path)!)
                .Where(name => name[0] != '.' && name is not ("artifacts" or "TestResults" or "node_modules"))
                .Order(StringComparer.Ordinal),
        ];
        Assert.Equal(allowed, visible);
    }

    [Fact]
    public void Bosses_and_screws_are_never_looked_up_by_their_names_nor_parts_named_by_literals_where_they_are_drawn()
    {
        var byName = new Regex(@"(?<!\.)\b\w*(Bosses|Screws|group|places)\.(First|Single|Any)\w*\([^;]*?\.Name ==", RegexOptions.None);
        var literal = new Regex("[=(,] *\"(tub|cover|baffle|diffuser|stand)\"[ ,;)]", RegexOptions.None);
        foreach (string path in Repository.SourceFiles)
        {
            string text = File.ReadAllText(path);
            Assert.False(byName.IsMatch(text), $"{Repository.Relative(path)} looks something up by its name: {byName.Match(text).Value}");
            if (Repository.Relative(path).StartsWith("src/ShellForge.Output/", StringComparison.Ordinal))
            {
                Assert.False(literal.IsMatch(text), $"{Repository.Relative(path)} names a part by a literal: {literal.Match(text).Value}");
            }
        }
    }
}
