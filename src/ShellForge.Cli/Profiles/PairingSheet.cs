using ShellForge.Board.Profiles;

namespace ShellForge.Cli.Profiles;

/// <summary>What was measured of a printer with a filament, as a sheet.</summary>
internal static class PairingSheet
{
    public static ProfileSheet Of(PairingProfile p)
    {
        ProfileLines lines = new ProfileLines().Word("printer", p.Printer).Word("filament", p.Filament);
        foreach (PairingSize size in PairingSize.All)
        {
            lines.Number(size.Key, size.Of(p), size.Unit);
        }

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
