using System.Collections.Concurrent;
using System.Collections.Immutable;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Output.Files;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Index;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;
using ShellForge.Testing;

namespace ShellForge.Sweep.Tests;

/// <summary>Orders written as plans, and makers that need no geometry.</summary>
internal static class Orders
{
    /// <summary>A small board that makes a housing quickly.</summary>
    public const string SmallBoard =
        """
        format: shellforge/1
        name: Buoy
        board:
          outline: {disc: 40}
          thickness: 1.6
          holes:
            - {circle: 33, count: 2, from: 0, diameter: 2.2}
          pixels: {package: "5050", circle: 20, count: 4, from: 90, direction: cw}
        housing:
          insert: m2x3-od3.6
          cable: {round: 3.5, angle: 270, relief: tie}
          closure: snap
          light: {through: front, look: pixels, evenness: soft}
        power: {supply: usb-c-1.5A, brightness: 0.2, capped: true}
        print: {printer: fdm-0.4, shell: petg-black, diffuser: petg-white}
        """;

    /// <summary>An order of the small board.</summary>
    /// <param name="plan">The plan without its first lines.</param>
    /// <param name="overrides">Values of the command line.</param>
    public static SweepOrder Of(string plan, params string[] overrides) => OfBoards(plan, [("buoy.yaml", SmallBoard)], overrides);

    /// <summary>An order of boards.</summary>
    public static SweepOrder OfBoards(string plan, (string Name, string Text)[] boards, params string[] overrides)
    {
        string text = $"format: shellforge-plan/1\nboard: [{string.Join(", ", boards.Select(b => b.Name))}]\n{plan}\n";
        SweepPlanResult read = SweepPlanReader.Read("plan.yaml", text, WrittenBoard.Shipped);
        return new SweepOrder
        {
            Plan = read.Plan ?? throw new InvalidOperationException(string.Join('\n', read.Diagnostics)),
            Boards = [.. boards.Select(b => new SweepBoard(b.Name, b.Name, b.Text, WrittenBoard.Shipped, []))],
            Overrides = [.. overrides],
            Version = "1.2.3",
        };
    }

    /// <summary>Runs an order in a folder to its index, as the command does.</summary>
    /// <param name="order">The order.</param>
    /// <param name="folder">Full name of the folder.</param>
    /// <param name="part">What is made of it, by how many at a time; all of it, by two, where it is not given.</param>
    /// <param name="make">What makes a variant; <see cref="Written"/> where it is not given.</param>
    /// <returns>The rows that were made, not those that were there.</returns>
    public static List<VariantRow> Run(
        SweepOrder order, string folder, SweepPart? part = null, Func<Variant, string, CancellationToken, MadeVariant>? make = null)
    {
        var made = new ConcurrentBag<VariantRow>();
        using (SweepFolder sweep = SweepFolder.Open(folder, order))
        {
            SweepRun.Run(order, sweep, part ?? new SweepPart(Shard.Whole, 2), make ?? Written, made.Add, CancellationToken.None);
        }

        using SweepFolder found = SweepFolder.OpenJoined(folder)!;
        SweepIndex.Write(found);
        return [.. made];
    }

    /// <summary>A row and two files whose bytes follow from the variant alone, without a housing being made.</summary>
    public static MadeVariant Written(Variant variant, string key, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        VariantRow row = Row(variant, key);
        return new MadeVariant(row,
            [new OutputFile("part.stl", [.. System.Text.Encoding.UTF8.GetBytes(key)]), new OutputFile("variant.json", RowJson.Line(row))]);
    }

    /// <summary>A row that follows from the variant alone.</summary>
    public static VariantRow Row(Variant variant, string key, int stops = 0) => new()
    {
        Key = key,
        Folder = variant.Folder,
        Code = variant.Code,
        Board = "buoy.yaml",
        Case = variant.Case,
        Values = HousingFigured.ValuesOf(variant.Telling),
        Outcome = VariantOutcome.Made,
        Housing = new HousingFigures
        {
            Name = variant.Folder,
            Verdict = stops > 0 ? "do-not-print" : "print",
            Size = [10, 20, 30 + (variant.Number % 7)],
            Grams = 12.5 + (variant.Number % 5),
            Minutes = 60,
            Stops = stops,
            Warnings = 0,
            Clearance = 0.5,
            Evenness = 0.8,
            WarmestPlastic = 40,
            HeatMargin = 20,
            Screws = 4,
            Printer = "fdm-0.4",
            Bed = [210, 210],
            BedMargin = 5,
            Parts =
            [
                new PartFigures
                {
                    Name = "tub", Filament = "petg-black", Grams = 12.5, Colour = "#101010", At = [0, 0, 0], Size = [10, 20, 30],
                    Shape = "00ff",
                },
            ],
            Findings = [.. Enumerable.Repeat(
                new FindingFigures { Rule = "too-low", Severity = "stop", Subject = "tub", Message = "no" }, stops)],
            Shopping = [new NamedCount("screw M2 x 6 (m2-pan)", 4)],
            Resolved = [new NamedText("shell.walls", "4")],
        },
    };

    /// <summary>All files of a sweep's folder with their contents, but what only one run knows.</summary>
    public static IReadOnlyDictionary<string, string> Snapshot(TemporaryFolder folder) =>
        folder.Snapshot().ToImmutableSortedDictionary(StringComparer.Ordinal);
}
