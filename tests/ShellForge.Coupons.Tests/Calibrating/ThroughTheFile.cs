using System.Collections.Immutable;
using System.Text;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Answers;
using ShellForge.Coupons.Calibrating;
using ShellForge.Coupons.Files;

namespace ShellForge.Coupons.Tests.Calibrating;

/// <summary>Coupons of a simulated printer, answered and calibrated by way of the files that people fill in and keep.</summary>
internal static class ThroughTheFile
{
    private static readonly DateOnly Day = new(2026, 11, 30);

    /// <summary>Coupons as they are drawn: answers need no meshes.</summary>
    public static ImmutableArray<MadeCoupon> Drawn(CouponWish wish, params string[] kinds) =>
        [.. kinds.Select(kind => new MadeCoupon(Samples.Drawn(kind, wish), [], new(0, 0, 0)))];

    /// <summary>What the answers mean, faults included.</summary>
    public static Calibration Read(SimulatedPrinter printer, ImmutableArray<MadeCoupon> drawn, ProfileLibrary library)
    {
        AnswerReadResult read = AnswerFileReader.Read("answers.yaml", AnswerForm.Text(drawn, printer.Answer), library);
        Assert.True(read.File is not null, string.Join("\n", read.Diagnostics));
        (ImmutableArray<OpenQuestion> open, ImmutableArray<CalibrationFault> faults) = Calibration.Questions(read.File!);
        Assert.True(open.IsEmpty && faults.IsEmpty, string.Join("\n", faults));
        return Calibration.Of(read.File!, [], library);
    }

    /// <summary>The files that are written, by name.</summary>
    public static (string Name, string Text)[] Profiles(SimulatedPrinter printer, ImmutableArray<MadeCoupon> drawn, ProfileLibrary library)
    {
        Calibration calibration = Read(printer, drawn, library);
        Assert.True(calibration.Faults.IsEmpty, string.Join("\n", calibration.Faults));
        return
        [
            .. MeasuredProfiles.Files(calibration, drawn[0].Coupon.Wish.Printer.Name, library, Day)
                .Select(file => (file.Name, Encoding.UTF8.GetString(file.Content.ToArray()))),
        ];
    }

    /// <summary>The shipped profiles with files of the user's.</summary>
    public static ProfileLibrary Library(IEnumerable<(string, string)> files)
    {
        ProfileLoadResult loaded = ProfileLibrary.Load(files);
        Assert.True(loaded.Diagnostics.IsEmpty, string.Join("\n", loaded.Diagnostics));
        return loaded.Library;
    }
}
