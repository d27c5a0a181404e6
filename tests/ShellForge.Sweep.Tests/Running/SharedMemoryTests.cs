using System.Security.Cryptography;
using ShellForge.Planning.Remembering;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;

namespace ShellForge.Sweep.Tests.Running;

public class SharedMemoryTests
{
    private static string[] Made(SweepOrder order, WorkMemory? memory)
    {
        var maker = new VariantMaker(order, memory);
        Func<Variant, string> keys = order.Keys();
        Variant[] variants = [.. VariantList.Of(order)];
        var made = new MadeVariant[variants.Length];
        Parallel.For(0, made.Length, new ParallelOptions { MaxDegreeOfParallelism = 3 },
            i => made[i] = maker.Make(variants[i], keys(variants[i]), CancellationToken.None));
        return [.. made.SelectMany(variant => variant.Files.Select(file =>
            $"{variant.Row.Folder}/{file.Name} {Convert.ToHexStringLower(SHA256.HashData(file.Content))}"))];
    }

    [Theory]
    [InlineData("power.brightness: [0.1, 0.2], print.shell: [petg-black, petg-white]", "names", 8)]
    [InlineData("power.brightness: [0.1, 0.2]", "inside", 1)]
    public void Variants_that_share_parts_have_the_bytes_of_variants_made_alone(string axes, string mark, int atLeastShared)
    {
        // No part knows the brightness; the filament changes what the same part weighs.
        SweepOrder order = Orders.Of($"vary: {{{axes}}}\nmark: {mark}");
        var memory = new WorkMemory();

        string[] together = Made(order, memory);

        Assert.Equal(VariantList.Of(order).Count(), together.Count(line => line.Contains("/report.json ", StringComparison.Ordinal)));
        Assert.Equal(Made(order, null), together);
        Assert.InRange(memory.Counts["SolidKey"].Found, atLeastShared, 40);
    }
}
