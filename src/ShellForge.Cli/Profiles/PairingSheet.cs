using ShellForge.Board.Profiles;

namespace ShellForge.Cli.Profiles;

/// <summary>What was measured of a printer with a filament, as a sheet.</summary>
internal static class PairingSheet
{
    public static ProfileSheet Of(PairingProfile p)
    {
        ProfileLines lines = new ProfileLines()
            .Word("printer", p.Printer)
            .Word("filament", p.Filament)
            .Length("outer-allowance", p.OuterAllowance)
            .Length("hole-allowance", p.HoleAllowance)
            .Length("slot-allowance", p.SlotAllowance)
            .Length("lip-fit", p.LipFit)
            .Length("slot-fit", p.SlotFit)
            .Length("moving-fit", p.MovingFit)
            .Length("accuracy", p.Accuracy)
            .Number("shrinkage", p.Shrinkage, "")
            .Number("shrinkage-spread", p.ShrinkageSpread, "");
        foreach ((string insert, Sourced hole) in p.InsertHoles)
        {
            lines.Length($"insert-holes.{insert}", hole);
        }

        foreach ((string coupon, string raw) in p.Readings)
        {
            lines.Word($"readings.{coupon}", raw);
        }

        return lines.On("pairings", p.Name);
    }
}
