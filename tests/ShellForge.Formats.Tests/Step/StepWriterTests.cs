using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ShellForge.Formats.Step;
using ShellForge.Formats.Stl;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Formats.Tests.Step;

/// <summary>What STEP files hold, judged by a library that CAD programs are built on.</summary>
public class StepWriterTests
{
    // What judge.mjs asks for, mm: how far its chords stray from the faces.
    private const double JudgesChordError = 0.0005;

    private static readonly string Judge = Repository.At("tests", "ShellForge.Formats.Tests", "Step", "judge");

    [SkippableFact]
    public void A_body_of_flat_faces_keeps_its_faces_and_its_volume()
    {
        Solid body = Shapes.Box(new Point3(0, 0, 0), new Point3(30, 20, 10))
            .Less(Shapes.Box(new Point3(5, 5, 2), new Point3(12, 15, 11)))
            .And(Shapes.Loft(
                [new(20, 5), new(28, 5), new(28, 15), new(20, 15)], 10, [new(22, 7), new(26, 7), new(26, 13), new(22, 13)], 14));
        Mesh mesh = Evaluated(body);

        Verdict verdict = Judged(Written(mesh));

        // Six of the box, five of the pocket, four sides of the stump and its top; the faces between touch no air.
        Assert.Equal((1, 16, 0), (verdict.Bodies, verdict.Faces, verdict.OpenEdges));
        Assert.InRange(verdict.Volume / Measure.Volume(mesh), 1 - 1e-6, 1 + 1e-6);
    }

    [SkippableFact]
    public void A_turned_body_is_cylinders_and_cones_each_in_two_halves()
    {
        // A pot with a chamfered foot: floor 2, wall 3, radius 20, height 12.
        Point2[] profile = [new(0, 0), new(19, 0), new(20, 1), new(20, 12), new(17, 12), new(17, 2), new(0, 2)];
        Mesh mesh = Evaluated(Shapes.Revolve(profile, Ring.CountFor(20), Angle.Zero, RingSide.Inside));
        string text = Written(mesh);

        Verdict verdict = Judged(text);

        Assert.Equal((1, 3 + (2 * 3), 0), (verdict.Bodies, verdict.Faces, verdict.OpenEdges));
        Assert.Single(Regex.Matches(text, "CONICAL_SURFACE"));
        Assert.Equal(2, Regex.Count(text, "CYLINDRICAL_SURFACE"));

        // Readers mend a face that says its side wrong, so the text is asked: only the two halves of the hollow look at the axis.
        Assert.Equal(2, Regex.Count(text, @"ADVANCED_FACE\([^;]*\.F\.\);"));

        // Cone, cylinder, less the hollow; the judge cuts arcs into chords of its own.
        double exact = Math.PI * (((19 * 19) + (19 * 20) + (20 * 20)) / 3.0 + (11 * 20 * 20) - (10 * 17 * 17));
        Assert.InRange(verdict.Volume / exact, 1 - 2e-4, 1 + 2e-4);
        Assert.NotInRange(Measure.Volume(mesh) / exact, 1 - 2e-4, 1 + 2e-4);
    }

    [SkippableFact]
    public void A_wall_that_a_port_cuts_is_round_where_the_cut_leaves_it_whole()
    {
        Solid wall =
            Shapes.Extrude(
                Region.Annulus(new Ring(20, RingSide.Outside, 100, Angle.Zero), new Ring(17, RingSide.Inside, 100, Angle.Zero)), 0, 12);
        Mesh mesh = Evaluated(wall.Less(Shapes.Box(new Point3(10, -5, 4), new Point3(30, 5, 8))));
        string text = Written(mesh);

        Verdict verdict = Judged(text);

        Assert.Equal((1, 0), (verdict.Bodies, verdict.OpenEdges));
        Assert.True(Regex.Count(text, "CYLINDRICAL_SURFACE") >= 2, "no round wall is left");
        Assert.InRange(verdict.Volume - Measure.Volume(mesh), 0, Measure.Area(mesh) * Tolerances.ChordError);
    }

