using System.Collections.Immutable;
using ShellForge.Planning;
using ShellForge.Testing;

namespace ShellForge.Coupons.Tests;

/// <summary>The coupons that a housing depends on, and none beside them.</summary>
public sealed class BoardCouponsTests
{
    private const string Port = "{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1}";

    [Theory]
    [InlineData("plain", "size-bar lid-fit slot-fit insert-holes snap-rings diffuser-steps",
        "battery-bays magnet-pockets plug-openings layer-fit")]
    [InlineData("twist on magnets", "size-bar lid-fit layer-fit magnet-pockets overhangs", "snap-rings battery-bays plug-openings")]
    [InlineData("port", "plug-openings bridges overhangs", "battery-bays magnet-pockets")]
    [InlineData("battery", "battery-bays", "magnet-pockets layer-fit")]
    [InlineData("glued, cut sheet", "size-bar lid-fit", "snap-rings layer-fit diffuser-steps")]
    [InlineData("cells", "inlay-fit thin-walls", "battery-bays")]
    public void A_housing_gets_what_it_depends_on_and_nothing_else(string board, string picked, string left)
    {
        ImmutableArray<BoardCoupon> coupons = Of(Board(board));
        string[] names = [.. coupons.Select(coupon => coupon.Kind.Name)];
        Assert.All(picked.Split(' '), name => Assert.Contains(name, names));
        Assert.All(left.Split(' '), name => Assert.DoesNotContain(name, names));
        Assert.All(coupons, coupon => Assert.True(coupon.Why.Length > 8, coupon.Kind.Name));

        // Each can be drawn as it is asked for, in the filament that it tells of.
        Assert.All(coupons, coupon => Assert.Null(coupon.Kind.Lacks(coupon.Wish)));
        Assert.All(coupons, coupon => Assert.Equal(
            coupon.Kind.Name == "diffuser-steps" ? "petg-white" : "petg-black", coupon.Wish.Filament.Name));
    }

    [Fact]
    public void Every_kind_is_picked_for_some_housing() => Assert.Empty(CouponKinds.All.Select(kind => kind.Name).Except(
        new[] { "plain", "twist on magnets", "port", "battery", "cells" }
            .SelectMany(board => Of(Board(board)).Select(coupon => coupon.Kind.Name))));

    [Fact]
    public void Inserts_of_two_sizes_get_a_coupon_each_with_names_of_their_own()
    {
        var board = new WrittenBoard
        {
            Holes =
            [
                "{circle: 70, count: 3, from: 45, diameter: 2.7}",
                "{circle: 60, count: 1, from: 0, diameter: 2.2, insert: m2x3-od3.6, screw: pan}",
            ],
        };
        BoardCoupon[] inserts = [.. Of(board).Where(coupon => coupon.Kind.NeedsInsert)];
        Assert.Equal(["m2.5x4-od4.6", "m2x3-od3.6"], inserts.Select(coupon => coupon.Wish.Insert!.Name).Order(StringComparer.Ordinal));
        Assert.Equal(2, inserts.Select(coupon => Samples.Drawn("insert-holes", coupon.Wish).Pieces[0].Name).Distinct().Count());
    }

    private static WrittenBoard Board(string what) => what switch
    {
        "twist on magnets" => new WrittenBoard { Outline = "{disc: 90}", Closure = "twist", Mount = "magnets" },
        "port" => new WrittenBoard { Outline = "{disc: 90}", Parts = [Port], Cable = "{part: J1}" },
        "battery" => new WrittenBoard { Outline = "{disc: 90}", Housing = ["battery: 14500"] },
        "glued, cut sheet" => new WrittenBoard { Closure = "glue", Diffuser = "{sheet: 1, distance: auto}" },
        "cells" => new WrittenBoard { Light = "{through: front, look: pixels}" },
        _ => new WrittenBoard(),
    };

    private static ImmutableArray<BoardCoupon> Of(WrittenBoard board) => BoardCoupons.Of(
        HousingPlanner.Plan(board.Read()), Samples.Wish() with { Insert = null }, WrittenBoard.Shipped);
}
