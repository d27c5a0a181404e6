using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Draft;

/// <summary>What a decision function gives back: the value, why it is so, and the wishes it could not meet.</summary>
/// <param name="Value">What was decided.</param>
/// <param name="Decisions">Each number with its reason.</param>
/// <param name="Refusals">Wishes that cannot be met.</param>
internal sealed record Decided<T>(T Value, ImmutableArray<Decision> Decisions, ImmutableArray<PlanRefusal> Refusals);

/// <summary>Collects reasons and refusals inside one decision function; what leaves is frozen by <see cref="Of{T}"/>.</summary>
internal sealed class Reasons
{
    private readonly ImmutableArray<Decision>.Builder _decisions = ImmutableArray.CreateBuilder<Decision>();
    private readonly ImmutableArray<PlanRefusal>.Builder _refusals = ImmutableArray.CreateBuilder<PlanRefusal>();

    /// <summary>What <see cref="Decision.From"/> says of a number that the plan's own rule gives.</summary>
    public const string Rule = "rule";

    /// <summary>A length in mm as text: at most three decimals.</summary>
    public static string Mm(double length) => length.ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>
    /// A length of a profile with what it was measured on: "lip fit 0.3 (measured 2026-11-30, coupon lid-fit)"; null where it is typical.
    /// </summary>
    public static string? Measured(string what, Sourced length) => length.IsMeasured ? $"{what} {Mm(length)} ({length.Source})" : null;

    /// <summary>
    /// Where a value stood in the board file ("tide.yaml:12:7"), or the rule's word where it was not given. A file whose lines don't
    /// matter, as a plan's, is told by its name.
    /// </summary>
    public static string Origin(BoardFile file, string path, string otherwise = Rule) =>
        file.Places.TryGetValue(path, out FilePlace place)
            ? place.Line == 0 ? place.File : string.Create(CultureInfo.InvariantCulture, $"{place.File}:{place.Line}:{place.Column}")
            : otherwise;

    /// <summary>Notes a length; gives it back so that a decision reads as one statement.</summary>
    public double Length(string path, double length, string from, string why)
    {
        _decisions.Add(new Decision(path, Mm(length), from, why));
        return length;
    }

    /// <summary>Notes a choice or a count.</summary>
    public void Choice(string path, string value, string from, string why) =>
        _decisions.Add(new Decision(path, value, from, why));

    /// <summary>Notes a wish that cannot be met.</summary>
    public void Refuse(
        string rule, string subject, string message, double measured, double limit, string unit, Point3 at, string remedy) =>
        _refusals.Add(new PlanRefusal(rule, subject, message, measured, limit, unit, at, remedy));

    /// <summary>Notes a wish that cannot be met, where something else was planned that does the same work.</summary>
    public void Replace(
        string rule, string subject, string message, double measured, double limit, string unit, Point3 at, string remedy) =>
        _refusals.Add(new PlanRefusal(rule, subject, message, measured, limit, unit, at, remedy, IsReplaced: true));

    /// <summary>Notes what of a wish is not there, where most of it is.</summary>
    public void Note(PlanRefusal lessened) => _refusals.Add(lessened with { IsReplaced = true, IsNoted = true });

    /// <summary>Takes over what another decision found and gives its value.</summary>
    public T Take<T>(Decided<T> other)
    {
        _decisions.AddRange(other.Decisions);
        _refusals.AddRange(other.Refusals);
        return other.Value;
    }

    /// <summary>The value with all that was noted so far.</summary>
    public Decided<T> Of<T>(T value) => new(value, _decisions.ToImmutable(), _refusals.ToImmutable());
}
