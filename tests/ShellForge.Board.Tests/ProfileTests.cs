using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using YamlDotNet.RepresentationModel;

namespace ShellForge.Board.Tests;

public class ProfileTests
{
    [Fact]
    public void Every_number_of_every_shipped_profile_has_a_source()
    {
        int numbers = 0;
        foreach (string file in Directory.GetFiles(BoardTexts.Folder("profiles"), "*.yaml"))
        {
            var stream = new YamlStream();
            stream.Load(new StringReader(File.ReadAllText(file)));
            var root = (YamlMappingNode)stream.Documents[0].RootNode;
            HashSet<string> sources = root.Children.TryGetValue("sources", out YamlNode? named)
                ? [.. ((YamlMappingNode)named).Children.Keys.Select(k => ((YamlScalarNode)k).Value!)]
                : [];
            foreach ((YamlNode kind,
                YamlNode shelf) in root.Children.Where(c => c.Value is YamlMappingNode && ((YamlScalarNode)c.Key).Value != "sources"))
            {
                foreach ((YamlNode profile, YamlNode values) in ((YamlMappingNode)shelf).Children)
                {
                    numbers += Numbers(values, sources, $"{kind} {profile}");
                }
            }
        }

        Assert.True(numbers > 500, $"{numbers} numbers");
    }

    [Fact]
    public void A_source_is_spelled_out() =>
        Assert.StartsWith("typical: ", BoardTexts.Shipped.Inserts.Find("m2.5x4-od4.6")!.OuterDiameter.Source, StringComparison.Ordinal);

    [Fact]
    public void A_profile_is_found_by_name_and_near_its_name()
    {
        Assert.Equal(4.6, BoardTexts.Shipped.Inserts.Find("m2.5x4-od4.6")!.OuterDiameter.Value);
        Assert.Null(BoardTexts.Shipped.Inserts.Find("m2.5"));
        Assert.Equal("petg-white", BoardTexts.Shipped.Filaments.Nearest("petg-whit"));
        Assert.Equal("usb-c-receptacle", BoardTexts.Shipped.Packages.Nearest("usb-c"));
        Assert.Null(BoardTexts.Shipped.Screws.Nearest("hammer"));
        Assert.Equal("a screw", BoardTexts.Shipped.KindOf("m3-pan"));
    }

    [Fact]
    public void What_is_like_another_takes_over_what_it_does_not_say()
    {
        PrinterProfile fine = BoardTexts.Shipped.Printers.Find("fdm-0.4-fine")!;
        Assert.Equal((0.12, 0.45), (fine.LayerHeight.Value, fine.LineWidth.Value));
    }

    [Fact]
    public void A_users_profile_stands_in_place_of_the_shipped_one_and_may_be_like_it()
    {
        ProfileLoadResult loaded = ProfileLibrary.Load(
        [
            ("near.yaml",
                "format: shellforge-profiles/1\nfilaments:\n  petg-black: {like: petg-black, shrinkage: [0.006, coupon]}\n  mine: {like: "
                    + "petg-black, colour: red}\n"),
            ("far.yaml",
                "format: shellforge-profiles/1\nfilaments:\n  petg-black: {like: petg-black, shrinkage: 0.009}\n  theirs: {like: "
                    + "petg-black, reflectance: 0.5}\n"),
        ]);

        Assert.Empty(loaded.Diagnostics);
        Assert.Equal(new Sourced(0.006, "coupon"), loaded.Library.Filaments.Find("petg-black")!.Shrinkage);
        Assert.Equal(0.006, loaded.Library.Filaments.Find("mine")!.Shrinkage.Value);
        Assert.Equal("stated in far.yaml", loaded.Library.Filaments.Find("theirs")!.Reflectance.Source);
        Assert.Equal(80, loaded.Library.Filaments.Find("petg-black")!.GlassTransitionCelsius.Value);
    }

    [Fact]
    public void An_own_screw_of_the_same_head_and_thread_wins_by_its_name_alone()
    {
        ProfileLibrary library = ProfileLibrary.Load(
            [("mine.yaml",
                "format: shellforge-profiles/1\nscrews:\n  drawer: {like: m3-cap, stock-lengths: {values: [4], source: drawer}}\n  "
                    + "m3-pan: {like: m3-pan, stock-lengths: {values: [8], source: drawer}}\n")]).Library;
        ScrewProfile Screw(string said) => BoardFileReader.Read(
            "board.yaml", BoardTexts.Sample("dome-dial"), library, [SetOverride.Parse($"housing.screw={said}")]).File!.Housing.Screw!;
        Assert.Equal("m3-cap", Screw("cap").Name);
        Assert.Equal("drawer", Screw("drawer").Name);
        Assert.Equal([8.0], Screw("pan").StockLengths.Select(length => (double)length));
    }

