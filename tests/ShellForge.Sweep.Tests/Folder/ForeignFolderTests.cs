using System.Text;
using ShellForge.Output.Files;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Index;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;
using ShellForge.Testing;

namespace ShellForge.Sweep.Tests.Folder;

/// <summary>Sweeps' folders that came from somebody else, and files of the user's own in a sweep's folder.</summary>
public class ForeignFolderTests
{
    private const string Plan = "vary: {housing.walls: [2, 3]}";

    private static List<VariantRow> Run(SweepOrder order, string path)
    {
        using (SweepFolder sweep = SweepFolder.Open(path, order))
        {
            SweepRun.Count(order, sweep, Shard.Whole);
        }

        return Orders.Run(order, path);
    }

    private static (TemporaryFolder Victim, IReadOnlyDictionary<string, string> Before) Victim()
    {
        var victim = new TemporaryFolder();
        victim.Write("photos/one.png", "a picture");
        victim.Write("lock", "");
        victim.Write("plate-001_0123abcd.3mf", "a plate");
        return (victim, victim.Snapshot());
    }

    [Theory]
    [InlineData("sweep-state/writer-0001")]
    [InlineData("sweep-state/writer-1")]
    [InlineData("sweep-state/writer-00001")]
    public void What_a_writers_folder_that_is_a_link_leads_to_is_left_alone(string name)
    {
        (TemporaryFolder victim, IReadOnlyDictionary<string, string> before) = Victim();
        using var _ = victim;
        using var folder = new TemporaryFolder();
        Run(Orders.Of(Plan), folder.Path);
        Directory.CreateSymbolicLink(folder.File(name), victim.Path);

        SweepFolder.OpenJoined(folder.Path)!.Dispose();
        Run(Orders.Of(Plan.Replace("3", "4", StringComparison.Ordinal)), folder.Path);

        Assert.Equal(before, victim.Snapshot());
    }

    [Fact]
    public void A_folder_that_no_writer_of_ours_can_have_is_left_alone()
    {
        using var folder = new TemporaryFolder();
        Run(Orders.Of(Plan), folder.Path);
        string[] own = ["sweep-state/writer-1/mine/a.txt", "sweep-state/writer-notes/b.txt", "sweep-state/writer-0000/c/d.txt"];
        Assert.All(own, name => folder.Write(name, "mine"));

        SweepFolder.OpenJoined(folder.Path)!.Dispose();

        Assert.All(own, name => Assert.True(File.Exists(folder.File(name)), name));
    }

    [Fact]
    public void A_link_within_a_dead_writers_folder_goes_and_what_it_leads_to_stays()
    {
        (TemporaryFolder victim, IReadOnlyDictionary<string, string> before) = Victim();
        using var _ = victim;
        using var folder = new TemporaryFolder();
        Run(Orders.Of(Plan), folder.Path);
        folder.Write("sweep-state/writer-0001/lock", "");
        folder.Write("sweep-state/writer-0001/half/part.stl", "");
        Directory.CreateSymbolicLink(folder.File("sweep-state/writer-0001/out"), victim.Path);

        SweepFolder.OpenJoined(folder.Path)!.Dispose();

        Assert.False(Directory.Exists(folder.File("sweep-state/writer-0001")));
        Assert.Equal(before, victim.Snapshot());
    }

    [Theory]
    [InlineData("sweep-state")]
    [InlineData("plates")]
    [InlineData("")]
    public void A_folder_of_a_sweep_that_is_a_link_is_refused(string name)
    {
        (TemporaryFolder victim, IReadOnlyDictionary<string, string> before) = Victim();
        using var _ = victim;
        using var parent = new TemporaryFolder();
        string root = parent.File("sweep");
        string link = Path.Combine(root, name);
        Directory.CreateDirectory(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(link))!);
        Directory.CreateSymbolicLink(Path.TrimEndingDirectorySeparator(link), victim.Path);

        IOException refused = Assert.Throws<IOException>(() =>
        {
            Run(Orders.Of(Plan), root + Path.DirectorySeparatorChar);
            using SweepFolder joined = SweepFolder.OpenJoined(root)!;
            SweepIndex.Write(joined, plates: true);
        });

