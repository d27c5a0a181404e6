using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public class DiffuserFitTests
{
    private static HousingPlan Plan(string printer, string diffuser = "{thickness: 0.8}", string white = "petg-white") =>
        HousingPlanner.Plan(
            new WrittenBoard { Diffuser = diffuser, Print = $"{{printer: {printer}, shell: petg-black, diffuser: {white}}}" }.Read());

    [Theory]
    [InlineData("fdm-0.4", "{thickness: 0.8}", DiffuserFit.DropIn)]
    [InlineData("fdm-0.4-multi-filament", "{thickness: 0.8}", DiffuserFit.PrintedIn)]
    [InlineData("fdm-0.4", "{fit: printed-in}", DiffuserFit.PrintedIn)]
    [InlineData("fdm-0.4-multi-filament", "{fit: drop-in}", DiffuserFit.DropIn)]
    [InlineData("fdm-0.4", "{sheet: 2}", DiffuserFit.CutSheet)]
    public void A_diffuser_is_printed_in_where_the_printer_changes_filaments_or_it_is_asked_for(string printer, string diffuser,
        DiffuserFit fit) =>
        Assert.Equal(fit, Plan(printer, diffuser).Diffuser.Fit);

    [Fact]
    public void Plastics_that_do_not_fuse_are_not_printed_into_one_another_on_a_wish()
    {
        HousingPlan plan = Plan("fdm-0.4-multi-filament", "{fit: printed-in}", "pla-white");

        Assert.Equal(DiffuserFit.DropIn, plan.Diffuser.Fit);
        Assert.Contains(plan.Refusals, refusal => refusal.Rule == "unlike-plastics-fused");
    }

    [Fact]
    public void Of_one_filament_nothing_is_printed_in_and_the_wish_is_told()
    {
        HousingPlan plan = Plan("fdm-0.4-multi-filament", "{fit: printed-in}", "petg-black");

        Assert.Equal(DiffuserFit.OneWithCover, plan.Diffuser.Fit);
        Assert.Equal("diffuser.fit", Assert.Single(plan.Refusals, refusal => refusal.Rule == "diffuser-one-with-cover").Subject);
    }

    [Fact]
    public void A_band_in_the_wall_is_printed_in_and_a_wish_for_a_part_of_its_own_is_told()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = "{disc: 60}",
            Holes = ["{circle: 40, count: 4, from: 45, diameter: 2.2, keep-out: 5.0}"],
            Pixels = "{package: 4020-side, circle: 54, count: 16, from: 90, direction: cw, facing: out}",
            Insert = "m2x3-od3.6",
            Light = "{through: wall}",
            Diffuser = "{fit: drop-in}",
        }.Read());

        Assert.DoesNotContain(plan.Parts, part => part.Name == PartNames.Diffuser && part.PrintedWith is null);
        Assert.Contains(plan.Refusals, refusal => refusal.Rule == "band-not-drop-in");
    }
}
