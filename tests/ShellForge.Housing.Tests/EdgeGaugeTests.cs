using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Housing.Tests.Tub;
using ShellForge.Planning;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Housing.Tests;

/// <summary>Rounded edges measured back on the files that are written, on outlines of all kinds.</summary>
public sealed class EdgeGaugeTests
{
    // What a caliper with a needle would find, mm; and how far the printer's overhang goes, degrees from the vertical.
    private const double Within = 0.02;
    private const double Overhang = 45;
    private const double Lean = 42;

    // Facets that lean too far may have so much area together, mm2: flecks where edges meet in a mitre.
    private const double Fleck = 0.02;

    private static readonly Dictionary<string, WrittenBoard> Boards = new()
    {
        ["disc"] = new(),
        ["disc with a port"] = new()
        {
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}"],
            Cable = "{part: J1}",
        },
        ["disc with ears"] = new() { Closure = "screws", Walls = 6 },
        ["ring"] = new()
        {
            Outline = "{ring: {outer: 110, bore: 60}}",
            Holes = ["{circle: 74, count: 4, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 86, count: 24, from: 90, direction: cw}",
        },
        ["ring with lobes"] = new()
        {
            Outline = "{ring: {outer: 110, bore: 60}}",
            Holes = ["{circle: 74, count: 4, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 92, count: 24, from: 90, direction: cw}",
            Closure = "screws",
            Walls = 6,
        },
        ["letter D with ears"] = new()
        {
            Outline = "{arcs: [[-30, -26], [30, -26], [-30, -26, 278.2]]}\n  centre: [0, 0]",
            Holes = ["{at: [-26, -20], diameter: 2.7}", "{at: [26, -20], diameter: 2.7}", "{at: [0, 34], diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 36, count: 12, from: 90}",
            Closure = "screws",
            Walls = 6,
        },
        ["star"] = new()
        {
            Outline = "{polygon: [[0, 50], [14, 19], [48, 15], [23, -8], [29, -41], [0, -24], [-29, -41], [-23, -8], [-48, 15], "
                + "[-14, 19]]}\n  centre: [0, 0]",
            Holes = ["{at: [0, 26], diameter: 2.7}", "{at: [20, -20], diameter: 2.7}", "{at: [-20, -20], diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 24, count: 8, from: 90}",
        },
        ["heart"] = new()
        {
            Outline = "{arcs: [[0, -42], [38, 8, 20], [0, 18, 200], [-38, 8, 200], [0, -42, 20]]}\n  centre: [0, 0]",
            Holes = ["{at: [0, -30], diameter: 2.7}", "{at: [-27, 14], diameter: 2.7}", "{at: [27, 14], diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 24, count: 8, from: 90}",
        },
        ["bar with a cable"] = new()
        {
            Outline = "{polygon: [[0, 0], [90, 0], [90, 24], [0, 24]]}\n  centre: [45, 12]",
            Holes = ["{at: [6, 12], diameter: 2.7}", "{at: [84, 12], diameter: 2.7}"],
            Pixels = "{package: \"2020\", at: [45, 12]}",
            Cable = "{round: 4, angle: 270}",
        },
    };

    public static TheoryData<string, string> Edges
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (string board in Boards.Keys)
            {
                data.Add(board, "round");
                data.Add(board, "soft");
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Edges))]
    public void Front_and_floor_are_as_round_as_planned_and_print_without_support(string board, string edge) => Measured(
        Boards[board].Read($"housing.edge={edge}"),
        least: edge == "soft" && !board.Contains("with", StringComparison.Ordinal) ? 2.2 : 0.8);

    [Fact]
    public void Edges_of_any_radius_on_housings_of_any_size_are_as_round_as_planned()
    {
        var dice = new Random(20261129);
        for (int i = 0; i < 5; i++)
        {
            int outer = 36 + dice.Next(150);
            bool ring = outer > 70 && dice.Next(2) == 0;
            double radius = Math.Round(0.8 + (6 * dice.NextDouble()), 1);
            BoardFile file = new WrittenBoard
            {
                Outline = ring ? $"{{ring: {{outer: {outer}, bore: {outer / 2}}}}}" : $"{{disc: {outer}}}",
                Holes = [],
                Pixels = $"{{package: \"2020\", circle: {outer * 3 / 4}, count: {outer / 4}, from: 90, direction: cw}}",
                Walls = 2 + dice.Next(7),
                Floor = 1 + (0.2 * dice.Next(20)),
            }.Read(FormattableString.Invariant($"housing.edge={radius}"));
            Measured(file, least: 0);
        }
    }

    [Fact]
    public void Edges_of_boards_of_every_outline_are_sound_and_print_without_support()
    {
        int rounded = 0;
        int others = 0;
        for (int seed = 0; seed < 30; seed += 3)
        {
            BoardReadResult read = BoardFileReader.Read(
                "any.yaml", AnyBoards.Text(seed), WrittenBoard.Shipped,
                [SetOverride.Parse($"housing.edge={(seed % 2 == 0 ? "soft" : "round")}")]);
            if (read.File is { } file)
            {
                HousingPlan plan = Measured(file, least: 0);
                rounded += plan.Shell.FloorEdge is not null || plan.Cover.FrontEdge is not null ? 1 : 0;
                others += plan.Shell.Round is null && plan.Shell.FloorEdge is not null ? 1 : 0;
            }
        }

        Assert.True(rounded >= 5 && others >= 2, $"{rounded} were rounded, {others} of them neither discs nor rings");
    }

    [SkippableTheory]
    [InlineData("disc", "soft")]
    [InlineData("letter D with ears", "round")]
    public void A_slicer_lays_every_line_of_an_edge_on_lines_below(string board, string edge)
    {
        Skip.If(Slicer.Executable is null, "no slicer is installed: prusa-slicer");
        HousingPlan plan = HousingPlanner.Plan(Boards[board].Read($"housing.edge={edge}"));
        HousingPart tub = HousingBuilder.Build(plan).First(part => part.Name == PartNames.Tub);
        PrinterProfile printer = plan.Source.Print.Printer;
        EdgePlan rounded = plan.Shell.FloorEdge!;
        Region outline = plan.Shell.Footprint;
        ILookup<double, SlicedLine> layers = Slicer
            .Lines(SolidEvaluator.Evaluate(tub.InPrint).Require().Mesh, printer, tub.Plan.Filament.Density, TimeSpan.FromMinutes(2))
            .Where(line => line.Z < rounded.Radius + 1 && outline.Contains(0.5 * (line.From + line.To))
                && outline.DistanceToOutline(0.5 * (line.From + line.To)) < rounded.Inset + 1.5)
            .ToLookup(line => Math.Round(line.Z, 3));
        double[] heights = [.. layers.Select(layer => layer.Key).Order()];
        Assert.True(heights.Length > rounded.Radius / printer.LayerHeight, $"{heights.Length} layers");

        // The outermost line of each layer lies by less than half its width beside one below it.
        int looked = 0;
        for (int i = 1; i < heights.Length; i++)
        {
            SlicedLine[] below = [.. layers[heights[i - 1]]];
            foreach (Point2 middle in layers[heights[i]].Select(line => 0.5 * (line.From + line.To))
                .Where(at => outline.DistanceToOutline(at) < rounded.InsetAt(heights[i] - printer.LayerHeight) + printer.LineWidth))
            {
                looked++;
                double off = below.Min(line => Distance(middle, line.From, line.To));
                Assert.True(off < (printer.LineWidth / 2) + Within, $"{off:0.00} mm off the line below at {middle}, {heights[i]} up");
            }
        }

        Assert.True(looked > 500, $"{looked} lines");
    }

    private static double Distance(Point2 point, Point2 from, Point2 to)
    {
        Point2 along = to - from;
        double square = Point2.Dot(along, along);
        double share = square == 0 ? 0 : Math.Clamp(Point2.Dot(point - from, along) / square, 0, 1);
        return Point2.Distance(point, from + (share * along));
    }

    private static HousingPlan Measured(BoardFile file, double least)
    {
        HousingPlan plan = HousingPlanner.Plan(file);
        Dictionary<string, HousingPart> parts = HousingBuilder.Build(plan).ToDictionary(part => part.Name);
        foreach ((string name, EdgePlan? outer, EdgePlan? bore) in new[]
        {
            (PartNames.Tub, plan.Shell.FloorEdge, plan.Shell.FloorEdgeInBore),
            (PartNames.Cover, plan.Cover.FrontEdge, plan.Cover.FrontEdgeInBore),
        })
        {
            string why = string.Join('\n', plan.Decisions.Where(each => each.Path.StartsWith("edge", StringComparison.Ordinal)));
            Assert.True((outer?.Radius ?? 0) >= least, why);
            SolidOutcome outcome = SolidEvaluator.Evaluate(parts[name].InPrint);
            Assert.True(outcome.Defect is null, $"{name}: {outcome.Defect}");
            SolidMesh solid = outcome.Require();
            Assert.True(MeshAudit.Run(solid.Mesh).IsClean);
            int shells = Measure.Shells(solid.Mesh);
            Assert.True(shells == 1 || shells == Measure.Shells(Chamfered(plan, name)),
                $"{plan.Source.Name}: {name} in {shells} pieces\n{why}");
            double scale = parts[name].Plan.ShrinkScale;
            var gauge = RayGauge.OnWritten(solid, scale);
            Region seen = Seen(plan, name);
            foreach (ImmutableArray<Point2> loop in seen.Loops)
            {
                bool isBore = Area(loop) < 0;
                if ((isBore ? bore : outer) is { } edge)
                {
                    AssertRound(gauge, seen, loop, edge.Radius, place => IsAtNotch(plan, name, place));
                    AssertNothingHangs(solid.Mesh, scale, Region.Polygon(isBore ? [.. loop.Reverse()] : loop), edge);
                }
            }
        }

        return plan;
    }

    // The same part with its edges chamfered: what falls apart already there is no matter of edges.
    private static Mesh Chamfered(HousingPlan plan, string part)
    {
        HousingPlan sharp = plan with
        {
            Shell = plan.Shell with { FloorEdge = null, FloorEdgeInBore = null },
            Cover = plan.Cover with { FrontEdge = null, FrontEdgeInBore = null },
        };
        return SolidEvaluator.Evaluate(HousingBuilder.Build(sharp).First(each => each.Name == part).InPrint).Require().Mesh;
    }

    private static double Area(ImmutableArray<Point2> loop) =>
        loop.Select((corner, i) => Point2.Cross(corner, loop[(i + 1) % loop.Length])).Sum() / 2;

    // The outline as the part lies on the bed: covers lie on their face, turned about x.
    private static Region Seen(HousingPlan plan, string part) => part == PartNames.Tub
        ? plan.Shell.Footprint : plan.Shell.Footprint.MirroredX().Turned(Angle.FromDegrees(180));

    // Notches for a blade cut the cover's wall over its edge.
    private static bool IsAtNotch(HousingPlan plan, string part, Point2 place) => part == PartNames.Cover
        && plan.PryNotches.Any(notch =>
            place.Length * Angle.Between(Angle.Of(new Point2(place.X, -place.Y)), notch.At).Sin <= (notch.Width / 2) + 1
            && Angle.Between(Angle.Of(new Point2(place.X, -place.Y)), notch.At).Degrees < 90);

    private static void AssertRound(
        RayGauge gauge, Region outline, ImmutableArray<Point2> loop, double radius, Func<Point2, bool> isCutAt)
    {
        int probed = 0;
        int step = Math.Max(1, loop.Length / 60);
        for (int i = 0; i < loop.Length; i += step)
        {
            Point2 side = loop[(i + 1) % loop.Length] - loop[i];
            Point2 middle = loop[i] + (0.5 * side);
            Point2 inward = (1 / side.Length) * new Point2(-side.Y, side.X);

            // Beside a corner another stretch of outline may be nearer than the one that is probed.
            const double outside = 0.1;
            Point2 from = middle - (outside * inward);
            if (Math.Abs(outline.DistanceToOutline(middle + (radius * inward)) - radius) > 0.003
                || Math.Abs(outline.Distance(from) - outside) > 0.003 || isCutAt(middle))
            {
                continue;
            }

            probed++;
            foreach (double share in new[] { 0.08, 0.3, 0.55, 0.8, 0.97 })
            {
                double height = share * radius;
                double inset = gauge.First(new Point3(from.X, from.Y, height), new Point3(inward.X, inward.Y, 0)) - outside;
                Assert.True(Math.Abs(inset - Expected(radius, height)) <= Within,
                    $"at {middle}, {height:0.00} mm up: {inset:0.000} inside, not {Expected(radius, height):0.000}");
            }
        }

        Assert.True(probed >= 2, $"{probed} places were measured");
    }

    // The circle, and below the point where it leans by as much as may be its tangent.
    private static double Expected(double radius, double height)
    {
        double lean = Lean * Math.PI / 180;
        double tangent = radius * (1 - Math.Sin(lean));
        return height >= tangent ? radius - Math.Sqrt((radius * radius) - ((radius - height) * (radius - height)))
            : (radius * (1 - Math.Cos(lean))) + ((tangent - height) * Math.Tan(lean));
    }

    private static void AssertNothingHangs(Mesh mesh, double scale, Region outline, EdgePlan edge)
    {
        double hangs = 0;
        double looked = 0;
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            Point3[] corners = [.. mesh.Triangles.Slice(3 * i, 3).Select(vertex => mesh.Vertices[vertex].ToMillimetres())
                .Select(corner => new Point3(corner.X / scale, corner.Y / scale, corner.Z))];
            Point3 normal = Point3.Cross(corners[1] - corners[0], corners[2] - corners[0]);
            Point3 middle = (1.0 / 3) * (corners[0] + corners[1] + corners[2]);
            if (normal.Z >= 0 || middle.Z < 0.005 || corners.Max(corner => corner.Z) > edge.Radius + 0.01
                || outline.DistanceToOutline(middle.XY) > edge.Inset + 0.05)
            {
                continue;
            }

            looked += normal.Length / 2;
            if (-normal.Z > Math.Sin(Overhang * Math.PI / 180) * normal.Length)
            {
                hangs += normal.Length / 2;
            }
        }

        Assert.True(looked > 10, $"{looked} mm2 of edge were looked at");
        Assert.True(hangs < Fleck, $"{hangs} of {looked} mm2 lean too far");
    }
}
