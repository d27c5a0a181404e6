using System.Diagnostics;
using System.Globalization;
using System.Net.Sockets;
using Xunit.Abstractions;

namespace ShellForge.EndToEnd.Tests.Faults;

/// <summary>
/// The local page over many saves, as editors save: the file is rewritten, renamed over, gone and back, broken and mended. Each is shown,
/// and memory stays where it was. As many saves as SHELLFORGE_SAVES says, for the figure that the manual states.
/// </summary>
public sealed class SavedPageTests(ITestOutputHelper output) : IDisposable
{
    private const int UsualSaves = 40;

    // Of the figure after a tenth of the saves; a housing that is kept too long would show many times over.
    private const double MostGrowth = 1.5;

    private readonly FaultyMachine _machine = new();

    public void Dispose() => _machine.Dispose();

    [SkippableFact]
    public async Task Every_save_is_shown_and_memory_stays_flat()
    {
        Skip.If(OperatingSystem.IsWindows(), "the command is started by a shell script");
        int saves = Environment.GetEnvironmentVariable("SHELLFORGE_SAVES") is { } said ? int.Parse(said, CultureInfo.InvariantCulture)
            : UsualSaves;
        string board = await File.ReadAllTextAsync(_machine.At("one.yaml"));
        using Process view = _machine.Start("view", "one.yaml");
        try
        {
            Uri address = await Address(view);
            using var client = new HttpClient { Timeout = TimeSpan.FromMinutes(1) };
            var memory = new List<double>();
            for (int i = 1; i <= saves; i++)
            {
                string name = $"Buoy {i}";
                Save(i, board.Replace("name: Buoy", i % 10 == 7 ? $"nam: {name}" : $"name: {name}", StringComparison.Ordinal));
                await Shown(client, address, name, isBroken: i % 10 == 7);
                view.Refresh();
                memory.Add(view.WorkingSet64 / 1048576.0);
            }

            // Connections that say nothing stand beside it, and more saves are shown all the same.
            TcpClient[] idle = [.. Enumerable.Range(0, 200).Select(_ => new TcpClient("127.0.0.1", address.Port))];
            Save(1, board.Replace("name: Buoy", "name: Last", StringComparison.Ordinal));
            await Shown(client, address, "Last", isBroken: false);
            Array.ForEach(idle, each => each.Dispose());

            double early = memory[..(saves / 4)].Max();
            double late = memory[(saves / 2)..].Max();
            output.WriteLine(FormattableString.Invariant(
                $"{saves} saves: {early:0} MB at most in the first quarter, {late:0} MB in the second half"));
            Assert.True(late < MostGrowth * early, $"{early:0} MB, then {late:0} MB");
        }
        finally
        {
            view.Kill(entireProcessTree: true);
            view.WaitForExit();
        }
    }

    private void Save(int round, string text)
    {
        string file = _machine.At("one.yaml");
        if (round % 3 == 0)
        {
            File.Delete(file);
        }

        if (round % 2 == 0)
        {
            string other = _machine.At("one.yaml~");
            File.WriteAllText(other, text);
            File.Move(other, file, overwrite: true);
        }
        else
        {
            File.WriteAllText(file, text);
        }
    }

    private static async Task Shown(HttpClient client, Uri address, string name, bool isBroken)
    {
        var watch = Stopwatch.StartNew();
        string text;
        do
        {
            using HttpResponseMessage answer = await client.GetAsync(new Uri(address, "/page" + address.Query));
            text = await answer.Content.ReadAsStringAsync();
            if (isBroken ? (int)answer.StatusCode == 422 && text.Contains(name, StringComparison.Ordinal)
                : answer.IsSuccessStatusCode && text.Contains(name, StringComparison.Ordinal))
            {
                return;
            }

            await Task.Delay(30);
        }
        while (watch.Elapsed < TimeSpan.FromSeconds(60));
        Assert.Fail($"'{name}' is not shown: {text[..Math.Min(300, text.Length)]}");
    }

    private static async Task<Uri> Address(Process view)
    {
        while (await view.StandardOutput.ReadLineAsync() is { } line)
        {
            int at = line.IndexOf("http://", StringComparison.Ordinal);
            if (at >= 0)
            {
                return new Uri(line[at..]);
            }
        }

        throw new IOException("no address was told");
    }
}
