using System.Collections.Immutable;
using System.Text;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Answers;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Calibrating;
using ShellForge.Coupons.Files;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Coupons.Tests.Calibrating;

/// <summary>
/// Spoiled files of answers: mistakes with their places, open questions, or a profile that the program itself can read again; never an
/// exception.
/// </summary>
public sealed class SpoiledAnswersTests(ITestOutputHelper output)
{
    private const int Runs = 500;

    [Fact]
    public void Spoiled_answers_are_told_of_or_give_a_profile_that_is_read_again()
    {
        Random dice = FuzzRuns.Dice(41);
        string[] words =
        [
            .. CouponKinds.All.Select(kind => kind.Name),
            .. CouponKinds.All.SelectMany(kind => kind.Questions(Samples.Wish())).Select(question => question.Key).Distinct(),
            "format", "printer", "filament", "coupons", "kind", "insert", "plug", "around", "answers", "none", "fdm-0.4", "fdm-0.6",
            "petg-black", "m2.5x4-od4.6", "usb-c-receptacle", "0.2", "0.35", "5.5",
        ];
        var spoil = new SpoiledYaml(dice, words);
        int profiles = 0;
        int told = 0;
        var time = new FuzzRuns(Runs);
        while (time.Next())
        {
            string text = spoil.Of(Answers(dice));
            try
            {
                AnswerReadResult read = AnswerFileReader.Read("answers.yaml", text, WrittenBoard.Shipped);
                Assert.True(read.File is not null ^ read.Diagnostics.Any(d => d.IsError), text);
                if (read.File is not { } file)
                {
                    told++;
                    continue;
                }

                profiles += ReadAgain(file, dice, text) ? 1 : 0;
            }
            catch (Exception e) when (e is not Xunit.Sdk.XunitException)
            {
                throw new InvalidOperationException($"these answers:\n{text}", e);
            }
        }

        output.WriteLine($"{time.Tried} files, {profiles} gave profiles, {told} refused as files");
        Assert.True(profiles > Runs / 30 && told > Runs / 20, $"{profiles} gave profiles, {told} refused as files");
    }

    // What people write into the file, of two coupons each time.
    private static string Answers(Random dice)
    {
        var printer = new SimulatedPrinter(0.05, -0.2, -0.2, 0.0045) { Seed = dice.Next(1000) };
        CouponKind[] kinds = [.. Enumerable.Range(0, 2).Select(_ => CouponKinds.All[dice.Next(CouponKinds.All.Length)]).Distinct()];
        return AnswerForm.Text(
            [.. kinds.Select(kind => new MadeCoupon(Drawn(kind), [], new(0, 0, 0)))], printer.Answer);
    }

    private static Coupon Drawn(CouponKind kind) => new()
    {
        Kind = kind,
        Wish = Samples.Wish(),
        Pieces = [],
        Hands = [],
        AllowsForShrinkage = kind.Name != "size-bar",
    };

    private static bool ReadAgain(AnswerFile file, Random dice, string text)
    {
        (ImmutableArray<OpenQuestion> open, ImmutableArray<CalibrationFault> faults) = Calibration.Questions(file);
        Assert.All(faults, fault => Assert.True(fault.Message.Length > 0 && fault.Place.Line > 0, text));
        if (faults.Length > 0)
        {
            return false;
        }

        // What is open is answered with one of what the question expects.
        ImmutableArray<(OpenQuestion, string)> asked = [.. open.Select(each => (each, each.Question switch
        {
            StepQuestion step when step.Steps.Length > 0 && dice.Next(4) > 0 =>
                FormattableString.Invariant($"{step.Steps[dice.Next(step.Steps.Length)]}"),
            SizeQuestion size => FormattableString.Invariant($"{size.Drawn:0.00}"),
            StepQuestion => Question.None,
            _ => "2",
        }))];
        Calibration calibration = Calibration.Of(file, asked);
        foreach (NextCoupon next in calibration.Next)
        {
            Assert.Null(next.Kind.Lacks(next.Wish));
            Assert.NotEmpty(next.Kind.Draw(next.Wish).Pieces);
        }

        if (calibration.Found.IsEmpty)
        {
            return false;
        }

        ProfileLoadResult loaded = ProfileLibrary.Load(
            MeasuredProfiles.Files(calibration, file.Printer.Name, WrittenBoard.Shipped, new DateOnly(2026, 11, 30))
                .Select(written => (written.Name, Encoding.UTF8.GetString(written.Content.ToArray()))));
        Assert.True(loaded.Diagnostics.IsEmpty, string.Join("\n", loaded.Diagnostics) + "\n" + text);
        return true;
    }
}