    [Theory]
    [InlineData("filaments: {mine: {like: petg-blak}}", 2, 26, "unknown-profile")]
    [InlineData("filaments: {a: {like: b}, b: {like: a}}", 2, 37, "unknown-profile")]
    [InlineData("filaments: {a: {like: a}}", 2, 23, "unknown-profile")]
    [InlineData("inserts: {a: {thread: M3}}", 2, 14, "missing-key")]
    [InlineData("inserts: {a: {like: m3x4-od4.6, hole: [9000, x]}}", 2, 40, "out-of-range")]
    [InlineData("insert: {}", 2, 1, "unknown-key")]
    [InlineData("inserts: {\"two words\": {like: m3x4-od4.6}}", 2, 11, "bad-profile-name")]
    [InlineData("inserts: {a: {like: m3x4-od4.6, hole: [3]}}", 2, 39, "wrong-kind")]
    public void A_faulty_profile_is_told_with_its_place(string text, int line, int column, string code)
    {
        ProfileLoadResult loaded = ProfileLibrary.Load([("mine.yaml", "format: shellforge-profiles/1\n" + text + "\n")]);

        Assert.Contains(loaded.Diagnostics, d => (d.File, d.Line, d.Column, d.Code) == ("mine.yaml", line, column, code));
        Assert.NotNull(loaded.Library.Inserts.Find("m3x4-od4.6"));
    }

    [Fact]
    public void Every_insert_has_a_screw_and_a_hole_that_grips()
    {
        Assert.All(BoardTexts.Shipped.Inserts.All, insert =>
        {
            Assert.Contains(BoardTexts.Shipped.Screws.All, s => s.Thread == insert.Thread && s.Head == ScrewHead.Pan);
            Assert.True(insert.HoleDiameter <= insert.OuterDiameter - 0.3, insert.Name);
            Assert.StartsWith(insert.Thread, insert.Name, StringComparison.OrdinalIgnoreCase);
        });
    }

    [Fact]
    public void Screws_are_sold_in_rising_lengths_and_pass_their_hole()
    {
        Assert.All(BoardTexts.Shipped.Screws.All, screw =>
        {
            Assert.Equal(screw.StockLengths.Order(), screw.StockLengths);
            Assert.True(screw.ClearanceHole > screw.ThreadDiameter && screw.HeadDiameter > screw.ClearanceHole, screw.Name);
            Assert.NotEmpty(screw.StockLengthsSource);
        });
    }

    [Fact]
    public void A_plug_fits_its_recess() =>
        Assert.All(BoardTexts.Shipped.Packages.All.Where(p => p.Mouth is not null), package =>
        {
            MouthProfile mouth = package.Mouth!;
            Assert.True(mouth.RecessWidth > mouth.PlugWidth && mouth.RecessHeight > mouth.PlugHeight, package.Name);
            Assert.True(mouth.RecessCornerRadius * 2 <= mouth.RecessHeight.Value + 1e-9, package.Name);
            Assert.True(mouth.SeatDepthStop > mouth.SeatDepthWarn, package.Name);
        });

    [Fact]
    public void Coefficients_of_heat_have_a_range_round_their_value_and_a_source()
    {
        HeatProfile air = BoardTexts.Shipped.Heat.Find("still-air")!;
        SourcedRange[] ranges =
        [
            air.UprightConvection, air.UpConvection, air.DownConvection, air.AirConductivity, air.BoardConductivity, air.PrintedPlastic,
            air.Emissivity, air.HeatShare, air.LedToBoard,
            air.ControllerToBoard, air.VentDischarge,
        ];
        Assert.All(ranges,
            range => Assert.True(range.Low < range.Value && range.Value < range.High && range.Source.Length > 5, range.ToString()));
        Assert.Equal("sharp-edged slots; typical", air.VentDischarge.Source);
    }

    [Theory]
    [InlineData("air-conductivity: [0.03, 0.02, 0.028, mine]", 2, 49, "out-of-range")]
    [InlineData("air-conductivity: [0.027, mine]", 2, 49, "wrong-kind")]
    [InlineData("air-conductivity: 0.027", 2, 49, "wrong-kind")]
    public void A_coefficient_outside_of_its_range_or_without_one_is_told(string text, int line, int column, string code)
    {
        ProfileLoadResult loaded =
            ProfileLibrary.Load([("mine.yaml", $"format: shellforge-profiles/1\nheat: {{own: {{like: still-air, {text}}}}}\n")]);
        Assert.Contains(loaded.Diagnostics, d => (d.File, d.Line, d.Column, d.Code) == ("mine.yaml", line, column, code));
    }

    // A number stands in [number, source], in [number, low, high, source], or beside a source in a mapping. Nothing else is a number.
    private static int Numbers(YamlNode node, HashSet<string> sources, string where)
    {
        switch (node)
        {
            case YamlMappingNode map when map.Children.ContainsKey("values"):
                Assert.Contains(((YamlScalarNode)map["source"]).Value!, sources);
                return ((YamlSequenceNode)map["values"]).Children.Count;
            case YamlMappingNode map:
                return map.Children.Sum(c => Numbers(c.Value, sources, $"{where} {c.Key}"));
            case YamlSequenceNode list:
                Assert.True(list.Children.Count is 2 or 4, where);
                string source = ((YamlScalarNode)list[list.Children.Count - 1]).Value!;
                Assert.True(sources.Contains(source) || source.Length > 12, $"{where}: the source '{source}' is not explained");
                return list.Children.Count - 1;
            default:
                string text = ((YamlScalarNode)node).Value!;
                Assert.False(double.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out _),
                    $"{where}: {text} has no source");
                return 0;
        }
    }
}
