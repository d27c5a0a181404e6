using System.IO.Compression;
using System.Xml.Linq;
using ShellForge.Geometry.Booleans;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests;

/// <summary>What the package promises to those who build on it.</summary>
public class PackageTests
{
    [Fact]
    public void The_public_members_are_the_accepted_ones() =>
        Assert.Equal(Golden.Text("api/ShellForge.Geometry.txt", Api()), Api());

    [Fact]
    public void Nothing_but_NetTopologySuite_is_depended_on()
    {
        XDocument project = XDocument.Load(Repository.At("src", "ShellForge.Geometry", "ShellForge.Geometry.csproj"));

        Assert.Equal("NetTopologySuite", Assert.Single(project.Descendants("PackageReference")).Attribute("Include")!.Value);
        Assert.Empty(project.Descendants("ProjectReference"));
        Assert.All(
            typeof(SolidEvaluator).Assembly.GetReferencedAssemblies(),
            a => Assert.True(a.Name is "NetTopologySuite" || a.Name!.StartsWith("System.", StringComparison.Ordinal), a.Name));
    }

    [Fact]
    public void The_package_has_its_readme_its_documentation_its_licence_and_symbols_beside_it()
    {
        using var folder = new TemporaryFolder();
        string configuration = AppContext.BaseDirectory.Contains($"{Path.DirectorySeparatorChar}Release{Path.DirectorySeparatorChar}",
            StringComparison.Ordinal) ? "Release" : "Debug";

        string told = ForeignRun.Of(
            "dotnet", folder.Path,
            [
                "pack", Repository.At("src", "ShellForge.Geometry"), "-c", configuration, "--no-build", "-v", "quiet", "-o", folder.Path,
            ]).Told;

        Assert.True(Directory.GetFiles(folder.Path, "*.nupkg").Length == 1, told);
        using ZipArchive package = ZipFile.OpenRead(Directory.GetFiles(folder.Path, "*.nupkg")[0]);
        string[] files = [.. package.Entries.Select(entry => entry.FullName)];
        Assert.Superset(new HashSet<string> { "README.md", "lib/net10.0/ShellForge.Geometry.dll", "lib/net10.0/ShellForge.Geometry.xml" },
            files.ToHashSet());
        Assert.DoesNotContain(files, file => file.EndsWith(".pdb", StringComparison.Ordinal));
        using Stream nuspec = package.GetEntry("ShellForge.Geometry.nuspec")!.Open();
        Assert.Equal("MIT", XDocument.Load(nuspec).Descendants().Single(element => element.Name.LocalName == "license").Value);
        using ZipArchive symbols = ZipFile.OpenRead(Assert.Single(Directory.GetFiles(folder.Path, "*.snupkg")));
        Assert.Contains(symbols.Entries, entry => entry.Name == "ShellForge.Geometry.pdb");
    }

    private static string Api() => PublicApi.Of(typeof(SolidEvaluator).Assembly);
}
