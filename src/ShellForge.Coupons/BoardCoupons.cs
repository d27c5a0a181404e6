using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons;

/// <summary>A coupon that a housing depends on.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Wish">What it is drawn for.</param>
/// <param name="Why">Why the housing depends on it, in a few words.</param>
public sealed record BoardCoupon(CouponKind Kind, CouponWish Wish, string Why);

/// <summary>The coupons that a housing depends on: kinds that say nothing of it are left out.</summary>
public static class BoardCoupons
{
    /// <summary>The coupons, in the order in which a new printer is best measured.</summary>
    /// <param name="plan">The housing.</param>
    /// <param name="wish">Printer and filament of its shell; an insert where the user named one, not the housing's.</param>
    /// <param name="library">Profiles as they are, with what was measured before.</param>
    public static ImmutableArray<BoardCoupon> Of(HousingPlan plan, CouponWish wish, ProfileLibrary library)
    {
        var coupons = ImmutableArray.CreateBuilder<BoardCoupon>();
        foreach (CouponKind kind in CouponKinds.All)
        {
            if (kind.Matters(plan) is not { } why)
            {
                continue;
            }

            FilamentProfile own = kind.FilamentOf(plan);
            CouponWish of = own.Name == plan.Source.Print.Shell.Name ? wish
                : wish with { Filament = CouponWish.Measured(library, wish.Printer, library.Filaments.Find(own.Name) ?? own) };
            InsertProfile[] inserts = kind.NeedsInsert ? Inserts(plan, wish, library) : [];
            coupons.AddRange(inserts.Length > 1
                ? inserts.Select(insert => new BoardCoupon(
                    kind, of with { Insert = insert, AmongOthers = true }, $"screws go into inserts {insert.Name}"))
                : [new BoardCoupon(kind, of with { Insert = inserts.FirstOrDefault() ?? wish.Insert }, why)]);
        }

        return coupons.ToImmutable();
    }

    // As their profiles say: the steps lie round what was never measured, and the answers are read with the same profile.
    private static InsertProfile[] Inserts(HousingPlan plan, CouponWish wish, ProfileLibrary library) => wish.Insert is { } own
        ? [own]
        :
        [
            .. plan.Bosses.Select(boss => boss.Hole?.Insert).OfType<InsertProfile>().DistinctBy(insert => insert.Name)
                .Select(insert => library.Inserts.Find(insert.Name) ?? insert),
        ];
}
