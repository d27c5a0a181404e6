using ShellForge.Board.Profiles;

namespace ShellForge.Coupons.Answers;

/// <summary>What the other coupons say: those of this file, and what was measured before where this file is silent.</summary>
/// <param name="Now">Values of this file with the kind of coupon that each comes from, by key.</param>
/// <param name="Before">What was measured before; null for nothing.</param>
public sealed record MeasuredSoFar(IReadOnlyDictionary<string, (double Value, string Kind)> Now, PairingProfile? Before)
{
    /// <summary>The value of a key; null where it was never measured.</summary>
    public double? Of(string key) => Now.TryGetValue(key, out (double Value, string Kind) now) ? now.Value
        : Earlier(key) is { } before ? before.Value : null;

    /// <summary>A contradiction with what to do about it: both coupons are tried again, or the older one is printed anew.</summary>
    /// <param name="key">The other coupon's value.</param>
    /// <param name="what">What can't be true together.</param>
    public string Told(string key, string what) => Now.TryGetValue(key, out (double Value, string Kind) now)
        ? $"{what}: try both this and {now.Kind} again"
        : $"{what} (the other value: {Earlier(key)?.Source}): try this again, or print that coupon again";

    private Sourced? Earlier(string key) =>
        Before is null ? null
        : PairingSize.Find(key)?.Of(Before) is { IsMeasured: true } value ? value
        : null;
}
