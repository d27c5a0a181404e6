using System.Collections.Concurrent;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml;
using ShellForge.Coupons.Slices;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Housing;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Coupons.Tests.Slices;

/// <summary>The slice that is printed before a housing is the housing's own, and quick.</summary>
public sealed class FitSliceTests(ITestOutputHelper output)
{
    private static readonly ConcurrentDictionary<string, Lazy<(HousingPlan Plan, FitSlice Slice)>> Slices = new();

    [Theory]
    [InlineData("mooring-beacon")]
    [InlineData("tide-lamp")]
    [InlineData("dome-dial")]
    public void A_slice_is_one_sound_piece_each_and_what_stands_on_its_floor_is_the_tub(string sample)
    {
        (HousingPlan plan, FitSlice slice) = Cut(sample);
        Assert.All(slice.Pieces, piece => Assert.True(MeshAudit.Run(piece.Mesh).IsClean, piece.Name));
        Assert.All(slice.Pieces, piece => Assert.Equal(1, Measure.Shells(piece.Mesh)));
        Assert.All(slice.Pieces, piece => Assert.Equal(0, Measure.Bounds(piece.Mesh).Min.Z));

        // The housing's own tub, laid so that its parting line is level with the slice's, holds every part of it that is not floor.
        Mesh tub = PartMaker.Make(plan).Single(part => part.Name == PartNames.Tub).PrintMesh.Mesh;
        Mesh cut = slice.Pieces[0].Mesh;
        var where = FitSlicePlan.Of(plan);
        double lower = where.FloorZ - where.FloorThickness;
        int met = 0;
        foreach ((Mesh piece, double lowered) in new[] { (cut, lower), (slice.Pieces[1].Mesh, where.WallBottom - where.FloorThickness) })
        {
            for (double z = 1.05; z < Measure.Bounds(piece).Max.Z; z += 0.7)
            {
                Region section = Slicing.At(piece, z);
                Assert.True(section.Less(Slicing.At(tub, z + lowered).Offset(0.002)).Area < 0.01,
                    $"at {z:0.00} something stands in the slice that the tub does not have");
                met += section.IsEmpty ? 0 : 1;
            }
        }

        Assert.True(met > 10);

        // The strip of wall ends at the parting line, as the tub does.
        Assert.Equal(plan.Stack.PartingLine, Measure.Bounds(slice.Pieces[1].Mesh).Max.Z + where.WallBottom - where.FloorThickness, 0.001);

        // Every hole of a post is there in its full depth, closed below.
        double scale = plan.Parts.Single(part => part.Name == PartNames.Tub).ShrinkScale;
        foreach (BossPlan boss in FitSlicePlan.Carriers(plan).Where(boss => boss.Hole is not null))
        {
            Point2 at = scale * boss.At;
            double bottom = boss.Top - boss.Hole!.Depth - lower;
            Assert.False(Slicing.At(cut, bottom + 0.1).Contains(at), boss.Name);
            Assert.True(Slicing.At(cut, bottom - 0.1).Contains(at), boss.Name);
            Assert.Equal(boss.Hole.Diameter / 2 * scale, Slicing.At(cut, bottom + (boss.Hole.Depth / 2)).DistanceToOutline(at), 0.01);
        }
    }

    [Theory]
    [InlineData("mooring-beacon")]
    [InlineData("tide-lamp")]
    [InlineData("dome-dial")]
    public void The_strip_of_lip_goes_into_the_strip_of_wall_with_the_gap_of_the_housing(string sample)
    {
        (HousingPlan plan, FitSlice slice) = Cut(sample);
        double rim = Measure.Bounds(slice.Pieces[1].Mesh).Max.Z;
        double height = Measure.Bounds(slice.Pieces[2].Mesh).Max.Z;
        double over = height - (plan.Stack.PartingLine - plan.Cover.LipBottom);
        double scale = plan.Parts.Single(part => part.Name == PartNames.Tub).ShrinkScale;
        double overlap = plan.Stack.PartingLine - plan.Cover.LipBottom;
        double Gap(double depth)
        {
            // The lid lies upside down: turned back about x, its lip stands in the wall.
            Region wall = Slicing.At(slice.Pieces[1].Mesh, rim - depth);
            Region lip = Slicing.At(slice.Pieces[2].Mesh, over + depth);
            Region turned = Region.Union(lip.Parts.Select(part => Region.Polygon([.. part.Loops[0].Select(p => new Point2(p.X, -p.Y))])));
            return turned.Distance(wall) / scale;
        }

        // A bead and its groove come nearer; the plain face between rim and bead shows the gap.
        Assert.Equal(plan.Cover.LipGap, Enumerable.Range(1, 20).Max(i => Gap(overlap * i / 21)), 0.03);
    }

    [SkippableTheory]
    [InlineData("mooring-beacon", 15)]
    [InlineData("tide-lamp", 15)]
    [InlineData("dome-dial", 15)]
    public void A_slice_is_quick_and_light_by_a_slicer(string sample, double minutes)
    {
        Skip.If(Slicer.Executable is null, "no slicer is installed: prusa-slicer");
        (HousingPlan plan, FitSlice slice) = Cut(sample);
        BoardFile board = plan.Source;
        SlicerFigures figures = Slicer.Slice(OneBed.InARow(slice.Pieces.Select(piece => piece.Mesh)), board.Print.Printer,
            board.Print.Shell.Density, TimeSpan.FromMinutes(2));
        string told =
            FormattableString.Invariant(
                $"{figures.Minutes:0.0} min, {figures.Grams:0.0} g; ours {slice.Estimate.LayingMinutes:0.0}, {slice.Estimate.Grams:0.0}");
        output.WriteLine($"{sample}: {told}");
        Assert.True(figures.Minutes < minutes, told);
        Assert.True(figures.Grams < 12, told);
    }

    [Fact]
    public void The_check_list_names_every_opening_and_insert()
    {
        FitSlice slice = Cut("tide-lamp").Slice;
        Assert.Contains(slice.Checks, step => step.Contains("into J1 through the opening", StringComparison.Ordinal));
        Assert.Contains(slice.Checks, step => step.Contains("m2.5x4-od4.6", StringComparison.Ordinal));
        Assert.NotEmpty(slice.Cautions);
    }

    // Cut once for all tests.
    private static (HousingPlan Plan, FitSlice Slice) Cut(string sample) => Slices.GetOrAdd(sample, name => new(() =>
    {
        HousingPlan plan = HousingPlanner.Plan(Board(name));
        return (plan, FitSlice.Of(plan));
    })).Value;

    private static BoardFile Board(string sample) => BoardFileReader.Read(
        "board.yaml", File.ReadAllText(Repository.At("out-samples", sample, "board.yaml")), WrittenBoard.Shipped, []).File!;
}
