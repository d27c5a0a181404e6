using System.Text.Json;
using System.Text.RegularExpressions;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Index;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;
using ShellForge.Testing;

namespace ShellForge.Sweep.Tests.Index;

public class SweepIndexTests
{
    private static void Make(SweepOrder order, TemporaryFolder folder, Func<Variant, VariantRow, VariantRow>? change = null)
    {
        using (SweepFolder sweep = SweepFolder.Open(folder.Path, order))
        {
            SweepRun.Run(order, sweep, new SweepPart(Shard.Whole, 3), (variant, key, _) =>
            {
                VariantRow row = Orders.Row(variant, key);
                return new MadeVariant(change?.Invoke(variant, row) ?? row, []);
            }, _ => { }, CancellationToken.None);
        }

        using SweepFolder found = SweepFolder.OpenJoined(folder.Path)!;
        SweepIndex.Write(found);
    }

    [Fact]
    public void Table_and_document_name_every_variant_in_the_plans_order()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order =
            Orders.Of("vary: {name: [\"a, b\", \"say \\\"c\\\"\", \"=1+1\"], housing.walls: [2, 4]}\ncases: {slim: {housing.walls: 3}}");
        Make(order, folder);

        string[] lines = File.ReadAllLines(folder.File("index.csv"));
        Assert.Equal(1 + 7, lines.Length);
        Assert.StartsWith("folder,code,board,case,name,housing.walls,outcome,verdict,stops,", lines[0], StringComparison.Ordinal);
        Assert.Contains(",\"a, b\",2,made,print,0,", lines[1], StringComparison.Ordinal);
        Assert.Contains(",\"say \"\"c\"\"\",4,", lines[4], StringComparison.Ordinal);
        Assert.Contains(",'=1+1,2,", lines[5], StringComparison.Ordinal);
        Assert.Contains(",slim,,3,made,", lines[7], StringComparison.Ordinal);
        JsonElement json = JsonDocument.Parse(File.ReadAllText(folder.File("index.json"))).RootElement;
        Assert.Equal(VariantList.Of(order).Select(v => v.Folder),
            json.GetProperty("variants").EnumerateArray().Select(v => v.GetProperty("folder").GetString()!));
    }

    [Theory]
    [InlineData("-2+3+cmd|' /C calc'!A0", "'-2+3+cmd|' /C calc'!A0")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1+1", "\"'\t=1+1\"")]
    [InlineData("\uFF1D1+1", "'\uFF1D1+1")]
    [InlineData("\uFF0D1+1", "'\uFF0D1+1")]
    [InlineData("a;=1+1", "\"a;=1+1\"")]
    [InlineData("-2.5", "-2.5")]
    [InlineData("+3e2", "+3e2")]
    public void A_field_of_the_table_is_text_to_a_spreadsheet_unless_it_is_a_number(string text, string written)
    {
        using var stream = new MemoryStream();
        Variant variant = VariantList.Of(Orders.Of("vary: {housing.walls: [2]}")).Single();
        VariantRow row = Orders.Row(variant, "00") with { Case = text, Housing = null };

        IndexCsv.Write(stream, IndexSurvey.Of([row]), [row]);

        Assert.Contains($",buoy.yaml,{written},2,", System.Text.Encoding.UTF8.GetString(stream.ToArray()), StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_can_be_read_without_its_script_and_asks_nothing_of_the_network()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of("vary: {name: [\"<b>x</b>\", \"</script>\"], housing.walls: [2, 4]}");
        Make(order, folder,
            (variant, row) => variant.Number == 3
                ? row with { Outcome = VariantOutcome.Refused, Housing = null, Faults = ["plan.yaml:3:9: no"] } : row);

        string page = File.ReadAllText(folder.File("index.html"));
        string bare = Regex.Replace(page, "<script.*?</script>", "", RegexOptions.Singleline);

        Assert.Equal(4, Regex.Count(bare, "<tr data-row="));
        Assert.Matches("http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src 'sha256-[^' ]{44}'; ", bare);
        Assert.Contains("plan.yaml:3:9: no", bare, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;x&lt;/b&gt;", bare, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>x", page, StringComparison.Ordinal);
        Assert.Equal(2, Regex.Count(page, "</script>"));
        Assert.DoesNotContain("http", page.Replace("http-equiv", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_batch_buys_for_what_can_be_printed_with_spares_rounded_up()
    {
        using var folder = new TemporaryFolder();
        Make(Orders.Of("vary: {housing.walls: [2, 3, 4]}\nspares: 10"), folder,
            (v, row) => v.Number == 2 ? Orders.Row(v, row.Key, stops: 1) : row);

        JsonElement item = JsonDocument.Parse(File.ReadAllText(folder.File("index.json"))).RootElement.GetProperty("shopping")[0];
        Assert.Equal((8, 9), (item.GetProperty("needed").GetInt32(), item.GetProperty("to_buy").GetInt32()));
    }

    [Fact]
    public void Parts_of_a_plate_lie_on_the_bed_without_touching_and_each_lies_once()
    {
        var random = new Random(4711);
        for (int round = 0; round < 200; round++)
        {
            Variant variant = VariantList.Of(Orders.Of("vary: {housing.walls: [2]}")).Single();
            VariantRow row = Orders.Row(variant, "00");
            PlateJob[] jobs = [.. Enumerable.Range(0, random.Next(1, 40)).Select(i => new PlateJob($"p{i}", row,
                [row.Housing!.Parts[0] with
                {
                    Filament = random.Next(2) == 0 ? "black" : "white", At = [random.Next(-50, 50), random.Next(-50, 50), 0],
                    Size = [random.Next(10, 260), random.Next(10, 190), 10],
                }]))];
            var plates = PlateFill.Of(jobs);

            Assert.Equal(jobs.Select(job => job.Name).Order(StringComparer.Ordinal),
                plates.SelectMany(plate => plate.Jobs.Select(placed => placed.Job.Name)).Order(StringComparer.Ordinal));
            foreach (FilledPlate plate in plates)
            {
                Assert.Single(plate.Jobs.Select(placed => placed.Job.Filaments).Distinct());
                (double FromX, double FromY, double ToX, double ToY)[] boxes = [.. plate.Jobs.Select(placed =>
                {
                    PartFigures part = placed.Job.Parts[0];
                    (double x, double y) = (part.At[0] + placed.Shift.X, part.At[1] + placed.Shift.Y);
                    return (x, y, x + part.Size[0], y + part.Size[1]);
                })];
                Assert.True(boxes.Length == 1 || boxes.All(box => box is { FromX: >= 5, FromY: >= 5, ToX: <= 205, ToY: <= 205 }));
                Assert.DoesNotContain(boxes.SelectMany((one, i) => boxes[(i + 1)..].Select(other => (one, other))), pair =>
                    pair.one.FromX < pair.other.ToX + 5 && pair.other.FromX < pair.one.ToX + 5
                    && pair.one.FromY < pair.other.ToY + 5 && pair.other.FromY < pair.one.ToY + 5);
            }
        }
    }

    [Fact]
    public void A_plot_is_there_for_what_an_axis_moves_and_for_nothing_else()
    {
        using var folder = new TemporaryFolder();
        Make(Orders.Of("vary: {housing.walls: [2, 4], housing.floor: [2.0, 2.4]}"), folder, (v, row) =>
            row with { Housing = row.Housing! with { Grams = v.Telling[0].Value.Text == "2" ? 10 : 20, Size = [10, 20, 30] } });

        string page = File.ReadAllText(folder.File("index.html"));
        Assert.Equal(["plastic: 2 10.0, 4 20.0"], Regex.Matches(page, "<title>([^<]*: [^<]*)</title>").Select(m => m.Groups[1].Value));
    }
}
