using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Coupons.Answers;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons;

/// <summary>
/// A kind of coupon. It answers for itself: what it is drawn for, how it looks, what is asked of its user, what the answers mean and
/// whether they can be true together.
/// </summary>
public abstract class CouponKind
{
    /// <summary>Its name on the command line and in files.</summary>
    public abstract string Name { get; }

    /// <summary>What one learns from it, in a few words.</summary>
    public abstract string Tells { get; }

    /// <summary>Whether it is drawn for the insert in the drawer.</summary>
    public virtual bool NeedsInsert => false;

    /// <summary>Whether it is drawn for a plug.</summary>
    public virtual bool NeedsPlug => false;

    /// <summary>What is missing before it can be drawn, in a sentence; null for nothing.</summary>
    public virtual string? Lacks(CouponWish wish) => null;

    /// <summary>Why a housing depends on what it tells, in a few words; null where it does not.</summary>
    public abstract string? Matters(HousingPlan plan);

    /// <summary>Of which filament of a housing it is printed.</summary>
    public virtual FilamentProfile FilamentOf(HousingPlan plan) => plan.Source.Print.Shell;

    /// <summary>Draws it.</summary>
    public abstract Coupon Draw(CouponWish wish);

    /// <summary>What its user is asked, in the order of asking.</summary>
    public abstract ImmutableArray<Question> Questions(CouponWish wish);

    /// <summary>What the answers mean, or what is wrong with them. Every question has an answer by then.</summary>
    public abstract Reading Read(CouponWish wish, AnswerSheet answers);

    /// <summary>What of it can't be true together with what other coupons say; each pair of kinds is told by one of the two.</summary>
    /// <param name="wish">What it was drawn for.</param>
    /// <param name="answers">Its answers.</param>
    /// <param name="own">What they mean.</param>
    /// <param name="all">What the other coupons say.</param>
    public virtual IEnumerable<AnswerFault> Against(CouponWish wish, AnswerSheet answers, Reading own, MeasuredSoFar all) => [];
}
