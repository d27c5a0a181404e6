using System.Diagnostics;
using System.Globalization;
using ShellForge.Sweep.Rows;
using Spectre.Console;

namespace ShellForge.Cli.Sweeping;

/// <summary>How a sweep goes on: counted by whatever threads finish variants, shown on a terminal.</summary>
internal sealed class SweepProgress(int all, int kept)
{
    private readonly long _started = Stopwatch.GetTimestamp();
    private int _made;
    private int _stops;
    private int _failed;

    /// <summary>Variants made by this run.</summary>
    public int Made => _made;

    /// <summary>Variants of this run for which there is no housing.</summary>
    public int Failed => _failed;

    /// <summary>Counts a finished variant.</summary>
    public void Finished(VariantRow row)
    {
        Interlocked.Increment(ref _made);
        if (row.Housing is null)
        {
            Interlocked.Increment(ref _failed);
        }
        else if (row.Housing.Stops > 0)
        {
            Interlocked.Increment(ref _stops);
        }
    }

    /// <summary>Runs work that finishes variants, and shows on a terminal how it goes.</summary>
    public void Show(Workbench bench, bool quiet, Action<Action<VariantRow>> work)
    {
        if (quiet || !bench.ShowsProgress)
        {
            work(Finished);
            return;
        }

        bench.ErrConsole().Status().Spinner(Spinner.Known.Line).Start(Line(), status => work(row =>
        {
            Finished(row);
            status.Status(Line());
        }));
    }

    /// <summary>One line: how many are done, how fast, how long it still takes, how many to look at.</summary>
    public string Line()
    {
        double seconds = Stopwatch.GetElapsedTime(_started).TotalSeconds;
        double rate = seconds > 0 ? _made / seconds : 0;
        int left = all - kept - _made;
        string pace = _made == 0
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $", {rate:0.00} a second, {Duration(left / rate)} left");
        string stops = _stops == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {_stops} with a stop");
        string failed = _failed == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {_failed} can't be made");
        return string.Create(CultureInfo.InvariantCulture, $"{kept + _made} of {all} variants{pace}{stops}{failed}");
    }

    /// <summary>A time as people say it.</summary>
    public static string Duration(double seconds) => seconds switch
    {
        < 90 => string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(seconds):0} s"),
        < 5400 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0} min"),
        < 172_800 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600:0.0} h"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{seconds / 86_400:0.0} days"),
    };
}
