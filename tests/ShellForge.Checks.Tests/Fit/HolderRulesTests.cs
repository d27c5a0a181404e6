using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Holding;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Fit;

public sealed class HolderRulesTests
{
    private static readonly WrittenBoard Bare = new() { Holes = [] };

    [Fact]
    public void A_ring_made_for_a_larger_board_lets_a_smaller_one_slip_out_and_its_own_not()
    {
        HousingUnderCheck made = BuiltHousings.Of((Bare with { Housing = ["hold: clamp"] }).Read());
        Assert.Empty(new RimSlipsOut().Check(made));

        // 0.4 mm less all round: so much less lies under the ring, and so much more is the gap to the wall.
        HousingUnderCheck loose = made with { Board = (Bare with { Outline = "{disc: 79.2}", Housing = ["hold: clamp"] }).Read() };
        Finding finding = Assert.Single(new RimSlipsOut().Check(loose));
        Assert.Equal(Severity.Stop, finding.Severity);
        Assert.InRange(finding.Measured!.Value, -0.25, -0.13);
        Assert.Empty(MessageStyle.Faults(finding.Message, finding.Remedy));
    }

    [Fact]
    public void Clips_made_for_one_filament_are_too_stiff_in_another()
    {
        BoardFile board = (Bare with { Housing = ["hold: clips"] }).Read();
        HousingUnderCheck made = BuiltHousings.Of(board);
        Assert.Empty(new ClipOverstrained().Check(made));
        Assert.Empty(new RimSlipsOut().Check(made));

        BoardFile brittle = (Bare with
        {
            Housing = ["hold: clips"],
            Print = "{printer: fdm-0.4, shell: pla-black, diffuser: pla-white}",
        }).Read();
        Finding[] found = [.. new ClipOverstrained().Check(made with { Board = brittle })];
        Assert.NotEmpty(found);
        Assert.All(found, finding => Assert.Equal(Severity.Stop, finding.Severity));
        Assert.All(found, finding => Assert.InRange(finding.Measured!.Value, 0.7, 0.85));
        Assert.All(found, finding => Assert.Empty(MessageStyle.Faults(finding.Message, finding.Remedy)));
    }
}
