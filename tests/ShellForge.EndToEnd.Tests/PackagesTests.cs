using System.IO.Compression;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// The packages as people get them, where <c>SHELLFORGE_PACKAGES</c> says in which folder they lie: the tool is installed into an empty
/// home, and the examples are built against the libraries alone.
/// </summary>
public sealed class PackagesTests : IDisposable
{
    private readonly TemporaryFolder _home = new();

    public void Dispose() => _home.Dispose();

    private static string Packages()
    {
        string? folder = Environment.GetEnvironmentVariable("SHELLFORGE_PACKAGES");
        Skip.If(string.IsNullOrEmpty(folder), "SHELLFORGE_PACKAGES does not name a folder of packages");
        return folder!;
    }

    private ForeignRun Dotnet(string folder, params string[] args) => ForeignRun.Of(
        "dotnet", folder, args,
        ("HOME", _home.Path), ("DOTNET_CLI_HOME", _home.Path), ("NUGET_PACKAGES", Path.Combine(_home.Path, "packages")),
        ("DOTNET_NOLOGO", "1"), ("DOTNET_CLI_TELEMETRY_OPTOUT", "1"));

    [SkippableFact]
    public void The_tool_is_installed_into_an_empty_home_and_makes_the_very_bytes_of_a_sample()
    {
        string tools = Path.Combine(_home.Path, "tools");
        ForeignRun installed = Dotnet(_home.Path, "tool", "install", "ShellForge", "--tool-path", tools, "--source", Packages());
        Assert.True(installed.Exit == 0, installed.Told);

        string program = Path.Combine(tools, "shellforge");
        SampleBytes.AreMadeBy((folder, args) => ForeignRun.Of(program, folder, args, ("HOME", _home.Path)), "tide-lamp");
    }

    [SkippableFact]
    public void The_portable_tool_runs_on_the_runtime_and_no_package_of_the_tool_holds_symbols()
    {
        string portable = Assert.Single(Directory.GetFiles(Packages(), "ShellForge.any.*.nupkg"));
        string unpacked = Path.Combine(_home.Path, "unpacked");
        ZipFile.ExtractToDirectory(portable, unpacked);

        string program = Assert.Single(Directory.GetFiles(unpacked, "shellforge.dll", SearchOption.AllDirectories));
        SampleBytes.AreMadeBy((folder, args) => Dotnet(folder, [program, .. args]), "mooring-beacon");

        foreach (string package in Directory.GetFiles(Packages(), "*.nupkg"))
        {
            using ZipArchive archive = ZipFile.OpenRead(package);
            Assert.DoesNotContain(archive.Entries, entry => Path.GetExtension(entry.Name) is ".pdb" or ".dbg");
            Assert.Contains(archive.Entries, entry => entry.FullName == "README.md");
        }
    }

    [SkippableFact]
    public void The_examples_are_built_against_the_packages_and_run()
    {
        string board = Repository.At("out-samples", "mooring-beacon", "board.yaml");
        string kernel = Example("kernel");
        string housing = Example("housing", board);

        Assert.Equal("32 triangles, 0 contacts opened", kernel.Trim());
        Assert.DoesNotContain("Stop ", housing, StringComparison.Ordinal);
        string made = Path.Combine(_home.Path, "housing", "tub.stl");
        Assert.Equal(File.ReadAllBytes(Repository.At("out-samples", "mooring-beacon", "tub.stl")), File.ReadAllBytes(made));
    }

    [Theory]
    [InlineData("kernel", "ShellForge.Geometry")]
    [InlineData("housing", "ShellForge.Pipeline")]
    public void The_examples_are_those_of_the_readmes(string example, string package)
    {
        string readme = File.ReadAllText(Repository.At("src", package, "package", "README.md"));

        Assert.Contains(File.ReadAllText(Repository.At("src", "examples", example, "Program.cs")), readme, StringComparison.Ordinal);
    }

    // Copied away from the sources, so that nothing but the packages is at hand. Packages of others may come from where this machine has
    // them.
    private string Example(string name, params string[] args)
    {
        string folder = Path.Combine(_home.Path, name);
        Directory.CreateDirectory(folder);
        foreach (string file in Directory.GetFiles(Repository.At("src", "examples", name)))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        }

        File.Copy(Repository.At("src", "examples", "Directory.Build.props"), Path.Combine(_home.Path, "Directory.Build.props"), true);
        string known = Environment.GetEnvironmentVariable("NUGET_PACKAGES")
            ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        ForeignRun built = Dotnet(
            folder, "build", "-c", "Release", "-v", "quiet", "-o", Path.Combine(folder, "out"), $"-p:Packages={Packages()}",
            $"-p:RestoreFallbackFolders={known}");
        Assert.True(built.Exit == 0, built.Told);
        ForeignRun ran = Dotnet(folder, [Path.Combine(folder, "out", $"{name}.dll"), .. args]);
        Assert.True(ran.Exit == 0, ran.Told);
        return ran.Told;
    }
}
