using ShellForge.Board.Yaml.Variation;
using ShellForge.Output.Files;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Index;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;
using ShellForge.Testing;

namespace ShellForge.Browser.Tests;

/// <summary>A sweep whose figures follow from the number of the variant, with pictures of samples: enough to look at its index.</summary>
internal static class SweptLamps
{
    private const string Plan =
        """
        format: shellforge-plan/1
        board: lamp.yaml
        vary:
          housing.floor: [1.6, 2.0, 2.4]
          print.shell: [petg-black, pc-black]
          housing.diffuser.thickness: [0.6, 0.8]
        """;

    private static readonly string[] Pictures = ["apart.png", "section.svg", "plan.svg"];

    /// <summary>Writes the sweep into a folder: variant 3 has a stop, 4 a warning, 5 can't be made.</summary>
    /// <returns>Address of its page.</returns>
    public static string Write(TemporaryFolder folder)
    {
        var order = new SweepOrder
        {
            Plan = SweepPlanReader.Read("lamps.yaml", Plan, WrittenBoard.Shipped).Plan!,
            Boards = [new SweepBoard("lamp.yaml", "lamp.yaml", "", WrittenBoard.Shipped, [])],
            Version = "1.2.3",
        };
        using (SweepFolder sweep = SweepFolder.Open(folder.Path, order))
        {
            SweepRun.Run(order, sweep, new SweepPart(Shard.Whole, 1), (variant, key, _) => Made(variant, key), _ => { },
                CancellationToken.None);
        }

        using SweepFolder joined = SweepFolder.OpenJoined(folder.Path)!;
        SweepIndex.Write(joined);
        return new Uri(folder.File("index.html")).AbsoluteUri;
    }

    private static MadeVariant Made(Variant variant, string key)
    {
        int n = variant.Number;
        var row = new VariantRow
        {
            Key = key,
            Folder = variant.Folder,
            Code = variant.Code,
            Board = "lamp.yaml",
            Values = [.. variant.Telling.Select(setting => new NamedText(setting.Path, setting.Value.Raw))],
            Outcome = VariantOutcome.Refused,
            Faults = ["lamp.yaml:3:5: no hole is where the screw goes"],
        };
        return n == 5
            ? new MadeVariant(row, [])
            : new MadeVariant(
                row with { Outcome = VariantOutcome.Made, Faults = [], Housing = Figures(n) },
                [
                    .. Pictures.Select(name => new OutputFile(
                        name, File.ReadAllBytes(Repository.At("out-samples", n % 2 == 0 ? "mooring-beacon" : "tide-lamp", name)))),
                    new OutputFile("report.html", []), new OutputFile("variant.json", []),
                ]);
    }

    private static HousingFigures Figures(int n) => new()
    {
        Name = "Lamp",
        Verdict = n == 3 ? "do-not-print" : n == 4 ? "mind-warnings" : "print",
        Size = [96.5, 96.5, 18 + ((n * 5 % 7) * 0.4)],
        Grams = 60 - n,
        Minutes = 200 + (10 * n),
        Stops = n == 3 ? 1 : 0,
        Warnings = n == 4 ? 1 : 0,
        Clearance = 0.4,
        Evenness = 0.7,
        WarmestPlastic = 40 + n,
        HeatMargin = 20 - n,
        Screws = 4,
        Printer = "fdm-0.4",
        Bed = [210, 210],
        BedMargin = 5,
        Parts =
        [
            new PartFigures
            {
                Name = "tub", Filament = "petg-black", Grams = 40, Colour = "#101010", At = [0, 0, 0], Size = [96.5, 96.5, 15],
                Shape = "00ff",
            },
        ],
        Findings = n is 3 or 4
            ? [new FindingFigures { Rule = "too-thin", Severity = n == 3 ? "stop" : "warn", Subject = "tub", Message = "its floor has one layer" }]
            : [],
        Shopping = [new NamedCount($"screw M2 x {(n == 3 ? 8 : 6)} (m2-pan)", 4)],
        Resolved = [new NamedText("stack.floor", $"{n}")],
    };
}
