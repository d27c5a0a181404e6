using System.Collections.Concurrent;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Solids;
using ShellForge.Planning;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Tests.CoverSide;

/// <summary>A board file planned, built and evaluated once for all tests that look at it.</summary>
public sealed class BuiltHousing
{
    private static readonly ConcurrentDictionary<string, Lazy<BuiltHousing>> Known = new();
    private static readonly ProfileLibrary Profiles = ProfileLibrary.Load([]).Library;
    private readonly ConcurrentDictionary<string, Lazy<SolidMesh>> _meshes = new();

    private BuiltHousing(string name, string text, string[] overrides)
    {
        BoardReadResult read = BoardFileReader.Read(name, text, Profiles, [.. overrides.Select(SetOverride.Parse)]);
        Assert.True(read.File is not null, string.Join("\n", read.Diagnostics));
        Plan = HousingPlanner.Plan(read.File);
        Parts = HousingBuilder.Build(Plan).ToDictionary(part => part.Name);
    }

    public HousingPlan Plan { get; }

    public Dictionary<string, HousingPart> Parts { get; }

    /// <summary>A sample of the repository, with values set over it.</summary>
    public static BuiltHousing Sample(string name, params string[] overrides) => Of(
        name, File.ReadAllText(Path.Combine(Root(), "out-samples", name, "board.yaml")), overrides);

    /// <summary>A board file given as text.</summary>
    public static BuiltHousing Of(string name, string text, params string[] overrides) =>
        Known.GetOrAdd(name + text + string.Join(' ', overrides),
            _ => new Lazy<BuiltHousing>(() => new BuiltHousing(name, text, overrides))).Value;

    /// <summary>A part as assembled.</summary>
    public Mesh Assembled(string part) => Solid(part).Mesh;

    /// <summary>A part as assembled, as an operand.</summary>
    public SolidMesh Solid(string part) => _meshes.GetOrAdd(part, _ => new Lazy<SolidMesh>(() => Evaluated(Parts[part].Assembled))).Value;

    /// <summary>A part as it lies on the bed.</summary>
    public Mesh InPrint(string part) =>
        _meshes.GetOrAdd(part + "/print", _ => new Lazy<SolidMesh>(() => Evaluated(Parts[part].InPrint))).Value.Mesh;

    /// <summary>Volume that two solids share, mm3.</summary>
    public static double Shared(Solid one, Solid other) =>
        Measure.Volume(Evaluated(ShellForge.Geometry.Solids.Solid.Intersection(one, other)).Mesh);

    /// <summary>Volume that two assembled parts share, mm3.</summary>
    public double Shared(string one, string other) => Shared(Solid(one).AsOperand(), Solid(other).AsOperand());

    private static SolidMesh Evaluated(Solid solid)
    {
        SolidOutcome outcome = SolidEvaluator.Evaluate(solid);
        Assert.True(outcome.Solid is not null, $"{outcome.Defect}");
        return outcome.Solid;
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ShellForge.sln")))
        {
            folder = folder.Parent;
        }

        return folder!.FullName;
    }
}
