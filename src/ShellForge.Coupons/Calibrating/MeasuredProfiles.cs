using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ShellForge.Board.Profiles;
using ShellForge.Coupons.Answers;
using ShellForge.Output.Files;

namespace ShellForge.Coupons.Calibrating;

/// <summary>
/// The user's profiles with what was measured, as files: one of the printer with each filament, one of each filament. What was measured
/// before and is not measured anew stays as it was.
/// </summary>
public static class MeasuredProfiles
{
    private const string Head =
        "# What was measured on coupons; `shellforge calibrate` writes this file anew. Values win over shipped profiles of the same "
            + "name.\nformat: shellforge-profiles/1\n";

    /// <summary>How the source of a value reads: "measured 2026-11-30, coupon lid-fit".</summary>
    public static string Source(DateOnly date, CouponKind kind) =>
        Sourced.MeasuredWord + date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + ", coupon " + kind.Name;

    /// <summary>The files that calibration writes.</summary>
    /// <param name="calibration">What was found.</param>
    /// <param name="printer">Name of the printer.</param>
    /// <param name="library">The profiles as they are, with what was measured before.</param>
    /// <param name="date">The day of the measurement.</param>
    public static ImmutableArray<OutputFile> Files(Calibration calibration, string printer, ProfileLibrary library, DateOnly date) =>
    [
        .. calibration.Found.GroupBy(found => found.Wish.Filament.Name)
            .SelectMany(found => Files([.. found], printer, found.Key, library, date)),
    ];

    private static IEnumerable<OutputFile> Files(
        ImmutableArray<CouponFound> all, string printer, string filament, ProfileLibrary library, DateOnly date)
    {
        PairingProfile before = library.PairingOf(printer, filament)
            ?? new PairingProfile { Name = $"{printer}+{filament}", Printer = printer, Filament = filament };
        yield return new OutputFile(
            $"measured-{FileName(before.Name)}.yaml", Encoding.UTF8.GetBytes(PairingText(Merged(before, all, date))));

        ImmutableArray<(MeasuredValue Value, CouponKind Kind)> own =
            [.. all.SelectMany(
                found => found.Values.Where(value => value.Shelf == MeasuredShelf.Filament).Select(value => (value, found.Kind)))];
        if (!own.IsEmpty)
        {
            var text = new StringBuilder(Head);
            text.Append(CultureInfo.InvariantCulture, $"filaments:\n  {Quoted(filament)}:\n    like: {Quoted(filament)}\n");
            foreach ((MeasuredValue value, CouponKind kind) in own)
            {
                Line(text, 4, value.Key, new Sourced(value.Value, Source(date, kind)));
            }

            yield return new OutputFile($"measured-{FileName(filament)}.yaml", Encoding.UTF8.GetBytes(text.ToString()));
        }
    }

    private static PairingProfile Merged(PairingProfile before, ImmutableArray<CouponFound> all, DateOnly date)
    {
        PairingProfile after = before;
        foreach (CouponFound found in all)
        {
            foreach (MeasuredValue value in found.Values.Where(value => value.Shelf == MeasuredShelf.Pairing))
            {
                after = With(after, value, new Sourced(value.Value, Source(date, found.Kind)));
            }

            after = after with
            {
                Readings =
                [
                    .. after.Readings.Where(reading => reading.Coupon != found.Record),
                    (found.Record, $"{date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}: {found.Raw}"),
                ],
            };
        }

        return after;
    }

    private static PairingProfile With(PairingProfile pairing, MeasuredValue value, Sourced measured) => value.For is { } insert
        ? pairing with { InsertHoles = [.. pairing.InsertHoles.Where(hole => hole.Insert != insert), (insert, measured)] }
        : PairingSize.All.Single(size => size.Key == value.Key).With(pairing, measured);

    private static string PairingText(PairingProfile pairing)
    {
        var text = new StringBuilder(Head);
        text.Append(CultureInfo.InvariantCulture,
            $"pairings:\n  {Quoted(pairing.Name)}:\n    printer: {Quoted(pairing.Printer)}\n    filament: {Quoted(pairing.Filament)}\n");
        foreach (PairingSize size in PairingSize.All)
        {
            if (size.Of(pairing) is { } measured)
            {
                Line(text, 4, size.Key, measured);
            }
        }

        if (!pairing.InsertHoles.IsEmpty)
        {
            text.Append("    insert-holes:\n");
            foreach ((string insert, Sourced hole) in pairing.InsertHoles.OrderBy(each => each.Insert, StringComparer.Ordinal))
            {
                Line(text, 6, insert, hole);
            }
        }

        text.Append("    readings:\n");
        foreach ((string coupon, string raw) in pairing.Readings.OrderBy(each => each.Coupon, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"      {Quoted(coupon)}: {Quoted(raw)}\n");
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, int indent, string key, Sourced value) =>
        text.Append(' ', indent).Append(CultureInfo.InvariantCulture, $"{Quoted(key)}: [{value.Value:0.#####}, {Quoted(value.Source)}]\n");

    // Plain where no reader could take it for anything else.
    private static string Quoted(string text) =>
        text.Length > 0 && char.IsAsciiLetter(text[0])
            && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '+' or '_' or '/')
            ? text
            : "\"" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";

    /// <summary>A name as a file may be called: two that differ in a letter which no file's name should have are two files.</summary>
    /// <param name="name">The name.</param>
    public static string FileName(string name)
    {
        string plain = string.Concat(name.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '+' or '_' ? c : '-'));
        const int digestLetters = 6;
        return plain == name ? name
            : $"{plain}-{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(name)))[..digestLetters]}";
    }
}
