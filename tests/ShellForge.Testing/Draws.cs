using FsCheck;
using FsCheck.Fluent;

namespace ShellForge.Testing;

/// <summary>
/// What a property builds its case from: a row of numbers that are taken one after the other. A case that fails is made simpler by
/// leaving numbers out and making others smaller, so each choice has its simplest answer at 0 and a row that ends goes on with zeros. Not
/// the number of a seed shrinks, but the case that is built of it.
/// </summary>
public sealed class Draws(int[] row)
{
    private const int Levels = 1 << 16;
    private const int Longest = 640;

    private int _next;

    /// <summary>A whole number from 0 up to and without a limit.</summary>
    public int Next(int limit) => (int)((long)Take() * limit / Levels);

    /// <summary>A whole number from a least one, its simplest, up to and without a limit.</summary>
    public int Next(int least, int limit) => least + Next(limit - least);

    /// <summary>A number about 0: 0 is the simplest, then 1, -1, 2 and so on up to a reach.</summary>
    public int About(int reach)
    {
        int drawn = Next((2 * reach) + 1);
        return drawn % 2 == 1 ? (drawn + 1) / 2 : -(drawn / 2);
    }

    /// <summary>A number from 0 up to and without 1.</summary>
    public double NextDouble() => Take() / (double)Levels;

    /// <summary>One of some things, the first the simplest.</summary>
    public T Pick<T>(params ReadOnlySpan<T> choices) => choices[Next(choices.Length)];

    /// <summary>Some things in any order; drawn zeros leave them as they are.</summary>
    public T[] Shuffled<T>(IEnumerable<T> things)
    {
        T[] all = [.. things];
        for (int i = 0; i + 1 < all.Length; i++)
        {
            int other = i + Next(all.Length - i);
            (all[i], all[other]) = (all[other], all[i]);
        }

        return all;
    }

    public override string ToString() => $"[{string.Join(", ", row)}]";

    private int Take() => _next < row.Length ? row[_next++] : 0;

    /// <summary>Rows for the properties of a class: <c>[Properties(Arbitrary = [typeof(Draws.Rows)])]</c>.</summary>
    public static class Rows
    {
        /// <summary>Rows of any length.</summary>
        public static Arbitrary<Draws> Any() => Arb.From(
            Gen.Choose(0, Levels - 1).ArrayOf(Longest).Select(row => new Draws(row)),
            draws => Simpler(draws).Select(row => new Draws(row)));

        // Shorter by a half first, then without one of its pieces, then with one number halved.
        private static IEnumerable<int[]> Simpler(Draws draws)
        {
            int[] row = draws.Row;
            for (int piece = row.Length / 2; piece > 0; piece /= 2)
            {
                yield return row[..^piece];
                for (int from = 0; from + piece < row.Length; from += piece)
                {
                    yield return [.. row[..from], .. row[(from + piece)..]];
                }
            }

            for (int i = 0; i < row.Length; i++)
            {
                foreach (int smaller in new[] { 0, row[i] / 2, row[i] - 1 }.Where(value => value >= 0 && value < row[i]).Distinct())
                {
                    yield return [.. row[..i], smaller, .. row[(i + 1)..]];
                }
            }
        }
    }

    // What was taken of the row: numbers behind it made no difference to the case that failed.
    private int[] Row => _next > 0 ? row[..Math.Min(_next, row.Length)] : row;
}
