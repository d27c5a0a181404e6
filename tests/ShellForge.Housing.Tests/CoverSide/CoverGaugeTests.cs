using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Tests.CoverSide;

/// <summary>What the plan says of cover, diffuser, baffle and closure, measured back from the meshes.</summary>
public class CoverGaugeTests
{
    private const double Within = 0.01;

    // How far crush ribs stand into what they press on, mm.
    private const double Crushed = 0.2;
    private const string TideLamp = "tide-lamp";

    public static TheoryData<string> Samples => [TideLamp, "mooring-beacon", "dome-dial"];

    // A direction through the middle of a flat of the coaxial polygons, where a face lies exactly at its radius.
    private static double Flat(BuiltHousing housing, double nearDegrees)
    {
        double side = 360.0 / housing.Plan.Shell.Round!.Count;
        return (Math.Floor(nearDegrees / side) + 0.5) * side;
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_diffuser_is_as_thick_as_planned(string name)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        double pitch = housing.Plan.Source.Board.PixelCircles[0].Diameter / 2;
        double[] z = Probe.Heights(housing.Assembled("diffuser"), pitch + 0.123, 33.3);

        Assert.Equal(2, z.Length);
        double before = housing.Plan.Diffuser.Fit == DiffuserFit.DropIn ? housing.Plan.Cover.BezelThickness : 0;
        Assert.Equal(housing.Plan.Diffuser.Thickness, z[1] - z[0], Within);
        Assert.Equal(housing.Plan.Stack.Front - before, z[1], Within);
    }

    [Fact]
    public void The_window_is_as_wide_as_the_board_file_asks()
    {
        BuiltHousing housing = BuiltHousing.Sample(TideLamp);
        double[] r = Probe.Radii(housing.Assembled("cover"), Flat(housing, 33), housing.Plan.Stack.Front - 0.5);

        // Pitch circle 76, window 10: bezel from the bore to 33, and from 43 on.
        Assert.Equal(4, r.Length);
        Assert.Equal(43, r[2], Within);
        Assert.Equal(33, r[1], Within + (33 * (1 - Angle.FromDegrees(180.0 / housing.Plan.Shell.Round!.Count).Cos)));
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_lip_keeps_its_gap_to_the_tub(string name)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        double z = housing.Plan.Cover.LipBottom + 0.1;
        double at = Flat(housing, 20);
        double lip = Probe.Radii(housing.Assembled("cover"), at, z)[^1];
        double wall = Probe.Radii(housing.Assembled("tub"), at, z)[^2];

        Assert.Equal(housing.Plan.Cover.LipGap, wall - lip, Within);
    }

    [Fact]
    public void The_bead_stands_off_the_lip_by_gap_and_interference_and_finds_its_groove()
    {
        BuiltHousing housing = BuiltHousing.Sample(TideLamp);
        var snap = Assert.IsType<SnapClosurePlan>(housing.Plan.Closure);
        double at = Flat(housing, 20);
        double lip = Probe.Radii(housing.Assembled("cover"), at, housing.Plan.Cover.LipBottom + 0.1)[^1];
        double crest = Probe.Radii(housing.Assembled("cover"), at, snap.BeadZ)[^1];
        double wall = Probe.Radii(housing.Assembled("tub"), at, housing.Plan.Stack.PartingLine - 0.1)[^2];
        double groove = Probe.Radii(housing.Assembled("tub"), at, snap.BeadZ)[^2];

        Assert.Equal(snap.BeadHeight, crest - lip, Within);
        Assert.Equal(snap.Interference, crest - wall, Within);
        Assert.Equal(snap.GrooveDepth, groove - wall, Within);
        Assert.True(groove > crest, "the bead must not press on the groove's bottom");
    }

