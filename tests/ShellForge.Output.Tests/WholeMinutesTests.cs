using ShellForge.Output.Report;

namespace ShellForge.Output.Tests;

/// <summary>Times of parts in whole minutes add up to what a housing takes.</summary>
public class WholeMinutesTests
{
    [Theory]
    [InlineData(new[] { 10.4, 20.4, 5.4 }, new[] { 11, 20, 5 })]
    [InlineData(new[] { 10.6, 20.7, 5.8 }, new[] { 10, 21, 6 })]
    [InlineData(new[] { 41.0 }, new[] { 41 })]
    [InlineData(new double[0], new int[0])]
    public void What_is_rounded_up_is_what_rounding_down_takes_most_from(double[] minutes, int[] whole) =>
        Assert.Equal(whole, WholeMinutes.Of(minutes));

    [Fact]
    public void Times_of_any_parts_add_up_and_stay_within_a_minute()
    {
        var dice = new Random(7);
        for (int i = 0; i < 2000; i++)
        {
            double[] minutes = [.. Enumerable.Range(0, dice.Next(1, 9)).Select(_ => dice.NextDouble() * dice.Next(1, 300))];
            var whole = WholeMinutes.Of(minutes);
            Assert.Equal(Math.Round(minutes.Sum(), MidpointRounding.AwayFromZero), whole.Sum());
            Assert.All(minutes.Zip(whole), pair => Assert.InRange(pair.Second, Math.Floor(pair.First), Math.Floor(pair.First) + 1));
        }
    }
}
