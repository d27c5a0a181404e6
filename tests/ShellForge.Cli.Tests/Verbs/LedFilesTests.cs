using System.Globalization;
using System.Text.Json.Nodes;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests.Verbs;

public class LedFilesTests
{
    // The first LED of the board stands at board angle 90, the others follow clockwise; "up" turns them all against it.
    [Theory]
    [InlineData(90, 0, 0, 10)]
    [InlineData(180, 90, 10, 0)]
    [InlineData(0, 270, -10, 0)]
    [InlineData(270, 180, 0, -10)]
    public void Places_are_as_the_housing_hangs(int up, double clockwise, double x, double y)
    {
        JsonNode leds = Json(Made(up, "0.2", "usb-c-1.5A"));
        JsonNode first = leds["leds"]![0]!;

        Assert.Equal((clockwise, x, y), ((double)first["clockwise_deg"]!, (double)first["x_mm"]!, (double)first["y_mm"]!));

        // Clockwise data order: the next one is a quarter turn further on the clock.
        Assert.Equal((clockwise + 90) % 360, (double)leds["leds"]![1]!["clockwise_deg"]!);
    }

    [Fact]
    public void Counts_circles_and_order_are_the_board_files()
    {
        JsonNode leds = Json(Made(90, "0.2", "usb-c-1.5A"));

        Assert.Equal(4, (int)leds["count"]!);
        Assert.Equal(["D1", "D2", "D3", "D4"], leds["leds"]!.AsArray().Select(led => (string)led!["ref"]!));
        Assert.Equal("""[{"first":0,"count":4,"positions":4,"diameter_mm":20,"facing":"up"}]""", leds["circles"]!.ToJsonString());
    }

    [Theory]
    [InlineData("0.1", "usb-c-1.5A", "planned", 25)]
    [InlineData("1", "usb-default", "plastic", 254)]
    public void The_cap_is_the_least_of_what_is_planned_carried_and_stood(string brightness, string supply, string by, int most)
    {
        JsonNode leds = Json(Made(90, brightness, supply));

        Assert.Equal(by, (string)leds["cap_set_by"]!);
        Assert.InRange((int)leds["brightness_cap"]!, 1, most);
        Assert.True((int)leds["current_at_cap_ma"]! <= (int)leds["current_limit_ma"]!, leds.ToJsonString());
    }

    [SkippableFact]
    public void A_compiler_reads_the_header_as_the_json_has_it()
    {
        string? compiler = new[] { "/usr/bin/cc", "/usr/bin/gcc", "/usr/bin/clang" }.FirstOrDefault(File.Exists);
        Skip.If(compiler is null, "no C compiler");
        (string header, string json) = Made(135, "0.2", "usb-c-1.5A");
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder.File("leds.h"), header);
        File.WriteAllText(
            folder.File("main.c"),
            """
            #include <stdio.h>
            #include "leds.h"
            int main(void) {
              printf("%d %d %d %d\n", LEDS_COUNT, LEDS_BRIGHTNESS_CAP, LEDS_CURRENT_LIMIT_MA, leds_circles[0].diameter);
              for (int i = 0; i < LEDS_COUNT; i++) printf("%d %d %u %u\n", leds_places[i].x, leds_places[i].y, leds_places[i].angle, leds_places[i].circle);
              return 0;
            }
            """);
        Assert.Equal("", ForeignRun.Of(compiler!, folder.Path, ["-std=c99", "-Wall", "-Wextra", "-Werror", "-o", "leds", "main.c"]).Told);

        string told = ForeignRun.Of(folder.File("leds"), folder.Path, []).Told;

        JsonNode leds = JsonNode.Parse(json)!;
        static string Hundredths(JsonNode? value) => Math.Round((double)value! * 100).ToString("0;-0;0", CultureInfo.InvariantCulture);
        string expected =
            $"{leds["count"]} {leds["brightness_cap"]} {leds["current_limit_ma"]} {Hundredths(leds["circles"]![0]!["diameter_mm"])}\n"
            + string.Concat(
                leds["leds"]!.AsArray()
                    .Select(led =>
                        $"{Hundredths(led!["x_mm"])} {Hundredths(led["y_mm"])} {Hundredths(led["clockwise_deg"])} {led["circle"]}\n"));
        Assert.Equal(expected, told);
    }

    private static JsonNode Json((string Header, string Json) files) => JsonNode.Parse(files.Json)!;

    private static (string Header, string Json) Made(int up, string brightness, string supply)
    {
        using var bench = new Bench();
        File.WriteAllText(
            bench.Folder.File("buoy.yaml"),
            Bench.SmallBoard
                .Replace("name: Buoy", $"name: Buoy */ #error\nup: {up}", StringComparison.Ordinal)
                .Replace("supply: usb-c-1.5A, brightness: 0.2", $"supply: {supply}, brightness: {brightness}", StringComparison.Ordinal));
        bench.Run("make", "buoy.yaml", "-o", "out", "--formats", "leds", "-q");
        return (File.ReadAllText(bench.Folder.File("out/leds.h")), File.ReadAllText(bench.Folder.File("out/leds.json")));
    }
}
