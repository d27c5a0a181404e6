using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// What others wrote and the program carries stands in <c>src/THIRD-PARTY-NOTICES.txt</c>: made here from the packages that really ship.
/// <c>SHELLFORGE_ACCEPT=1</c> writes it.
/// </summary>
public class NoticesTests
{
    private static readonly string Page = Repository.At("src", "ShellForge.Output", "Page", "web");

    [SkippableFact]
    public void The_notices_name_every_package_that_ships()
    {
        Skip.IfNot(Directory.Exists(Path.Combine(Page, "node_modules")), "built without Node: the page's script ships with nothing");
        string path = Repository.At("src", "THIRD-PARTY-NOTICES.txt");
        string made = Made();
        if (Golden.Accepting)
        {
            File.WriteAllText(path, made);
        }

        Assert.Equal(made, File.ReadAllText(path));
    }

    [Fact]
    public void The_command_prints_its_licence_and_the_notices()
    {
        (int exit, string told) = CommandRun.Run(Repository.Root, "notices");

        Assert.Equal(0, exit);
        Assert.Equal(File.ReadAllText(Repository.At("LICENSE")) + "\n"
            + File.ReadAllText(Repository.At("src", "THIRD-PARTY-NOTICES.txt")), told);
    }

    private static string Made()
    {
        Work[] works = [.. Packages(), .. Scripts(),
            new(".NET runtime", "https://dot.net", "MIT", "Copyright (c) .NET Foundation and Contributors")];
        Assert.True(works.Length >= 5, "too few packages to be all of them");
        var text = new StringBuilder("Software of others that ShellForge carries\n\n");
        foreach (Work work in works.OrderBy(work => work.Name, StringComparer.OrdinalIgnoreCase))
        {
            text.Append($"{work.Name}\n    {work.Address}\n    {work.Copyright}\n    Licence: {work.Licence}\n\n");
        }

        foreach (string licence in works.Select(work => work.Licence).Distinct().Order(StringComparer.Ordinal))
        {
            string path = Repository.At("tests", "licences", licence + ".txt");
            Assert.True(File.Exists(path), $"{licence} is no licence that was looked at; put its text into {path} after reading it");
            text.Append($"{licence}\n\n{File.ReadAllText(path)}\n");
        }

        return text.ToString().TrimEnd() + "\n";
    }

    // What the linker is given: packages with an assembly that runs, without those that only build.
    private static IEnumerable<Work> Packages()
    {
        JsonNode assets = JsonNode.Parse(File.ReadAllText(Repository.At("src", "ShellForge.Cli", "obj", "project.assets.json")))!;
        string[] folders = [.. assets["packageFolders"]!.AsObject().Select(folder => folder.Key)];
        foreach ((string name, JsonNode? package) in assets["targets"]!["net10.0"]!.AsObject())
        {
            if ((string)package!["type"]! != "package"
                || package["runtime"]?.AsObject().Any(file => file.Key.EndsWith(".dll", StringComparison.Ordinal)) != true)
            {
                continue;
            }

            string inside = (string)assets["libraries"]![name]!["path"]!;
            string nuspec = folders.SelectMany(folder => Directory.GetFiles(Path.Combine(folder, inside), "*.nuspec")).First();
            XElement about = XDocument.Load(nuspec).Root!.Elements().First();
            string Said(string key) => about.Elements().FirstOrDefault(e => e.Name.LocalName == key)?.Value.Trim() ?? "";
            string by = Said("copyright").Length > 0 ? Said("copyright") : Said("authors");
            yield return new Work(
                Said("id"), Said("projectUrl").Length > 0 ? Said("projectUrl") : Said("repository"), Said("license"),
                by.StartsWith("Copyright", StringComparison.OrdinalIgnoreCase) || by.StartsWith('\u00A9') ? by : $"Copyright (c) {by}");
        }
    }

    // What the pages' source imports by a package's name is bundled, with what that depends on; what only their build imports is not.
    private static IEnumerable<Work> Scripts()
    {
        string[] sources = Directory.GetFiles(Path.Combine(Page, "src"), "*.js", SearchOption.AllDirectories);
        var waiting = new Queue<string>(sources.SelectMany(
            path => Regex.Matches(File.ReadAllText(path), @"from '((@[^'/]+/)?[^'./][^'/]*)").Select(m => m.Groups[1].Value)));
        var shipped = new SortedSet<string>(StringComparer.Ordinal);
        while (waiting.TryDequeue(out string? name))
        {
            if (shipped.Add(name))
            {
                foreach ((string needed, _) in About(name)["dependencies"]?.AsObject() ?? [])
                {
                    waiting.Enqueue(needed);
                }
            }
        }

        foreach (string name in shipped)
        {
            JsonNode about = About(name);
            JsonNode? kept = about["repository"];
            string address = (string?)about["homepage"] ?? (string)(kept is JsonObject at ? at["url"] : kept)!;
            string copyright = File.ReadLines(Path.Combine(Page, "node_modules", name, "LICENSE"))
                .First(line => line.StartsWith("Copyright", StringComparison.Ordinal));
            yield return new Work($"{name} (in the pages)", address, (string)about["license"]!, copyright);
        }
    }

    private static JsonNode About(string name) =>
        JsonNode.Parse(File.ReadAllText(Path.Combine(Page, "node_modules", name, "package.json")))!;

    private sealed record Work(string Name, string Address, string Licence, string Copyright);
}
