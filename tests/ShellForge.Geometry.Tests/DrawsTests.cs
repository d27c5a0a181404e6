using FsCheck;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests;

public sealed class DrawsTests
{
    [Fact]
    public void A_case_that_fails_shrinks_to_the_one_number_that_makes_it_fail()
    {
        // Fails where any of fifty choices among a hundred is 70 or more.
        static bool Fails(Draws draws) => Enumerable.Range(0, 50).Any(_ => draws.Next(100) >= 70);
        var random = new System.Random(3);
        Arbitrary<Draws> any = Draws.Rows.Any();
        var worst = new Draws([.. Enumerable.Range(0, 200).Select(_ => random.Next(1 << 16))]);
        Assert.True(Fails(worst));
        for (bool simpler = true; simpler;)
        {
            simpler = false;
            foreach (Draws candidate in any.Shrinker(worst))
            {
                if (Fails(candidate))
                {
                    (worst, simpler) = (candidate, true);
                    break;
                }
            }
        }

        Assert.Equal("[45876]", worst.ToString());
    }

    [Fact]
    public void A_row_that_ends_goes_on_with_the_simplest()
    {
        var draws = new Draws([60000]);
        Assert.NotEqual(0, draws.Next(10));
        Assert.Equal((0, 3, 0, 0.0, "a"), (draws.Next(10), draws.Next(3, 9), draws.About(4), draws.NextDouble(), draws.Pick("a", "b")));
        Assert.Equal([1, 2, 3], draws.Shuffled([1, 2, 3]));
    }
}
