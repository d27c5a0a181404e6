using ShellForge.Board.Profiles;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class InsertTests
{
    /// <summary>Every shipped insert that pairs with a shipped screw.</summary>
    public static TheoryData<string> Inserts =>
        [.. WrittenBoard.Shipped.Inserts.All.Where(i => WrittenBoard.Shipped.Screws.All.Any(s => s.Thread == i.Thread))
            .Select(i => i.Name)];

    [Theory]
    [MemberData(nameof(Inserts))]
    public void Hole_boss_and_floor_hold_every_insert(string name)
    {
        InsertProfile insert = WrittenBoard.Shipped.Inserts.Find(name)!;
        HousingPlan plan = HousingPlanner.Plan(BoardFor(insert).Read());
        Assert.NotEmpty(plan.Bosses);
        Assert.All(plan.Bosses.Where(b => b.Hole is not null), boss =>
        {
            InsertHolePlan hole = boss.Hole!;
            Assert.True(hole.Diameter <= insert.OuterDiameter - 0.3 + 1e-9);
            Assert.True(hole.Diameter <= insert.HoleDiameter);
            Assert.True(hole.Depth >= insert.Length + 1 - 1e-9, "melt room");
            Assert.True(hole.PlasticBelow >= 1.2 - 1e-9, "plastic below");
            double wall = (boss.Diameter - hole.MouthDiameter) / 2;
            Assert.True(wall >= 1.6 && wall >= 0.4 * insert.OuterDiameter - 1e-9 && wall >= insert.WallThickness - 1e-9);
            Assert.Equal(insert.Tapered ? 0 : 0.3, hole.LeadIn);
        });
    }

    [Theory]
    [MemberData(nameof(Inserts))]
    public void Every_screw_engages_and_none_bottoms_out(string name)
    {
        foreach (double thickness in new[] { 0.8, 1.0, 1.6, 2.4 })
        {
            foreach (string closure in new[] { "snap", "screws" })
            {
                HousingPlan plan = HousingPlanner.Plan(
                    (BoardFor(WrittenBoard.Shipped.Inserts.Find(name)!) with { Thickness = thickness, Closure = closure }).Read());
                Assert.Equal(plan.Bosses.Count(b => b.Hole is not null), plan.Screws.Length);
                Assert.All(plan.Screws, screw =>
                {
                    Assert.Contains(screw.Length, screw.Screw.StockLengths);
                    Assert.True(screw.TipGap >= 0.5 - 1e-6, $"{name} {thickness} {closure} {screw.Name} tip {screw.TipGap}");
                    Assert.True(screw.Engagement >= screw.EngagementWanted - 1e-3
                        || screw.Screw.StockLengths.Where(length => length > screw.Length)
                            .All(length => screw.TipGap - (length - screw.Length) < 0.5),
                                $"{name} {thickness} {closure} {screw.Name} {screw.Engagement}");
                });
            }
        }
    }

    [Fact]
    public void The_printers_hole_allowance_is_not_added_to_a_chart_that_allows_for_it()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard().Read());
        PrinterProfile printer = plan.Source.Print.Printer;
        HousingPlan looser = HousingPlanner.Plan(plan.Source with
        {
            Print = plan.Source.Print with { Printer = printer with { HoleAllowance = new Sourced(0.4, "test") } },
        });
        Assert.Equal(plan.Bosses[0].Hole!.Diameter, looser.Bosses[0].Hole!.Diameter);
    }

    [Fact]
    public void A_chart_that_would_let_the_insert_spin_is_capped()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard().Read());
        InsertProfile loose = plan.Source.Housing.Insert! with { HoleDiameter = new Sourced(4.5, "a chart for another body") };
        HousingPlan capped = HousingPlanner.Plan(plan.Source with { Housing = plan.Source.Housing with { Insert = loose } });
        Assert.Equal(loose.OuterDiameter - 0.3, capped.Bosses[0].Hole!.Diameter, 9);
    }

    [Fact]
    public void Changing_only_the_insert_changes_bosses_holes_screws_and_shopping_together()
    {
        HousingPlan small = HousingPlanner.Plan(WrittenBoard.Sample("tide-lamp"));
        HousingPlan large = HousingPlanner.Plan(WrittenBoard.Sample("tide-lamp", "housing.insert=m3x5.7-od4.6"));
        Assert.All(small.Screws, s => Assert.Equal("M2.5", s.Screw.Thread));
        Assert.All(large.Screws, s => Assert.Equal("M3", s.Screw.Thread));
        Assert.All(large.Bosses, b => Assert.Equal("m3x5.7-od4.6", b.Hole!.Insert.Name));
        Assert.NotEqual(small.Bosses[0].Hole!.Depth, large.Bosses[0].Hole!.Depth);
        Assert.True(large.Stack.BelowBoard >= large.Bosses[0].Hole!.Depth + 1.2 - large.Stack.FloorTop);
        Assert.Contains(large.Shopping, i => i.Item.Contains("m3x5.7-od4.6", StringComparison.Ordinal) && i.Count == 4);
        Assert.Contains(large.Shopping, i => i.Item.StartsWith("screw M3 x ", StringComparison.Ordinal) && i.Count == 4);
        Assert.DoesNotContain(large.Shopping, i => i.Item.Contains("M2.5", StringComparison.Ordinal));

        // The board's holes of 2.7 do not pass M3: said, not hidden.
        Assert.Contains(large.Refusals, r => r.Rule == "screw-through-board-hole");
        Assert.DoesNotContain(small.Refusals, r => r.Rule == "screw-through-board-hole");
    }

    private static WrittenBoard BoardFor(InsertProfile insert)
    {
        double thread = WrittenBoard.Shipped.Screws.All.First(s => s.Thread == insert.Thread).ThreadDiameter;
        string hole = FormattableString.Invariant($"{{circle: 84, count: 4, from: 45, diameter: {thread + 0.2}}}");
        return new WrittenBoard
        {
            Outline = "{disc: 110}",
            Insert = insert.Name,
            Holes = [hole],
            Diffuser = "{thickness: 0.8, distance: 8}"
        };
    }
}