    [SkippableFact]
    public void A_wall_that_planes_cut_is_one_round_face_and_meets_an_oblique_plane_in_an_ellipse()
    {
        Solid pin = Shapes.Extrude(Region.Disc(Point2.Origin, new Ring(10, RingSide.Inside, 80, Angle.Zero)), 0, 20);
        Solid wedge = Shapes.Box(new Point3(-30, -30, 0), new Point3(30, 30, 30))
            .Moved(Transform3.TurnX(Angle.FromDegrees(30)).Then(Transform3.Shift(0, 0, 12)));
        Solid slot = Shapes.Box(new Point3(5.3, -2.1, -1), new Point3(11, 2.3, 3));
        Mesh mesh = Evaluated(pin.Less(wedge, slot));
        string text = Written(mesh);

        Verdict verdict = Judged(text);

        // Foot, oblique head, two halves of the wall; three walls and the roof of the slot.
        Assert.Equal((1, 8, 0), (verdict.Bodies, verdict.Faces, verdict.OpenEdges));
        Assert.Contains("ELLIPSE", text, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(text, "CYLINDRICAL_SURFACE"));

        // The slot takes its rectangle and the arc beyond it: an integral of the circle over its width.
        double Under(double y) => ((y * Math.Sqrt(100 - (y * y))) + (100 * Math.Asin(y / 10))) / 2;
        double exact = (Math.PI * 100 * 12) - (3 * (Under(2.3) - Under(-2.1) - (5.3 * 4.4)));
        Assert.InRange(verdict.Volume / exact, 1 - 1e-4, 1 + 1e-4);
        Assert.NotInRange(Measure.Volume(mesh) / exact, 1 - 1e-4, 1 + 1e-4);

        // The judge has chords; the faces themselves are exact to a lattice step over the whole surface.
        Assert.InRange(
            Math.Abs(WrittenVolume.Of(FacedMesh.Of(new HalfEdges(mesh, 1))) - exact), 0, Measure.Area(mesh) * Lattice.Step);
    }

    [SkippableTheory]
    [InlineData(23, 100)]
    [InlineData(4.4, 36)]
    public void A_wall_set_outward_from_a_circle_is_round_though_its_chords_are_long(double radius, int chords)
    {
        Mesh mesh = Evaluated(Shapes.Extrude(
            Region.Annulus(
                new Ring(radius, RingSide.Inside, chords, Angle.Zero), new Ring(radius - 2, RingSide.Inside, chords, Angle.Zero)), 0, 3));

        Verdict verdict = Judged(Written(mesh));

        Assert.Equal((1, 2 + (2 * 2), 0), (verdict.Bodies, verdict.Faces, verdict.OpenEdges));
    }

    [SkippableFact]
    public void Sides_of_a_lattice_step_between_arcs_and_walls_leave_a_ring_round()
    {
        // A ring that lies in from two clips: where their walls end, a side of one lattice step leads back onto the arc.
        Mesh mesh = Kept("diffuser-with-short-sides.stl");

        Verdict verdict = Judged(Written(mesh));

        Assert.Equal((1, 0), (verdict.Bodies, verdict.OpenEdges));
        Assert.InRange(verdict.Faces, 6, 12);
    }

    [SkippableFact]
    public void A_corner_that_no_place_fits_costs_a_round_the_facets_there_alone()
    {
        // The diffuser of a board drawn by chance: round corners, a chamfered foot, and straight walls that meet them a little off.
        Mesh mesh = Kept("diffuser-with-corners-off.stl");
        string text = Written(mesh);

        Verdict verdict = Judged(text);

        Assert.Equal((1, 0), (verdict.Bodies, verdict.OpenEdges));
        Assert.InRange(verdict.Faces, 14, 40);
        Assert.InRange(Regex.Count(text, "CYLINDRICAL_SURFACE"), 4, 8);
    }

