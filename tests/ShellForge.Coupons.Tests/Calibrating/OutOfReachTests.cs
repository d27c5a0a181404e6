using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Yaml.Answers;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Calibrating;
using ShellForge.Coupons.Files;
using ShellForge.Testing;

namespace ShellForge.Coupons.Tests.Calibrating;

/// <summary>Answers at the ends of what a coupon, a battery or a profile can be.</summary>
public sealed class OutOfReachTests
{
    [Theory]
    [InlineData("battery-bays", "cell-diameter", "15.6",
        "15.6 mm is no AA cell: they are 13.5 to 14.5 mm wide; measure again, or take an AA cell")]
    [InlineData("battery-bays", "cell-diameter", "14,5", null)]
    [InlineData("size-bar", "width-x", "13.5",
        "13.5 mm is 1.5 mm away from the 12 mm drawn, beyond what a printer does: measure again")]
    [InlineData("size-bar", "width-x", "wide", "'wide' is no size")]
    public void A_size_that_can_not_be_is_refused_with_what_it_can_be(string kind, string key, string answer, string? told) =>
        Assert.Equal(told, CouponKinds.Find(kind)!.Questions(Samples.Wish()).Single(question => question.Key == key).Refuse(answer));

    [Theory]
    [InlineData("battery-bays", "try it with a wider AA cell")]
    [InlineData("magnet-pockets", "set 'magnet-allowance' below 0")]
    [InlineData("plug-openings", "your plug is smaller")]
    [InlineData("insert-holes", "the insert drops into every hole, though m2.5x4-od4.6 has a body of 4.60 mm")]
    [InlineData("slot-fit", "")]
    [InlineData("inlay-fit", "")]
    [InlineData("lid-fit", "")]
    [InlineData("layer-fit", "nothing closer than")]
    public void Where_every_step_is_too_loose_coupons_come_to_an_end_and_say_what_to_do(string name, string told) =>
        ComesToAnEnd(name, "loose", steps => steps[0], name == "insert-holes" ? 4.2 : 1, told);

    [Theory]
    [InlineData("battery-bays", "the cell drops between no walls up to 1")]
    [InlineData("magnet-pockets", "the magnet goes into no pocket up to 8.")]
    [InlineData("plug-openings", "your plug goes into no opening up to 1.")]
    [InlineData("insert-holes", "m2.5x4-od4.6 sinks into no hole")]
    [InlineData("slot-fit", "")]
    [InlineData("inlay-fit", "")]
    [InlineData("lid-fit", "")]
    [InlineData("layer-fit", "")]
    public void Where_every_step_is_too_tight_coupons_come_to_an_end_and_say_what_to_do(string name, string told) =>
        ComesToAnEnd(name, "tight", steps => steps[^1], null, told);

    private static void ComesToAnEnd(string name, string key, Func<ImmutableArray<double>, double> all, double? around, string told)
    {
        CouponKind kind = CouponKinds.Find(name)!;
        var tried = new HashSet<double>();
        CouponWish wish = Samples.Wish() with { Around = around };
        Reading reading;
        do
        {
            ImmutableArray<Question> asked = kind.Questions(wish);
            ImmutableArray<double> steps = asked.OfType<StepQuestion>().First().Steps;
            Assert.True(tried.Add(steps[0]), $"the coupon from {steps[0]} on is asked for again");
            Assert.True(tried.Count < 12, "nobody prints so many coupons of one kind");
            reading = kind.Read(wish, new AnswerSheet(asked.ToImmutableDictionary(question => question.Key, question => question switch
            {
                SizeQuestion => "13.5",
                StepQuestion step when step.Key == key => all(steps).ToString(CultureInfo.InvariantCulture),
                _ => Question.None,
            }, StringComparer.Ordinal)));
            Assert.Empty(reading.Faults);
            wish = wish with { Around = reading.NextAround };
        }
        while (reading.NextAround is not null);

        Assert.True(tried.Count > 1, "no second coupon was asked for");
        Assert.Contains(told, Assert.Single(reading.Notes), StringComparison.Ordinal);
    }

    // Values that the reader of profiles would refuse, and next to each one that it takes.
    [Theory]
    [InlineData("battery-bays", "14.9", 0.0, 1,
        "battery-bays: 'battery-fit' comes out as -0.85, which no profile takes (-0.5 to 3): try this coupon again")]
    [InlineData("battery-bays", "14.5", 0.0, 1, null)]
    [InlineData("battery-bays", "14.2", 3.6, 1, "battery-bays: 'battery-fit' comes out as 3.")]
    [InlineData("magnet-pockets", "0", 1.5, 1, "magnet-pockets: 'magnet-allowance' comes out as 1.")]
    [InlineData("magnet-pockets", "0", 0.9, 1, null)]
    [InlineData("plug-openings", "0", 3.0, 1, "plug-openings: 'plug-allowance' comes out as 2.")]
    [InlineData("insert-holes", "0", 0.6, 1, "insert-holes: 'insert-holes' comes out as 0.")]
    [InlineData("diffuser-steps", "0", null, 100, "diffuser-steps: 'transmission-length' comes out as 10")]
    [InlineData("diffuser-steps", "0", null, 20, null)]
    public void What_the_reader_of_profiles_would_refuse_is_told_and_not_written(
        string name, string size, double? around, double scatters, string? told)
    {
        CouponWish wish = Samples.Wish() with { Around = around };
        CouponKind kind = CouponKinds.Find(name)!;
        string Answer(Coupon _, Question question) => question switch
        {
            SizeQuestion => size,
            StepQuestion { Key: "tight" } step => Shown(step.Steps[0]),
            StepQuestion { Key: "fits" } step => Shown(step.Steps[1]),
            StepQuestion step => Shown(step.Steps[2]),
            ReadingQuestion { Key: "open" } => "1000",
            _ => Shown(1000 / (1 + (double.Parse(question.Key["window-".Length..], CultureInfo.InvariantCulture) / scatters))),
        };
        string text = AnswerForm.Text([new MadeCoupon(kind.Draw(wish), [], new(0, 0, 0))], Answer);
        AnswerFile file = AnswerFileReader.Read("answers.yaml", text, WrittenBoard.Shipped).File!;
        Assert.Empty(Calibration.Questions(file).Faults);

        Calibration read = Calibration.Of(file, []);

        Assert.Equal(told is null, read.Faults.IsEmpty);
        Assert.Equal(told is null ? 1 : 0, read.Found.Length);
        if (told is not null)
        {
            Assert.StartsWith(told, Assert.Single(read.Faults).Message, StringComparison.Ordinal);
        }
    }

    private static string Shown(double value) => value.ToString("0.#####", CultureInfo.InvariantCulture);
}
