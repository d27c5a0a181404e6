using ShellForge.Formats.Step;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Tests.Step;

/// <summary>What is written is checked before, and what would not close goes back to flat facets.</summary>
public class WrittenCheckTests
{
    private static readonly Mesh Pin = SolidEvaluator.Evaluate(Cut()).Require().Mesh;

    /// <summary>Ways to spoil a side: each breaks one promise.</summary>
    public static TheoryData<string> Spoilt => ["turned", "elsewhere", "gone", "twice", "straight", "off", "the long way"];

    [Fact]
    public void A_sound_body_passes_and_nothing_is_sent_back()
    {
        FacedMesh boundary = FacedMesh.Of(new HalfEdges(Pin, 1));

        Assert.Empty(WrittenCheck.Faults(boundary, boundary.Written));
        Assert.Equal(0, boundary.SentBack);
        Assert.Contains(boundary.Written.SelectMany(Sides), side => side.Kind == CurveKind.Arc);
        Assert.Contains(boundary.Written.SelectMany(Sides), side => side.Kind == CurveKind.Ellipse);
    }

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void Each_side_that_is_spoilt_is_found_on_every_face(string how)
    {
        int tried = 0;
        FacedMesh boundary = FacedMesh.Of(new HalfEdges(Pin, 1));
        for (int face = 0; face < boundary.Written.Length; face++)
        {
            for (int i = 0; i < boundary.Written[face][0].Count; i++)
            {
                List<WrittenSide> loop = boundary.Written[face][0];
                WrittenSide side = loop[i];
                if (how is "straight" or "the long way" && side.Round is null)
                {
                    continue;
                }

                int other = boundary.Written.SelectMany(Sides).First(s => s.From != side.From && s.From != side.To).From;
                List<WrittenSide> before = [.. loop];
                Point3 at = boundary.Corner(side.From);
                switch (how)
                {
                    case "turned": loop[i] = side with { Ahead = !side.Ahead }; break;
                    case "elsewhere": loop[i] = side with { To = other }; break;
                    case "gone": loop.RemoveAt(i); break;
                    case "twice": loop.Insert(i, side); break;
                    case "straight": loop[i] = side with { Kind = CurveKind.Line, Round = null }; break;
                    case "off": boundary.Put(side.From, at + new Point3(20, 20, 20)); break;
                    default: loop[i] = side with { From = side.To, To = side.From, Ahead = !side.Ahead }; break;
                }

                Assert.NotEmpty(WrittenCheck.Faults(boundary, boundary.Written));
                boundary.Put(side.From, at);
                loop.Clear();
                loop.AddRange(before);
                tried++;
            }
        }

        Assert.InRange(tried, 8, 1000);
        Assert.Empty(WrittenCheck.Faults(boundary, boundary.Written));
    }

    [Fact]
    public void An_arc_that_goes_the_long_way_round_is_found_though_both_its_faces_say_so()
    {
        FacedMesh boundary = FacedMesh.Of(new HalfEdges(Pin, 1));
        WrittenSide arc = boundary.Written.SelectMany(Sides).First(side => side.Kind == CurveKind.Arc);
        foreach (List<WrittenSide> loop in boundary.Written.SelectMany(loops => loops))
        {
            for (int i = 0; i < loop.Count; i++)
            {
                loop[i] = loop[i].Key == arc.Key ? loop[i] with { From = arc.To, To = arc.From, Ahead = !loop[i].Ahead } : loop[i];
            }
        }

        Assert.NotEmpty(WrittenCheck.Faults(boundary, boundary.Written));
    }

    [Fact]
    public void A_face_that_fails_goes_back_to_flat_facets_with_what_is_beside_it()
    {
        FacedMesh boundary = FacedMesh.Of(
            new HalfEdges(Pin, 1), (made, _) => Faces(made, face => made.Round[face] is not null && made.Edges.Count > 0));

        Assert.InRange(boundary.SentBack, 1, 10);
        Assert.All(boundary.Round, Assert.Null);
        Assert.Empty(WrittenCheck.Faults(boundary, boundary.Written));
        Assert.All(boundary.Written.SelectMany(Sides), side => Assert.Equal(CurveKind.Line, side.Kind));
    }

    [Fact]
    public void A_flat_face_that_fails_goes_back_to_its_triangles()
    {
        Mesh box = SolidEvaluator.Evaluate(Shapes.Box(new Point3(0, 0, 0), new Point3(3, 2, 1))).Require().Mesh;

        FacedMesh boundary = FacedMesh.Of(new HalfEdges(box, 1), (made, _) => Faces(made, face => made.Normal(face).Z > 0.9));

        Assert.Equal(7, boundary.Loops.Length);
        Assert.Empty(WrittenCheck.Faults(boundary, boundary.Written));
    }

    private static SortedSet<int> Faces(FacedMesh boundary, Func<int, bool> which) =>
        [.. Enumerable.Range(0, boundary.Loops.Length).Where(which)];

    private static IEnumerable<WrittenSide> Sides(List<List<WrittenSide>> loops) => loops.SelectMany(loop => loop);

    private static Solid Cut() => Shapes.Extrude(Region.Disc(Point2.Origin, new Ring(10, RingSide.Inside, 80, Angle.Zero)), 0, 20)
        .Less(
            Shapes.Box(new Point3(-30, -30, 0), new Point3(30, 30, 30))
                .Moved(Transform3.TurnX(Angle.FromDegrees(30)).Then(Transform3.Shift(0, 0, 12))),
            Shapes.Box(new Point3(5.3, -2.1, -1), new Point3(11, 2.3, 3)));
}
