using System.Collections.Immutable;
using System.Security.Cryptography;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Output.Files;
using ShellForge.Pipeline;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Remembering;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>What is remembered from one housing to the next changes none of them, and spares what they have in common.</summary>
public class MemoryTests
{
    // Everything that can be looked at: cells and none, parts on both sides, a range of temperatures, a cable, a mount.
    private const string Lamp = """
        format: shellforge/1
        name: Lamp
        revision: A
        up: 90
        board:
          outline: {disc: 50}
          thickness: 1.6
          holes: [{circle: 42, count: 3, from: 45, diameter: 2.2}]
          pixels: {package: "2020", circle: 24, count: 8, from: 90}
          parts:
            - {ref: C1, size: [4, 4, 3], round: true, side: top, at: [0, 3]}
            - {ref: U1, size: [8, 6, 2], side: bottom, at: [0, -4], watts: 0.1}
        housing: {insert: m2x3-od3.6, cable: {round: 4, angle: 270, relief: tie}, closure: snap, walls: 4, floor: 1.6}
        power: {supply: usb-default, brightness: 0.3, capped: true}
        use: {orientation: wall, ambient: [10, 30]}
        print: {printer: fdm-0.4, shell: petg-black, diffuser: petg-white}
        """;

    // At least one of each kind of value that any key of the memory holds.
    private static readonly string[] Wishes =
    [
        "name=Lantern", "revision=B", "up=0", "board.outline={disc: 52}", "board.thickness=1.0", "board.holes[0].diameter=2.3",
        "board.holes[0].from=50", "board.pixels.package=3535", "board.pixels.count=9", "board.pixels.circle=25", "board.pixels.from=80",
        "board.parts[0].at=[0, 2]", "board.parts[0].size=[4, 4, 4]", "board.parts[1].at=[0, -5]", "board.parts[1].watts=0.4",
        "housing.insert=m2.5x4-od4.6", "housing.walls=5", "housing.floor=2.0", "housing.closure=glue", "housing.mount=keyhole",
        "housing.label={text: HI, height: 5}", "housing.edge=round", "housing.vents=floor", "housing.light.look=pixels",
        "housing.light.evenness=even", "housing.light.window=6", "housing.diffuser.thickness=1.2", "housing.diffuser.distance=9",
        "housing.clearance.below-parts=1.2", "housing.openings=[{name: sensor, front: [0, 12], diameter: 3}]",
        "power.brightness=0.5", "use.ambient=25", "use.orientation=table", "print.shell=petg-white",
        "print.diffuser=petg-natural", "print.baffle=petg-black", "print.printer=fdm-0.6",
    ];

    [Fact]
    public void Every_file_of_a_housing_made_after_others_is_that_of_one_made_alone()
    {
        var memory = new WorkMemory();
        string[] alone = [.. Files(null, null).Concat(Wishes.SelectMany(wish => Files(wish, null)))];
        string[] after = [.. Files(null, memory).Concat(Wishes.SelectMany(wish => Files(wish, memory)))];

        Assert.Equal(alone, after);
        Assert.All(
            ["SolidKey", "LightKey", "PlannedEvenness", "Temperatures", "Bearable", "Several", "PlateFile", "StlFile", "LaidKey",
                "LinesKey", "NarrowKey", "FinerKey", "GapsKey", "UnsupportedKey"],
            kind => Assert.True(memory.Counts[kind].Found > 0, kind));
    }

    [Fact]
    public void A_plan_made_after_others_is_the_plan_made_alone_whichever_key_has_changed()
    {
        const string board = "ring";
        var memory = new WorkMemory();
        string text = NoWishIgnoredTests.Boards[board];
        string[] wishes = [.. NoWishIgnoredTests.WishesFor(board)];
        Assert.NotEmpty(wishes);
        foreach (string? wish in (string?[])[null, .. wishes])
        {
            if (Read(text, wish) is { } file)
            {
                Assert.Equal(OutcomeText.Of(HousingPlanner.Plan(file)), OutcomeText.Of(HousingPlanner.Plan(file, memory)));
            }
        }
    }

    [Fact]
    public void Another_insert_leaves_every_part_but_the_tub_as_it_was()
    {
        var memory = new WorkMemory();
        HousingPlan before = HousingPipeline.Draw(Read(Lamp, null)!, memory: memory).Plan;
        ImmutableSortedDictionary<string, WorkCount> first = memory.Counts;
        HousingPlan after = HousingPipeline.Draw(Read(Lamp, "housing.insert=m2x4-od3.6")!, memory: memory).Plan;

        Assert.Equal(before.Parts.Length, first["SolidKey"].Done);
        Assert.Equal(new WorkCount(before.Parts.Length + 1, after.Parts.Length - 1), memory.Counts["SolidKey"]);
        Assert.Equal(first["PlannedEvenness"].Done, memory.Counts["PlannedEvenness"].Done);
    }

    [Fact]
    public void Another_brightness_leaves_all_bodies_light_pictures_and_meshes_as_they_were()
    {
        var memory = new WorkMemory();
        Files(null, memory);
        ImmutableSortedDictionary<string, WorkCount> first = memory.Counts;
        Files("power.brightness=0.31", memory);

        string[] worked =
            [.. memory.Counts.Where(each => each.Value.Done > first.GetValueOrDefault(each.Key).Done).Select(each => each.Key)];
        Assert.Equal(["InnerAir", "Temperatures"], worked);
    }

    [Fact]
    public void Another_revision_leaves_the_light_and_the_lines_of_all_sections_but_those_with_its_mark_as_they_were()
    {
        var memory = new WorkMemory();
        Files(null, memory);
        ImmutableSortedDictionary<string, WorkCount> first = memory.Counts;
        Files("revision=B", memory);

        Assert.Equal(first["LightKey"].Done, memory.Counts["LightKey"].Done);
        Assert.All(["LinesKey", "FinerKey", "GapsKey", "UnsupportedKey"], kind =>
            Assert.InRange(memory.Counts[kind].Done - first[kind].Done, 1, first[kind].Done / 2));
    }

    private static BoardFile? Read(string text, string? wish) => ReadWith(text, wish).File;

    private static BoardReadResult ReadWith(string text, string? wish) =>
        BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, wish is null ? [] : [SetOverride.Parse(wish)]);

    // Name and content of each file of a housing.
    private static IEnumerable<string> Files(string? wish, WorkMemory? memory)
    {
        BoardReadResult read = ReadWith(Lamp, wish);
        BoardFile file = read.File ?? throw new InvalidOperationException($"{wish}: {string.Join('\n', read.Diagnostics)}");
        DrawnFiles? drawn = null;
        MadeHousing made = HousingPipeline.Make(
            file, beside: housing => drawn = DrawnFiles.Of(housing, [OutputFormat.Stl, OutputFormat.ThreeMf, OutputFormat.Csv]),
            memory: memory);
        return
        [
            .. HousingFiles.Of(drawn!, made.Report)
                .Select(written => $"{wish}: {written.Name} {Convert.ToHexStringLower(SHA256.HashData(written.Content))}"),
        ];
    }
}
