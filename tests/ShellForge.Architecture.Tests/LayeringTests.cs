using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace ShellForge.Architecture.Tests;

public class LayeringTests
{
    // What each project may see. Output and Cli see Physics for the light picture and the figures; Planning for
    // `distance: auto`. Checks sees Formats for what a slicer wrote.
    private static readonly Dictionary<string, string[]> Arrows = new()
    {
        ["Geometry"] = [],
        ["Formats"] = ["Geometry"],
        ["Board"] = ["Geometry"],
        ["Import"] = ["Board", "Geometry"],
        ["Physics"] = ["Geometry"],
        ["Planning"] = ["Board", "Geometry", "Physics"],
        ["Housing"] = ["Board", "Geometry", "Planning"],
        ["Checks"] = ["Board", "Formats", "Geometry", "Physics", "Planning"],
        ["Output"] = ["Board", "Checks", "Formats", "Geometry", "Physics", "Planning"],
        ["Coupons"] = ["Board", "Checks", "Formats", "Geometry", "Housing", "Output", "Planning"],
        ["Pipeline"] = ["Board", "Checks", "Housing", "Output", "Planning"],
        ["Sweep"] = ["Board", "Checks", "Formats", "Geometry", "Output", "Pipeline", "Planning"],
        ["Bench"] = ["Board", "Checks", "Geometry", "Import", "Output", "Pipeline", "Planning"],
        ["Browser"] = ["Bench", "Board", "Output"],
        ["Cli"] =
        [
            "Bench", "Board", "Checks", "Coupons", "Formats", "Geometry", "Import", "Output", "Physics", "Pipeline", "Planning", "Sweep",
        ],
    };

    // The one folder that may see a third-party library.
    private static readonly Dictionary<string, string> Homes = new()
    {
        ["NetTopologySuite"] = "src/ShellForge.Geometry/Planar/",
        ["YamlDotNet"] = "src/ShellForge.Board/Yaml/",
        ["SharpGLTF"] = "tests/ShellForge.Formats.Tests/Glb/",
        ["System.CommandLine"] = "src/ShellForge.Cli/",
        ["Spectre.Console"] = "src/ShellForge.Cli/",
        ["PdfSharp"] = "src/ShellForge.Output/",
    };

    [Fact]
    public void The_projects_are_those_of_the_design() =>
        Assert.Equal(Arrows.Keys.Order(), Repository.SourceProjects.Keys.Order());

    [Fact]
    public void Projects_see_only_what_the_arrows_allow()
    {
        foreach ((string project, string folder) in Repository.SourceProjects)
        {
            XDocument file = XDocument.Load(Path.Combine(folder, $"ShellForge.{project}.csproj"));
            string[] seen = [.. file.Descendants("ProjectReference")
                .Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value)["ShellForge.".Length..])
                .Order(StringComparer.Ordinal)];
            Assert.Equal((project, string.Join(" ", Arrows[project])), (project, string.Join(" ", seen)));
        }
    }

    // What output and rules both want to know is a gauge.
    [Fact]
    public void Output_asks_no_rule()
    {
        var heading = new Regex(@"class (\w+)\(\) : Rule\(");
        string[] rules =
        [
            .. Directory.GetFiles(Repository.SourceProjects["Checks"], "*.cs", SearchOption.AllDirectories)
                .Select(path => heading.Match(File.ReadAllText(path))).Where(match => match.Success).Select(match => match.Groups[1].Value),
        ];
        Assert.True(rules.Length > 50, $"{rules.Length} rules are too few to be all");
        var named = new Regex($@"\b({string.Join('|', rules)})\.");
        string[] outputs =
        [
            .. Directory.GetFiles(Repository.SourceProjects["Output"], "*.cs", SearchOption.AllDirectories)
                .Where(path => named.IsMatch(File.ReadAllText(path))).Select(Repository.Relative),
        ];
        Assert.Empty(outputs);
    }

    [Fact]
    public void Namespaces_name_only_projects_that_the_arrows_allow()
    {
        // A project that is seen through another one compiles all the same; its name in the code gives it away.
        var named = new Regex(@"^\s*using (?:static )?ShellForge\.(\w+)", RegexOptions.Multiline);
        foreach ((string project, string[] allowed) in Arrows)
        {
            foreach (string path in Repository.SourceFiles.Where(
                p => Repository.Relative(p).StartsWith($"src/ShellForge.{project}/", StringComparison.Ordinal)))
            {
                foreach (Match match in named.Matches(File.ReadAllText(path)))
                {
                    string other = match.Groups[1].Value;
                    Assert.True(
                        other == project || allowed.Contains(other), $"{Repository.Relative(path)} uses ShellForge.{other}");
                }
            }
        }
    }

    [Fact]
    public void Third_party_libraries_are_seen_by_their_one_folder()
    {
        int met = 0;
        foreach (string path in Repository.SourceFiles)
        {
            string text = File.ReadAllText(path);
            foreach ((string library, string home) in Homes)
            {
                bool uses = Regex.IsMatch(text, $@"(?<![\w.]){Regex.Escape(library)}\.?[\w.]*;", RegexOptions.None)
                    || text.Contains($"= {library}.", StringComparison.Ordinal)
                    || text.Contains($"global::{library}", StringComparison.Ordinal);
                if (uses)
                {
                    met++;
                    Assert.True(
                        Repository.Relative(path).StartsWith(home, StringComparison.Ordinal),
                        $"{Repository.Relative(path)} uses {library}");
                }
            }
        }

        Assert.True(met > 10, "the search met too few uses to mean anything");
    }

    [Fact]
    public void The_rule_that_audits_meshes_makes_no_solids() =>
        Assert.DoesNotContain(
            "SolidEvaluator",
            File.ReadAllText(Path.Combine(Repository.Root, "src/ShellForge.Checks/Print/AuditFailed.cs")),
            StringComparison.Ordinal);
}
