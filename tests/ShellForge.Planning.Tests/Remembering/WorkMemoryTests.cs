using System.Collections.Concurrent;
using System.Collections.Immutable;
using ShellForge.Planning.Remembering;

namespace ShellForge.Planning.Tests.Remembering;

public class WorkMemoryTests
{
    // A result weighs what it says and a thousand bytes for its entry.
    private const long Entry = 1000;

    private sealed record Named(string Name);

    private sealed record AlsoNamed(string Name);

    private static object Remembered(WorkMemory memory, string name, long bytes = 0) =>
        memory.Of(new Named(name), () => new object(), _ => bytes);

    [Fact]
    public void What_is_asked_for_again_is_the_same_object_and_is_counted_as_found()
    {
        var memory = new WorkMemory();
        object first = Remembered(memory, "a");

        Assert.Same(first, Remembered(memory, "a"));
        Assert.NotSame(first, Remembered(memory, "b"));
        Assert.NotSame(first, memory.Of(new AlsoNamed("a"), () => new object(), _ => 0));
        Assert.Equal(new WorkCount(2, 1), memory.Counts["Named"]);
        Assert.Equal(new WorkCount(1, 0), memory.Counts["AlsoNamed"]);
    }

    [Fact]
    public void Threads_that_ask_at_once_get_one_result_and_the_bound_holds()
    {
        var memory = new WorkMemory(5 * Entry);
        var seen = new ConcurrentDictionary<int, ConcurrentBag<object>>();
        Parallel.For(0, 400, new ParallelOptions { MaxDegreeOfParallelism = 8 }, i =>
        {
            seen.GetOrAdd(i / 40, _ => []).Add(Remembered(memory, $"{i / 40}"));
            Assert.InRange(memory.Bytes, 0, 5 * Entry);
        });

        Assert.Equal(10, seen.Count);
        Assert.InRange(memory.Counts["Named"].Found, 300, 390);
    }

    [Fact]
    public void What_was_not_asked_for_the_longest_goes_first()
    {
        var memory = new WorkMemory(2 * Entry);
        object one = Remembered(memory, "one");
        object two = Remembered(memory, "two");
        Assert.Same(one, Remembered(memory, "one"));
        Remembered(memory, "three");

        Assert.Equal(2 * Entry, memory.Bytes);
        Assert.Same(one, Remembered(memory, "one"));
        Assert.NotSame(two, Remembered(memory, "two"));
    }

    [Fact]
    public void A_result_larger_than_the_bound_stays_until_the_next_comes()
    {
        var memory = new WorkMemory(2 * Entry);
        object large = Remembered(memory, "large", 10 * Entry);
        Assert.Same(large, Remembered(memory, "large"));
        Remembered(memory, "small");

        Assert.Equal(Entry, memory.Bytes);
        Assert.NotSame(large, Remembered(memory, "large"));
    }

    [Fact]
    public void Work_that_failed_is_not_kept()
    {
        var memory = new WorkMemory();

        Assert.Throws<InvalidOperationException>(
            () => memory.Of(new Named("a"), object () => throw new InvalidOperationException(), _ => 0));
        Assert.Equal(0, memory.Bytes);
        Assert.NotNull(Remembered(memory, "a"));
    }

    [Fact]
    public void Lists_compare_by_what_they_hold()
    {
        Listed<int> one = new([1, 2]);

        Assert.Equal(one, new Listed<int>([1, 2]));
        Assert.Equal(one.GetHashCode(), new Listed<int>([1, 2]).GetHashCode());
        Assert.NotEqual(one, new Listed<int>([2, 1]));
        Assert.NotEqual(one, new Listed<int>([1]));
        Assert.Equal(default, new Listed<int>(ImmutableArray<int>.Empty));
    }
}
