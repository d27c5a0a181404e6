using System.Text.Json.Nodes;
using ShellForge.Cli.Verbs;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests.Verbs;

public class SchemaVerbTests
{
    public static TheoryData<string> Names => [.. SchemaVerb.All.Select(each => each.Name)];

    // The documents that a run writes or prints; the second and third word of a line stand for what the bench holds.
    public static TheoryData<string, string> Documents => new()
    {
        { "report", "make buoy.yaml -o out -q" },
        { "print", "make buoy.yaml -o out -q --set housing.diffuser.fit=printed-in" },
        { "leds", "make buoy.yaml -o out -q --formats leds" },
        { "make", "make buoy.yaml -o out --json" },
        { "make", "make broken.yaml -o out --json" },
        { "check", "check buoy.yaml --json" },
        { "check", "check broken.yaml --json" },
        { "inspection", "inspect good.stl --json" },
        { "inspection", "inspect open.stl --json" },
        { "import", "import edge.gbr holes.drl --json" },
        { "import", "import nothing.gbr --json" },
        { "coupon", "coupon slot-fit --json -o c" },
        { "profile-list", "profiles --json" },
        { "sweep", "sweep plan.yaml -o out --json --findings-only" },
        { "comparison", "compare buoy.yaml buoy.yaml --set housing.floor=2.4 --json" },
        { "comparison", "compare buoy.yaml broken.yaml --json" },
        { "sweep-index", "sweep plan.yaml -o out -q --findings-only" },
        { "sweep", "sweep plan.yaml -o out --json --findings-only --dry-run" },
        { "sweep", "sweep broken.yaml -o out --json" },
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void A_schema_is_one_by_the_draft_that_it_names_and_is_the_accepted_one(string name)
    {
        using var bench = new Bench();

        Assert.Equal(0, bench.Run("schema", name));

        Assert.True(SchemaJudge.IsSchema(bench.Out));
        Assert.StartsWith("https://json-schema.org/draft/2020-12/", bench.Json().GetProperty("$schema").GetString(),
            StringComparison.Ordinal);

        // Profile files repeat a value with its source hundreds of times: ten thousand lines that nobody would look at.
        Assert.True(name == "profiles" || Golden.Text($"schema/{name}.json", bench.Out) == bench.Out, bench.Out);
    }

    [Fact]
    public void Every_document_for_machines_has_a_schema_and_is_tried_here() =>
        Assert.Equal(
            SchemaVerb.All.Select(each => each.Name).Except(["board", "profiles", "plan"]).Order(StringComparer.Ordinal),
            Documents.Select(row => (string)row[0]).Distinct().Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Documents))]
    public void A_document_is_as_its_schema_says_and_is_refused_when_a_value_is_missing_or_of_another_kind(string name, string line)
    {
        JsonNode document = Written(line, name);
        var judge = new SchemaJudge(SchemaVerb.All.First(each => each.Name == name).Schema());

        Assert.Empty(judge.Faults(document));

        JsonNode schema = JsonNode.Parse(SchemaVerb.All.First(each => each.Name == name).Schema())!;
        int broken = 0;
        foreach (Action<JsonNode> harm in Harms(document, schema))
        {
            JsonNode harmed = document.DeepClone();
            harm(harmed);
            Assert.False(judge.Accepts(harmed), harmed.ToJsonString());
            broken++;
        }

        Assert.True(broken >= 4, $"only {broken} ways to break it");
    }

    [Fact]
    public void The_reports_of_the_samples_are_as_the_schema_says()
    {
        var judge = new SchemaJudge(SchemaVerb.All.First(each => each.Name == "report").Schema());
        string[] reports = Directory.GetFiles(Repository.At("out-samples"), "report.json", SearchOption.AllDirectories);

        Assert.Equal(3, reports.Length);
        Assert.All(reports, path => Assert.Empty(judge.Faults(JsonNode.Parse(File.ReadAllText(path)))));
    }

    private static JsonNode Written(string line, string name)
    {
        using var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), Bench.SmallBoard);
        File.WriteAllText(bench.Folder.File("broken.yaml"), Bench.SmallBoard.Replace("disc: 40", "disk: 40", StringComparison.Ordinal));
        File.WriteAllText(bench.Folder.File("plan.yaml"),
            "format: shellforge-plan/1\nboard: buoy.yaml\nvary: {power.brightness: [0.1, 0.2]}\n");
        File.Copy(Repository.At("out-samples", "mooring-beacon", "diffuser.stl"), bench.Folder.File("good.stl"));
        File.WriteAllText(bench.Folder.File("open.stl"),
            "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\nendsolid a\n");
        File.WriteAllText(bench.Folder.File("edge.gbr"),
            "%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,0.1*%\nD10*\nG75*\nX20000000Y0D02*\nG03*\nX20000000Y0I-20000000J0D01*\nM02*\n");
        File.WriteAllText(bench.Folder.File("holes.drl"), "M48\nMETRIC\nT1C2.2\n%\nT1\nX15.0Y0.0\nX-15.0Y0.0\nM30\n");
        bench.Run(line.Split(' '));
        return JsonNode.Parse(name switch
        {
            "report" => File.ReadAllText(bench.Folder.File(Path.Combine("out", "report.json"))),
            "print" => File.ReadAllText(bench.Folder.File(Path.Combine("out", "print.json"))),
            "leds" => File.ReadAllText(bench.Folder.File(Path.Combine("out", "leds.json"))),
            "sweep-index" => File.ReadAllText(bench.Folder.File(Path.Combine("out", "index.json"))),
            _ => bench.Out,
        })!;
    }

    // Every member of every object, and of the first of each list: of another kind, and left out where it must stand.
    private static IEnumerable<Action<JsonNode>> Harms(JsonNode value, JsonNode schema)
    {
        foreach ((string key, JsonNode? _) in (value as JsonObject)?.ToArray() ?? [])
        {
            JsonNode? own = schema["properties"]?[key] ?? schema["additionalProperties"];
            yield return node => node[key] = own?["type"] is JsonArray or JsonValue && Kinds(own).Contains("object") ? "words"
                : new JsonObject { ["no"] = "kind" };
            if (schema["required"] is JsonArray required && required.Any(word => (string)word! == key))
            {
                yield return node => node.AsObject().Remove(key);
            }

            if (own is not null && value[key] is { } below)
            {
                foreach (Action<JsonNode> harm in Harms(below, own))
                {
                    yield return node => harm(node[key]!);
                }
            }
        }

        if (value is JsonArray { Count: > 0 } list && schema["items"] is { } item && list[0] is JsonObject)
        {
            foreach (Action<JsonNode> harm in Harms(list[0]!, item))
            {
                yield return node => harm(node[0]!);
            }
        }
    }

    private static IEnumerable<string> Kinds(JsonNode schema) =>
        schema["type"] is JsonArray many ? many.Select(word => (string)word!) : [(string)schema["type"]!];
}
