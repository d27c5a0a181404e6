using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using ShellForge.Formats.Soup;
using ShellForge.Formats.Stl;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Coupons.Tests;

/// <summary>Coupons as tests draw them, and what was written of them.</summary>
internal static class Samples
{
    private static readonly ConcurrentDictionary<(string Kind, CouponWish Wish), Lazy<MadeCoupon>> Made = new();
    private static readonly ConcurrentDictionary<(string Kind, CouponWish Wish), Lazy<Coupon>> Drawings = new();
    private static readonly ConditionalWeakTable<MadePiece, Mesh> Read = [];

    public static CouponWish Wish(string printer = "fdm-0.4", string filament = "petg-black", string insert = "m2.5x4-od4.6") =>
        new(WrittenBoard.Shipped.Printers.Find(printer)!, WrittenBoard.Shipped.Filaments.Find(filament)!)
        {
            Insert = WrittenBoard.Shipped.Inserts.Find(insert)!,
            Plug = WrittenBoard.Shipped.Packages.Find("usb-c-receptacle")!,
        };

    /// <summary>The coupon of a wish as it is drawn, drawn once for all tests.</summary>
    public static Coupon Drawn(string kind, CouponWish wish) => Drawings.GetOrAdd((kind, wish),
        key => new Lazy<Coupon>(() => CouponKinds.Find(key.Kind)!.Draw(key.Wish))).Value;

    /// <summary>The coupon of a wish, made once for all tests.</summary>
    public static MadeCoupon Make(string kind, CouponWish? wish = null) => Made.GetOrAdd((kind, wish ?? Wish()),
        key => new Lazy<MadeCoupon>(() => CouponMaker.Make(Drawn(key.Kind, key.Wish)))).Value;

    public static IEnumerable<object[]> KindsAndPrinters() =>
        from kind in CouponKinds.All
        from printer in new[] { "fdm-0.4", "fdm-0.6" }
        select new object[] { kind.Name, printer };

    /// <summary>The mesh as its file gives it back, audited; read once for all tests.</summary>
    public static Mesh Written(MadePiece piece) => Read.GetValue(piece, ReadBack);

    private static Mesh ReadBack(MadePiece piece)
    {
        using var stream = new MemoryStream();
        StlWriter.Write(stream, piece.Mesh, "ShellForge test");
        SoupFile soup = StlReader.Read(stream.ToArray());
        Assert.Empty(soup.Faults);
        Mesh mesh = Assert.IsType<Mesh>(soup.Bodies.Single().Triangles.ToLatticeMesh());
        AuditReport audit = MeshAudit.Run(mesh);
        Assert.True(audit.IsClean, audit.ToString());
        return mesh;
    }
}
