using ShellForge.Formats.Soup;
using ShellForge.Formats.Stl;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Marks;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Housing.Tests.CoverSide;

/// <summary>The revision's mark inside each part, measured back from the part's written file.</summary>
public sealed class RevisionMarkTests
{
    private const double Hundredth = 0.01;

    private static readonly WrittenBoard Screwed = new() { Closure = "screws", Mount = "stand" };
    private static readonly WrittenBoard Clamped = new() { Outline = "{disc: 90}", Holes = [], Housing = ["hold: clamp"] };

    public static TheoryData<string, string, string> Marked() => new()
    {
        { "screwed", "B", "tub cover stand" },
        { "screwed", "rev 12 q3w7", "tub" },
        { "clamped", "C2", "tub cover" },
        { "mooring-beacon", "B", "tub" },
        { "tide-lamp", "B", "tub" },
        { "dome-dial", "B", "tub" },
    };

    [Theory]
    [MemberData(nameof(Marked))]
    public void A_mark_stands_in_the_file_of_every_part_with_room_as_high_and_as_deep_as_it_prints(
        string board, string mark, string parts)
    {
        HousingPlan plan = Planned(board, mark);
        var basis = PrintBasis.Of(plan.Source.Print.Printer);
        LetteringPlan[] marks = [.. plan.Lettering.Where(line => line.IsMark)];
        string[] marked = [.. marks.Select(line => line.Part)];
        Assert.All(parts.Split(' '), part => Assert.Contains(part, marked));
        string told = Assert.Single(plan.Decisions, decision => decision.Path == "mark").Why;
        foreach (MadePart part in PartMaker.Make(plan).Where(part => marked.Contains(part.Name)))
        {
            LetteringPlan[] own = [.. marks.Where(each => each.Part == part.Name)];
            LetteringPlan line = own[0];
            Assert.Contains(part.Name, told, StringComparison.Ordinal);
            Mesh assembled = Written(part).Mapped(part.Plan.ToFile.Inverse());
            Mesh mesh = line.FromSide is { } side
                ? assembled.Mapped(side.Inverse()).Mapped(new Transform3(0, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0)) : assembled;
            Region around = line.Strokes.Offset(0.5);

            // Just within its depth the letters stand (or lie) there; just beyond, they do not.
            AssertSame(line, Slicing.At(mesh, line.FromZ + Hundredth), around);
            AssertSame(line, Slicing.At(mesh, line.ToZ - Hundredth), around);
            Ends(line, Slicing.At(mesh, line.Raised ? line.ToZ + Hundredth : line.FromZ - Hundredth), around, filled: false);
            Ends(line, Slicing.At(mesh, line.Raised ? line.FromZ - Hundredth : own[^1].ToZ + Hundredth), around, filled: true);
            Assert.All(own, step => AssertSame(step, Slicing.At(mesh, (step.FromZ + step.ToZ) / 2), around));

            // Deep enough to be felt; as high as the printer keeps open; strokes no thinner than it draws.
            Assert.InRange(own[^1].ToZ - line.FromZ, 0.3, 0.8);
            double least = PrintedLettering.LeastHeight(basis);
            (double width, double tall) = PrintedLettering.Size(mark, least, basis);
            Assert.True(Extent(line.Strokes, tall) >= Math.Min(width, tall) - 0.1, $"{part.Name}: {mark} is too small to print");
            Assert.True(line.Strokes.Offset(-(PrintedLettering.StrokeLeast / 2) + 0.02).Parts.Length >= 1);
        }
    }

    // Letters in an upright wall have roofs: each leans no flatter than the printer manages, so that nothing is to be told of them.
    [Fact]
    public void Each_step_of_letters_in_a_cheek_reaches_no_farther_than_the_layer_under_it_carries()
    {
        HousingPlan plan = Planned("screwed", "B");
        LetteringPlan[] steps = [.. plan.Lettering.Where(line => line.IsMark && line.Part == PartNames.Stand)];
        Assert.True(steps.Length > 1);
        double layer = PrintBasis.Of(plan.Source.Print.Printer).Layer;
        double most = layer * Math.Tan(plan.Source.Print.Printer.OverhangDegrees * Math.PI / 180);
        Assert.All(steps, step => Assert.InRange(step.ToZ - step.FromZ, 0.1, most));
        for (int i = 1; i < steps.Length; i++)
        {
            Assert.Equal(steps[i - 1].ToZ, steps[i].FromZ, 0.0011);
            Assert.True(steps[i].Strokes.Offset(layer - Hundredth).Less(steps[i - 1].Strokes).IsEmpty,
                "a step is wider than a layer carries");
        }
    }

    [Fact]
    public void A_part_without_room_for_the_mark_is_told_and_one_of_thin_walls_too()
    {
        HousingPlan plan = Planned("screwed", "a mark of 24 letters, o");
        Decision told = Assert.Single(plan.Decisions, decision => decision.Path == "mark");
        string[] marked = [.. plan.Lettering.Where(line => line.IsMark).Select(line => line.Part)];
        Assert.DoesNotContain(PartNames.Cover, marked);
        Assert.Contains("no room for it", told.Why, StringComparison.Ordinal);
        Assert.Contains("cover", told.Why, StringComparison.Ordinal);
        Assert.Contains("clamp ring is too narrow", Planned("clamped", "B").Decisions.Single(decision => decision.Path == "mark").Why,
            StringComparison.Ordinal);
        HousingPlan cells = HousingPlanner.Plan(WrittenBoard.Sample("tide-lamp", "revision=B"));
        Assert.Equal(cells.Baffle is not null, cells.Decisions.Single(decision => decision.Path == "mark").Why
            .Contains("baffle's walls are too thin", StringComparison.Ordinal));
    }

    private static HousingPlan Planned(string board, string mark) => HousingPlanner.Plan(board switch
    {
        "screwed" => Screwed.Read($"revision={mark}"),
        "clamped" => Clamped.Read($"revision={mark}"),
        _ => WrittenBoard.Sample(board, $"revision={mark}"),
    });

    private static void AssertSame(LetteringPlan line, Region section, Region around)
    {
        Region letters = line.Raised ? section.Intersect(around) : around.Less(section);
        Assert.InRange(letters.Area / line.Strokes.Area, 0.98, 1.02);

        // Nothing of either lies farther from the other than a hundredth.
        Assert.True(letters.Less(line.Strokes.Offset(Hundredth)).Area < 0.02, $"{line.Part}: the letters are wider than planned");
        Assert.True(line.Strokes.Less(letters.Offset(Hundredth)).Area < 0.02, $"{line.Part}: a stroke is missing");
    }

    // On the side of the air nothing stands, on that of the part all is plastic.
    private static void Ends(LetteringPlan line, Region section, Region around, bool filled) => Assert.InRange(
        section.Intersect(around).Area / around.Area, filled ? 0.999 : 0, filled ? 1.001 : 0.001);

    private static double Extent(Region strokes, double most)
    {
        Box2 bounds = strokes.Bounds;
        return Math.Min(most, Math.Max(bounds.Max.X - bounds.Min.X, bounds.Max.Y - bounds.Min.Y));
    }

    private static Mesh Written(MadePart part)
    {
        using var stream = new MemoryStream();
        StlWriter.Write(stream, part.PrintMesh.Mesh, "marks");
        SoupFile soup = StlReader.Read(stream.ToArray());
        Assert.Empty(soup.Faults);
        return Assert.IsType<Mesh>(soup.Bodies.Single().Triangles.ToLatticeMesh());
    }
}
