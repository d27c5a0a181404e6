using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Coupons;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Measuring;

/// <summary>What <c>coupon --json</c> prints.</summary>
internal sealed record CouponsDocument(
    string Format,
    int Exit,
    [property: Description("Folder that was written into.")] string Folder,
    ImmutableArray<CouponDocument> Coupons,
    [property: Description("Names of the files.")] ImmutableArray<string> Files)
{
    /// <summary>What <c>format</c> says.</summary>
    public const string FormatName = "shellforge-coupons/1";

    public static byte[] Bytes(string folder, IEnumerable<MadeCoupon> coupons, IEnumerable<OutputFile> files) => JsonText.Bytes(
        new CouponsDocument(FormatName, (int)ExitCode.Done, folder, [.. coupons.Select(CouponDocument.Of)],
            [.. files.Select(file => file.Name)]),
        CouponsContext.Default.CouponsDocument);

    public static string Schema() => DocumentSchema.Json(CouponsContext.Default.CouponsDocument, FormatName);
}

/// <summary>A coupon.</summary>
internal sealed record CouponDocument(
    string Kind,
    [property: Description("What one learns from it.")] string Tells,
    [property: Description("Time on the printer, heating included.")] double Minutes,
    double Grams)
{
    public static CouponDocument Of(MadeCoupon made) =>
        new(made.Coupon.Kind.Name, made.Coupon.Kind.Tells, Math.Round(made.Estimate.Minutes, 1), Math.Round(made.Estimate.Grams, 2));
}

/// <summary>How they are written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(CouponsDocument))]
internal sealed partial class CouponsContext : JsonSerializerContext;