    [Fact]
    public void Bead_and_groove_are_left_out_where_the_cover_has_its_tongue()
    {
        BuiltHousing housing = BuiltHousing.Sample(TideLamp);
        var snap = Assert.IsType<SnapClosurePlan>(housing.Plan.Closure);
        double port = housing.Plan.Ports.First().Faces.Degrees;
        double half = Angle.FromRadians(((housing.Plan.Ports.First().Tongue!.SlotWidth / 2) + 1) / housing.Plan.Shell.Round!.Inner).Degrees;
        foreach (double at in new[] { port - half, port + half })
        {
            double[] r = Probe.Radii(housing.Assembled("cover"), at, snap.BeadZ);
            Assert.True(r[^1] < housing.Plan.Shell.Round.Inner, "no bead may ride over the slot's edge");
        }
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_key_rib_goes_into_its_slot_with_a_gap_all_round(string name)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        KeyPlan key = housing.Plan.Key;
        KeyRibPlan planned = key.Rib!;

        // Below bead and groove, which run past the slot.
        double z = planned.Bottom + 0.1;
        double tip = Probe.Radii(housing.Assembled("cover"), key.At.Degrees + 0.01, z)[^1];
        double slot = Probe.Radii(housing.Assembled("tub"), key.At.Degrees + 0.01, z)[^2];
        Point2 out1 = Point2.Polar(1, key.At);
        Point2 across = Point2.Polar(1, key.At + Angle.FromDegrees(90));
        Point2 start = ((housing.Plan.Shell.Round!.Inner + 0.3) * out1) - (20 * across);
        double[] rib = Probe.Crossings(housing.Assembled("cover"), new Point3(start.X, start.Y, z), new Point3(across.X, across.Y, 0));
        double[] sides = Probe.Crossings(housing.Assembled("tub"), new Point3(start.X, start.Y, z), new Point3(across.X, across.Y, 0));

        Assert.Equal(planned.Gap, slot - tip, 0.02);
        Assert.Equal(planned.Width, rib[^1] - rib[^2], Within);
        double left = sides.Where(s => s < 20).Max();
        double right = sides.Where(s => s > 20).Min();
        Assert.Equal(planned.SlotWidth, right - left, Within);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void No_part_on_the_board_is_inside_the_baffle_or_nearer_than_a_fifth_of_a_millimetre(string name)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        Mesh baffle = housing.Assembled("baffle");
        double board = housing.Plan.Stack.BoardTop;
        int looked = 0;
        foreach (PartEnvelope part in PartEnvelope.OnTop(housing.Plan.Source.Board))
        {
            double[] heights = [0.05, part.To!.Value / 2, part.To.Value + 0.2];
            foreach (Point2 corner in part.Outline.Offset(0.2).Loops[0])
            {
                foreach (double height in heights)
                {
                    Assert.False(Probe.IsInside(baffle, new Point3(corner.X, corner.Y, board + height)), $"{part.Ref} at {height}");
                    looked++;
                }
            }
        }

        Assert.True(looked > 100);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Screw_heads_are_clear_of_the_baffle(string name)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        Mesh baffle = housing.Assembled("baffle");
        foreach (ScrewJointPlan screw in housing.Plan.Screws.Where(s => s.Use == ScrewUse.Board))
        {
            for (int i = 0; i < 16; i++)
            {
                Point2 rim = screw.At + Point2.Polar((screw.Screw.HeadDiameter / 2) + 0.2, Angle.FromDegrees((22.5 * i) + 1));
                Assert.False(Probe.IsInside(baffle, new Point3(rim.X, rim.Y, screw.SeatZ + (screw.Screw.HeadHeight / 2))), screw.Name);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Assembled_parts_share_no_space_but_what_the_crush_ribs_give(string name)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        BafflePlan baffle = housing.Plan.Baffle!;
        double ribs = baffle.CrushRibs.Sum(rib => rib.Area) * Crushed;

        // The ribs press on what lies above the baffle.
        (string pressed, string free) = housing.Plan.Diffuser.Fit == DiffuserFit.DropIn ? ("diffuser", "cover") : ("cover", "diffuser");

        Assert.Equal(0, housing.Shared("tub", "cover"), 3);
        Assert.Equal(0, housing.Shared("tub", "baffle"), 3);
        Assert.Equal(0, housing.Shared("cover", "diffuser"), 3);
        Assert.Equal(0, housing.Shared("baffle", free), 3);
        Assert.True(ribs > 0);
        Assert.Equal(ribs, housing.Shared("baffle", pressed), 0.1 * ribs);
    }

    [Fact]
    public void A_closed_snap_cover_catches_when_it_is_pulled()
    {
        BuiltHousing housing = BuiltHousing.Sample("mooring-beacon");
        Solid lifted = housing.Solid("cover").AsOperand().Moved(Transform3.Shift(0, 0, 0.4));

        Assert.True(BuiltHousing.Shared(lifted, housing.Solid("tub").AsOperand()) > 1);
    }

    [Theory]
    [InlineData("mooring-beacon", 37)]
    [InlineData("mooring-beacon", 180)]
    [InlineData("dome-dial", 60)]
    public void The_cover_goes_on_one_way_only(string name, double turned)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        Solid wrong = housing.Solid("cover").AsOperand().Moved(Transform3.TurnZ(Angle.FromDegrees(turned)));

        Assert.True(BuiltHousing.Shared(wrong, housing.Solid("tub").AsOperand()) > 1);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_baffle_stands_on_the_board_and_stays_under_the_diffuser(string name)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        Box3 bounds = Measure.Bounds(housing.Assembled("baffle"));

        Assert.Equal(housing.Plan.Stack.BoardTop, bounds.Min.Z, Within);
        double pressed = housing.Plan.Diffuser.Fit == DiffuserFit.DropIn ? Crushed : 0;
        Assert.True(bounds.Max.Z - pressed < housing.Plan.Stack.DiffuserInner + Within);
        Assert.True(housing.Plan.Stack.DiffuserInner - bounds.Max.Z < 1.3, "light would leak over the walls");
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Cover_baffle_and_diffuser_print_without_support(string name)
    {
        BuiltHousing housing = BuiltHousing.Sample(name);
        foreach (string part in new[] { "cover", "baffle", "diffuser" })
        {
            Mesh mesh = housing.InPrint(part);
            Assert.Equal(0, Measure.Bounds(mesh).Min.Z, Within);
            double unsupported = 0;
            for (int t = 0; t < mesh.TriangleCount; t++)
            {
                Point3 normal = Probe.Normal(mesh, t);
                double lowest = Enumerable.Range(0, 3).Min(corner => Probe.Corner(mesh, t, corner).Z);
                FaceFeature feature = FaceNames.FeatureOf(mesh.Tags[t]);

                // Short bridges: over notches, tooth and key slots, counterbores, the lap that lies on the bezel printed before it.
                bool bridge = feature is FaceFeature.BaffleNotch or FaceFeature.Key or FaceFeature.PryNotch or FaceFeature.ScrewHole
                    or FaceFeature.Counterbore or FaceFeature.Diffuser or FaceFeature.Tongue or FaceFeature.Port or FaceFeature.PortRecess;

                // What lies on a diffuser that was printed before it.
                bool onDiffuser = housing.Plan.Diffuser.Fit == DiffuserFit.PrintedIn
                    && Math.Abs(lowest - housing.Plan.Diffuser.Thickness) < Within;
                if (normal.Z < -0.72 * normal.Length && lowest > 0.01 && !bridge && !onDiffuser)
                {
                    unsupported += normal.Length / 2;
                }
            }

            Assert.True(unsupported < 0.5, $"{part}: {unsupported} mm2 hang in the air");
        }
    }
}
