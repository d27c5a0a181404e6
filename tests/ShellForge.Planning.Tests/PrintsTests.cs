using ShellForge.Planning.Plan;
using ShellForge.Planning.Prints;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public class PrintsTests
{
    private static HousingPlan Plan(WrittenBoard board) => HousingPlanner.Plan(board.Read());

    private static PartPrint PrintOf(HousingPlan plan, string part) => plan.Parts.Single(each => each.Name == part).Print;

    [Theory]
    [InlineData("fdm-0.4", PartNames.Diffuser)]
    [InlineData("fdm-0.4-multi-filament", PartNames.Diffuser)]
    public void What_light_passes_is_solid_and_the_rest_has_the_infill_of_the_printer(string printer, string lit)
    {
        HousingPlan plan = Plan(new WrittenBoard { Print = $"{{printer: {printer}, shell: petg-black, diffuser: petg-white}}" });

        Assert.Equal(1, PrintOf(plan, lit).Infill);
        Assert.All(plan.Parts.Where(part => part.Name != lit), part => Assert.Equal(0.2, part.Print.Infill));
        Assert.Contains(plan.Decisions, decision => decision.Path == $"parts.{lit}.infill" && decision.Value == "100 %");
    }

    [Fact]
    public void A_cover_that_is_its_own_diffuser_is_solid()
    {
        HousingPlan plan = Plan(new WrittenBoard { Print = "{printer: fdm-0.4, shell: petg-white, diffuser: petg-white}" });

        Assert.Equal(1, PrintOf(plan, PartNames.Cover).Infill);
        Assert.Equal(0.2, PrintOf(plan, PartNames.Tub).Infill);
    }

    [Theory]
    [InlineData("petg-white", 0)]
    [InlineData("petg-natural", 2)]
    public void The_lines_of_a_clear_diffuser_are_laid_crosswise(string filament, int directions)
    {
        HousingPlan plan = Plan(new WrittenBoard { Print = $"{{printer: fdm-0.4, shell: petg-black, diffuser: {filament}}}" });

        Assert.Equal(directions, PrintOf(plan, PartNames.Diffuser).FillAngles.Length);
        Assert.Equal(directions > 0, plan.Decisions.Any(decision => decision.Path == "parts.diffuser.fill-angles"));
    }

    [Fact]
    public void A_post_is_solid_where_its_lines_leave_a_core_below_the_insert()
    {
        HousingPlan plan = Plan(new WrittenBoard { Parts = ["{ref: C1, size: [6, 6, 12], side: bottom, at: [0, 0]}"] });
        BossPlan[] posts = [.. plan.Bosses.Where(boss => boss.Hole is not null)];

        SolidPlace[] solid = [.. PrintOf(plan, PartNames.Tub).Solid];
        Assert.Equal(posts.Select(post => (post.At, post.Diameter, plan.Stack.FloorTop, post.Top)),
            solid.Select(place => (place.At, place.Diameter, place.Bottom, place.Top)));
        Assert.Equal(["the boss of hole 1", "the boss of hole 2", "the boss of hole 3", "the boss of hole 4"],
            solid.Select(place => place.Name));
    }

    [Fact]
    public void A_post_whose_lines_meet_in_its_middle_needs_nothing()
    {
        WrittenBoard board = new() { Parts = ["{ref: C1, size: [6, 6, 12], side: bottom, at: [0, 0]}"] };
        Assert.NotEmpty(PrintOf(Plan(board), PartNames.Tub).Solid);

        var file = board.Read();
        var motion = file.Print.Printer.Motion;
        HousingPlan many = HousingPlanner.Plan(file with
        {
            Print = file.Print with
            {
                Printer = file.Print.Printer with { Motion = motion with { Perimeters = motion.Perimeters with { Value = 10 } } },
            },
        });

        Assert.Empty(PrintOf(many, PartNames.Tub).Solid);
        Assert.Equal(10, PrintOf(many, PartNames.Tub).Perimeters);
    }

    [Fact]
    public void The_boss_of_a_tripod_insert_is_among_them()
    {
        HousingPlan plan = Plan(new WrittenBoard
        {
            Holes = [],
            Mount = "tripod",
            Parts = ["{ref: C1, size: [6, 6, 20], side: bottom, at: [20, 0]}"],
        });
        var mount = Assert.IsType<TripodMountPlan>(plan.Mount);

        SolidPlace boss = Assert.Single(
            PrintOf(plan, PartNames.Tub).Solid, place => place.Name.Contains("tripod", StringComparison.Ordinal));
        Assert.Equal((mount.At, mount.BossDiameter), (boss.At, boss.Diameter));
    }
}