        Assert.Contains("is a link", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, victim.Snapshot());
    }

    [Fact]
    public void No_file_is_locked_through_a_link_that_leads_nowhere()
    {
        using var victim = new TemporaryFolder();
        using var folder = new TemporaryFolder();
        Run(Orders.Of(Plan), folder.Path);
        File.Delete(folder.File("sweep-state/joining"));
        File.CreateSymbolicLink(folder.File("sweep-state/joining"), victim.File("new"));

        Assert.Throws<UnauthorizedAccessException>(() => SweepFolder.OpenJoined(folder.Path));

        Assert.Empty(victim.Snapshot());
    }

    [Fact]
    public void Plates_that_have_not_a_name_of_ours_stay()
    {
        using var folder = new TemporaryFolder();
        Run(Orders.Of(Plan), folder.Path);
        string[] own =
            ["plates/plate-test.3mf", "plates/plate-1.3mf", "plates/plate-001_0123abcd.3mf.bak", "plates/my plate-001_0123abcd.3mf"];
        Assert.All(own, name => folder.Write(name, "mine"));
        folder.Write("plates/plate-002_0123abcd.3mf", "ours");
        using SweepFolder sweep = SweepFolder.OpenJoined(folder.Path)!;

        BatchPlates.Write(sweep, []);

        Assert.Equal(own.Select(folder.File).Order(StringComparer.Ordinal),
            Directory.GetFiles(folder.File("plates")).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_the_user_has_put_into_a_variants_folder_stays_when_the_variant_is_made_again()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        Run(order, folder.Path);
        Variant first = VariantList.Of(order).First();
        folder.Write($"{first.Folder}/my-notes.txt", "sand it first");
        folder.Write($"{first.Folder}/photos/one.png", "a picture");
        string outdated = folder.Write($"{first.Folder}/tub-{first.Code}.step", "of the earlier run");
        string old = File.ReadAllText(folder.File($"{first.Folder}/part.stl"));

        List<VariantRow> made = Run(order with { Version = "1.2.4" }, folder.Path);

        Assert.Equal(2, made.Count);
        Assert.Equal("sand it first", File.ReadAllText(folder.File($"{first.Folder}/my-notes.txt")));
        Assert.Equal("a picture", File.ReadAllText(folder.File($"{first.Folder}/photos/one.png")));
        Assert.False(File.Exists(outdated));
        Assert.NotEqual(old, File.ReadAllText(folder.File($"{first.Folder}/part.stl")));
        Assert.Empty(Run(order with { Version = "1.2.4" }, folder.Path));
        Assert.Empty(Directory.GetDirectories(folder.File("sweep-state")));
    }

    // A folder of the user's stands where a new file belongs, and goes as soon as others have been put beside it.
    [Fact]
    public async Task Files_that_were_put_among_others_by_half_are_all_there_after_the_next_run()
    {
        SweepOrder order = Orders.Of("vary: {housing.walls: [2]}");
        Variant variant = VariantList.Of(order).Single();
        string[] plates = [.. Enumerable.Range(1, 9).Select(i => $"housing-{variant.Code}-{i}.3mf")];
        for (int round = 0; round < 40; round++)
        {
            using var folder = new TemporaryFolder();
            Run(order, folder.Path);
            folder.Write($"{variant.Folder}/my-notes.txt", "sand it first");
            string inTheWay = folder.File($"{variant.Folder}/{plates[4]}");
            Directory.CreateDirectory(inTheWay);
            using var ended = new CancellationTokenSource();
            Task clearing = Task.Run(() =>
            {
                while (!ended.IsCancellationRequested && !plates.Any(plate => File.Exists(folder.File($"{variant.Folder}/{plate}"))))
                {
                }

                Directory.Delete(inTheWay);
            });

            // The first may fail, and says so.
            for (int run = 0; run < 2; run++)
            {
                try
                {
                    using SweepFolder sweep = SweepFolder.Open(folder.Path, order with { Version = "1.2.4" });
                    SweepRun.Run(order with { Version = "1.2.4" }, sweep, new SweepPart(Shard.Whole, 1), Made, _ => { }, default);
                }
                catch (Exception e) when (run == 0 && e is IOException or UnauthorizedAccessException)
                {
                    await ended.CancelAsync();
                    await clearing;
                }
            }

            Assert.All(plates, plate => Assert.True(File.Exists(folder.File($"{variant.Folder}/{plate}")), $"{round}: {plate}"));
            Assert.Equal("sand it first", File.ReadAllText(folder.File($"{variant.Folder}/my-notes.txt")));
        }

        MadeVariant Made(Variant made, string key, CancellationToken cancel)
        {
            MadeVariant usual = Orders.Written(made, key, cancel);
            return usual with { Files = [.. plates.Select(name => new OutputFile(name, [1])), .. usual.Files] };
        }
    }

    [Theory]
    [InlineData("notes.txt", "mine")]
    [InlineData("variant.json", "{}")]
    [InlineData("variant.json", "{\"folder\":\"another_222222\",\"code\":\"222222\"}")]
    [InlineData("variant.json", "{\"folder\":\"\\ud800\"}")]
    public void A_folder_that_no_sweep_wrote_is_left_as_it_is_and_named_before_anything_is_made(string name, string text)
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        string taken = VariantList.Of(order).Last().Folder;
        folder.Write($"{taken}/{name}", text);

        FolderTakenException told = Assert.Throws<FolderTakenException>(() => Run(order, folder.Path));

        Assert.Contains(taken, told.Message, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(folder.File($"{taken}/{name}")));
        Assert.Equal([taken], Directory.GetDirectories(folder.Path).Select(Path.GetFileName).Where(n => n != "sweep-state"));
    }

    [Fact]
    public void A_folder_that_is_taken_while_variants_are_made_is_left_as_it_is()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of("vary: {housing.walls: [2]}");
        using SweepFolder sweep = SweepFolder.Open(folder.Path, order);

        Assert.Throws<FolderTakenException>(() => SweepRun.Run(order, sweep, new SweepPart(Shard.Whole, 1), (variant, key, cancel) =>
        {
            folder.Write($"{variant.Folder}/notes.txt", "mine");
            return Orders.Written(variant, key, cancel);
        }, _ => { }, CancellationToken.None));

        Assert.Equal("mine", File.ReadAllText(folder.File($"{VariantList.Of(order).Single().Folder}/notes.txt")));
    }

    [Fact]
    public void A_writer_that_takes_the_name_of_one_that_was_joined_lives_on_when_another_joiner_ends()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        Run(order, folder.Path);
        folder.Write("sweep-state/writer-0001/lock", "");
        SweepFolder one = SweepFolder.OpenJoined(folder.Path)!;
        SweepFolder other = SweepFolder.OpenJoined(folder.Path)!;
        one.Dispose();
        Assert.False(Directory.Exists(folder.File("sweep-state/writer-0001")));
        using SweepFolder sweep = SweepFolder.Open(folder.Path, order);
        using SweepWriter writer = sweep.TakeWriter();
        Variant variant = VariantList.Of(order).First();
        writer.Note(Orders.Row(variant, new string('a', 64)));

        other.Dispose();

        Assert.True(File.Exists(folder.File("sweep-state/writer-0001/rows.jsonl")));
    }

    [Theory]
    [InlineData("-70")]
    [InlineData("-2147483648")]
    [InlineData("0")]
    [InlineData("+5")]
    [InlineData("2147483647")]
    [InlineData("99999999999")]
    public async Task A_row_of_an_impossible_length_is_none_and_the_reading_ends(string length)
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        Run(order, folder.Path);
        IReadOnlyDictionary<string, string> before = folder.Snapshot();
        string line = $"{new string('a', 64)} {length} {new string('x', 200)}\n";
        File.AppendAllText(folder.File("sweep-state/rows.jsonl"), line, Encoding.ASCII);

        Assert.Empty(await Task.Run(() => Run(order, folder.Path)).WaitAsync(TimeSpan.FromSeconds(20)));

        Assert.Equal(before, folder.Snapshot());
    }
}
