using System.Text;

namespace ShellForge.EndToEnd.Tests.Faults;

/// <summary>
/// Disks, folders, pipes and surroundings that are not as one wishes: a right result, or a message and a documented status.
/// </summary>
public sealed class FaultyPlacesTests : IDisposable
{
    private const int FileTrouble = 3;

    private readonly FaultyMachine _machine = new();

    public FaultyPlacesTests() => Skip.If(OperatingSystem.IsWindows(), "the command is started by a shell script");

    public void Dispose() => _machine.Dispose();

    [SkippableFact]
    public void Where_no_file_may_grow_as_large_nothing_is_written_and_it_says_so()
    {
        Dictionary<string, byte[]> before = _machine.Made("one.yaml", "kept");

        // What a full disk does to a file in the middle: the limit is 32 KiB. The runtime maps its own code as a file, unless told not to.
        (int exit, string told) = _machine.Shell(
            "export DOTNET_EnableWriteXorExecute=0; trap '' XFSZ; ulimit -f 32; shellforge make other.yaml -q -o kept");

        Assert.True(exit == FileTrouble, $"{exit}: {told}");
        Assert.Single(told.Trim().Split('\n'));
        Assert.True(FaultyMachine.Same(before, _machine.Files("kept")));
        Assert.Equal(before.Count, Directory.GetFiles(_machine.At("kept")).Length);
    }

    [SkippableFact]
    public void A_full_disk_is_told_and_nothing_is_half_written()
    {
        string disk = _machine.At("disk");
        Directory.CreateDirectory(disk);
        Skip.If(_machine.Shell($"mount -t tmpfs -o size=1m none '{disk}'").Exit != 0, "no small disk can be mounted here");
        try
        {
            (int exit, string told) = _machine.Run("make", "one.yaml", "-q", "-o", "disk/out");

            Assert.True(exit == FileTrouble, $"{exit}: {told}");
            Assert.Empty(Directory.Exists(_machine.At("disk/out")) ? Directory.GetFiles(_machine.At("disk/out")) : []);
        }
        finally
        {
            _machine.Shell($"umount '{disk}'");
        }
    }

    [SkippableTheory]
    [InlineData("make one.yaml -q -o one.yaml")]
    [InlineData("make one.yaml -q -o one.yaml/deeper")]
    [InlineData("make one.yaml -q -o /proc/nowhere")]
    [InlineData("make one.yaml -q -o loop/x")]
    [InlineData("make one.yaml -q -o $(printf 'n%.0s' {1..300})")]
    [InlineData("check loop")]
    [InlineData("check .")]
    [InlineData("check /dev/null")]
    [InlineData("inspect .")]
    [InlineData("import nowhere.emn -o out.yaml")]
    [InlineData("coupon size-bar -o one.yaml")]
    [InlineData("new Buoy -o /proc/nowhere/buoy.yaml")]
    public void A_place_that_is_none_is_told_in_a_few_words(string line)
    {
        _machine.Shell("ln -s loop loop");

        (int exit, string told) = _machine.Shell($"shellforge {line}");

        Assert.True(exit is 2 or FileTrouble, $"{exit}: {told}");
        Assert.InRange(told.Trim().Split('\n').Length, 1, 4);
        Assert.DoesNotContain("   at ", told, StringComparison.Ordinal);
    }

    [SkippableTheory]
    [InlineData("shellforge check one.yaml >/dev/full", FileTrouble)]
    [InlineData("shellforge schema >/dev/full", FileTrouble)]
    [InlineData("shellforge schema | head -c 10 >/dev/null; exit ${PIPESTATUS[0]}", 0)]
    [InlineData("shellforge check one.yaml | true; exit ${PIPESTATUS[0]}", 0)]
    [InlineData("shellforge make one.yaml -o piped | true; exit ${PIPESTATUS[0]}", 0)]
    [InlineData("shellforge check one.yaml <&- >/dev/null", 0)]
    public void Pipes_that_end_early_and_devices_that_are_full_end_in_no_trace(string line, int status)
    {
        (int exit, string told) = _machine.Shell(line);

        Assert.True(exit == status, $"{exit}: {told}");
        Assert.DoesNotContain("   at ", told, StringComparison.Ordinal);
        Assert.DoesNotContain("nhandled", told, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void Language_home_cores_and_names_change_no_byte()
    {
        Dictionary<string, byte[]> made = _machine.Made("one.yaml", "plain");
        string[] lines =
        [
            "LC_ALL=tr_TR.UTF-8 LANG=tr_TR.UTF-8 shellforge make one.yaml -q -o as",
            "LC_ALL=de_DE.UTF-8 shellforge make one.yaml -q -o as",
            "LC_ALL=ar_SA.UTF-8 TZ=Asia/Kathmandu shellforge make one.yaml -q -o as",
            "env -i PATH=\"$PATH\" \"$(command -v shellforge)\" make one.yaml -q -o as",
            "DOTNET_PROCESSOR_COUNT=1 shellforge make one.yaml -q -o as",
            "mkdir real; ln -s real linked; shellforge make one.yaml -q -o linked && mv real as",
        ];
        foreach (string line in lines)
        {
            (int exit, string told) = _machine.Shell(line);

            Assert.True(exit == 0, $"{line}: {exit}: {told}");
            Assert.True(FaultyMachine.Same(made, _machine.Files("as")), line);
            Directory.Delete(_machine.At("as"), true);
        }
    }

    [SkippableFact]
    public void Names_of_files_and_folders_may_be_in_any_script_and_with_blanks_and_quotes()
    {
        Dictionary<string, byte[]> made = _machine.Made("one.yaml", "plain");
        Directory.CreateDirectory(_machine.At("größe 日本 -o"));
        File.Copy(_machine.At("one.yaml"), _machine.At("größe 日本 -o/ein \"board\" <b x>.yaml"));

        (int exit, string told) = _machine.Run("make", "größe 日本 -o/ein \"board\" <b x>.yaml", "-q", "-o", "größe 日本 -o/as");

        Assert.True(exit == 0, $"{exit}: {told}");
        Assert.Equal(made["tub.stl"], _machine.Files("größe 日本 -o/as")["tub.stl"]);
        string page = Encoding.UTF8.GetString(_machine.Files("größe 日本 -o/as")["report.html"]);
        Assert.DoesNotContain("<b x>", page, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void A_board_file_of_any_bytes_is_refused_in_words()
    {
        var random = new Random(3);
        byte[] noise = new byte[5000];
        random.NextBytes(noise);
        byte[] blank = Encoding.UTF8.GetBytes("format: shellforge/1\n" + new string(' ', 100_000));
        foreach (byte[] bytes in (byte[][])[[], [0xff, 0xfe], noise, blank])
        {
            File.WriteAllBytes(_machine.At("noise.yaml"), bytes);

            (int exit, string told) = _machine.Run("check", "noise.yaml");

            Assert.True(exit is 2 or FileTrouble, $"{exit}: {told}");
            Assert.DoesNotContain(told, c => c < ' ' && c != '\n');
        }
    }
}