    [SkippableFact]
    public void A_line_that_an_arc_would_touch_keeps_its_face()
    {
        // A shelf beside a drum ends half a thousandth of a millimetre beyond where the drum is widest, in the middle of a chord.
        const double radius = 41.2;
        const int chords = 144;
        Solid drum = Shapes.Extrude(
            Region.Disc(Point2.Origin, new Ring(radius, RingSide.Inside, chords, Angle.FromDegrees(180.0 / chords))), 0, 10);
        Solid shelf = Shapes.Box(new Point3(radius - 3, -0.7, 0), new Point3(radius + 0.0005, 0.7, 5));
        Mesh mesh = Evaluated(drum.And(shelf));

        string text = Written(mesh);

        Verdict verdict = Judged(text);
        Assert.Equal((1, 9, 0), (verdict.Bodies, verdict.Faces, verdict.OpenEdges));
        Assert.Contains("CYLINDRICAL_SURFACE", text, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void An_edge_shorter_than_readers_tell_apart_is_a_corner()
    {
        // A notch of a ten-thousandth of a millimetre along an edge.
        double little = 7 * Lattice.Step;
        Solid body = Shapes.Box(new Point3(0, 0, 0), new Point3(10, 10, 10))
            .Less(Shapes.Box(new Point3(10 - little, 10 - little, -1), new Point3(11, 11, 11)));

        Verdict verdict = Judged(Written(Evaluated(body)));

        Assert.Equal((1, 6, 0), (verdict.Bodies, verdict.Faces, verdict.OpenEdges));
    }

    [SkippableTheory]
    [InlineData(12, 12, 8)]
    [InlineData(9, 7, 9)]
    [InlineData(7, 9, 12)]
    public void A_slit_that_closes_before_it_opens_is_one_edge(double below, double above, int faces)
    {
        double little = 7 * Lattice.Step;
        Point2[] wedge = [new(5, 5), new(below, 5), new(above, 5 + little)];
        Solid body = Shapes.Box(new Point3(0, 0, 0), new Point3(10, 10, 10)).Less(Shapes.Loft(wedge, 6, wedge, 11));

        Verdict verdict = Judged(Written(Evaluated(body)));

        Assert.Equal((1, faces, 0), (verdict.Bodies, verdict.Faces, verdict.OpenEdges));
        Assert.InRange(verdict.Volume, 1000 - 1e-3, 1000 + 1e-3);
    }

    [SkippableFact]
    public void A_face_that_runs_along_a_line_and_a_part_of_it_back_is_not_lost()
    {
        // The baffle of a board drawn by chance: beside a round of a notch a face goes out 0.016 mm and comes back by 0.006.
        Mesh mesh = Kept("baffle-that-folds.stl");

        Verdict verdict = Judged(Written(mesh));

        Assert.Equal((1, 0), (verdict.Bodies, verdict.OpenEdges));
        Assert.InRange(
            Math.Abs(verdict.Volume - WrittenVolume.Of(FacedMesh.Of(new HalfEdges(mesh, 1)))), 0, Measure.Area(mesh) * JudgesChordError);
    }

    [SkippableFact]
    public void A_hollow_body_has_a_void_and_two_bodies_are_two()
    {
        Solid hollow = Shapes.Box(new Point3(0, 0, 0), new Point3(10, 10, 10)).Less(Shapes.Box(new Point3(2, 2, 2), new Point3(8, 8, 8)));
        Mesh mesh = Evaluated(hollow.And(Shapes.Box(new Point3(20, 0, 0), new Point3(25, 5, 5))));
        string text = Written(mesh);

        Verdict verdict = Judged(text);

        Assert.Single(Regex.Matches(text, "BREP_WITH_VOIDS"));
        Assert.Equal((2, 18, 0), (verdict.Bodies, verdict.Faces, verdict.OpenEdges));
        Assert.InRange(verdict.Volume, 1000 - 216 + 125 - 1e-3, 1000 - 216 + 125 + 1e-3);
    }

    [SkippableTheory]
    [InlineData("tide-lamp", "tub", 240, 190)]
    [InlineData("tide-lamp", "cover", 310, 240)]
    [InlineData("dome-dial", "cover", 510, 410)]
    [InlineData("mooring-beacon", "tub", 415, 355)]
    [InlineData("dome-dial", "tub", 385, 310)]
    public void A_part_of_a_sample_is_closed_and_has_its_volume(string sample, string part, int mostFaces, int mostKilobytes)
    {
        Mesh mesh =
            StlReader.Read(File.ReadAllBytes(Repository.At("out-samples", sample, part + ".stl"))).Bodies[0].Triangles.ToLatticeMesh()!;
        string text = Written(mesh);

        Verdict verdict = Judged(text);

        Assert.Equal((Measure.Shells(mesh), 0), (verdict.Bodies, verdict.OpenEdges));
        Assert.InRange(verdict.Faces, 10, mostFaces);
        Assert.InRange(text.Length / 1000, 10, mostKilobytes);
        var boundary = FacedMesh.Of(new HalfEdges(mesh, 1));
        Assert.Equal(0, boundary.SentBack);
        Assert.InRange(Math.Abs(verdict.Volume - WrittenVolume.Of(boundary)), 0, Measure.Area(mesh) * JudgesChordError);
    }

    [SkippableFact]
    public void A_part_goes_where_it_is_put_at_the_size_it_gets()
    {
        Mesh mesh = Evaluated(Shapes.Revolve([new(5, 0), new(8, 0), new(8, 6), new(5, 6)], 64, Angle.Zero, RingSide.Inside));
        Transform3 place = Transform3.TurnX(Angle.FromDegrees(180)).Then(Transform3.Shift(0, 0, 20));

        string text = Written(mesh, 0.5, place);

        Assert.Contains("CYLINDRICAL_SURFACE('',#", text, StringComparison.Ordinal);
        Assert.Matches(@"CIRCLE\('',#\d+,4\.\)", text);
        Assert.InRange(Judged(text).Volume, Math.PI * 6 * (16 - 6.25) * (1 - 1e-3), Math.PI * 6 * (16 - 6.25) * (1 + 1e-3));
    }

    [Fact]
    public void The_same_part_gives_the_same_bytes_and_names_stay_within_the_format()
    {
        Mesh mesh = Evaluated(Shapes.Box(new Point3(0, 0, 0), new Point3(1, 2, 3)));

        string text = Written(mesh, 1, Transform3.Identity, "Kl\u00E4r's \\ lamp");

        Assert.Equal(text, Written(mesh, 1, Transform3.Identity, "Kl\u00E4r's \\ lamp"));
        Assert.Contains(@"PRODUCT('Kl\X2\00E4\X0\r''s \\ lamp'", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        Assert.All(text, c => Assert.InRange(c, '\n', '~'));
    }

    [Fact]
    public void An_open_mesh_is_refused()
    {
        Mesh box = Evaluated(Shapes.Box(new Point3(0, 0, 0), new Point3(1, 2, 3)));
        var open = new Mesh(box.Vertices, box.Triangles[3..], box.Tags[1..]);

        Assert.Throws<ArgumentException>(() => Written(open));
    }

    private static Mesh Kept(string name) =>
        StlReader.Read(File.ReadAllBytes(Repository.At("tests", "ShellForge.Formats.Tests", "Step", "cases", name)))
            .Bodies[0].Triangles.ToLatticeMesh()!;

    private static Mesh Evaluated(Solid solid) => SolidEvaluator.Evaluate(solid).Require().Mesh;

    private static string Written(Mesh mesh) => Written(mesh, 1, Transform3.Identity);

    private static string Written(Mesh mesh, double widen, Transform3 place, string name = "part")
    {
        using var stream = new MemoryStream();
        StepWriter.Write(stream, name, mesh, widen, place);
        return Encoding.ASCII.GetString(stream.ToArray());
    }

    private static Verdict Judged(string text)
    {
        Skip.IfNot(Ready.Value, "no Node with npm");
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder.File("part.step"), text);
        string[] said = ForeignRun.Of("node", Judge, ["judge.mjs", folder.File("part.step")]).Told.Trim().Split(' ');
        Assert.True(said is ["true", _, _, _, _], string.Join(' ', said));
        return new Verdict(
            int.Parse(said[1], CultureInfo.InvariantCulture), int.Parse(said[2], CultureInfo.InvariantCulture),
            int.Parse(said[3], CultureInfo.InvariantCulture), double.Parse(said[4], CultureInfo.InvariantCulture));
    }

    private static readonly Lazy<bool> Ready = new(() =>
    {
        try
        {
            if (!Directory.Exists(Path.Combine(Judge, "node_modules")))
            {
                ForeignRun.Of("npm", Judge, ["ci", "--no-audit", "--no-fund", "--ignore-scripts", "--loglevel=error"]);
            }

            return Directory.Exists(Path.Combine(Judge, "node_modules"));
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    });

    private sealed record Verdict(int Bodies, int Faces, int OpenEdges, double Volume);
}
