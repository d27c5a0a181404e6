using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

/// <summary>
/// The force that plans state for their bead, against a calculation that shares nothing with it: the end of each wall as a strip of beam
/// elements on the springs of its hoops, the rim in steps of a quarter of a degree, the bead as it stands in the plan, gaps and all.
/// </summary>
public class SnapForceOfPlansTests
{
    private const double Poisson = 0.35;
    private const double Friction = 0.3;
    private const double HandsMost = 150;
    private const int Steps = 1440;

    public static TheoryData<string, double> Outlines => new()
    {
        { "{disc: 40}", 40 }, { "{disc: 50}", 50 }, { "{disc: 60}", 60 }, { "{disc: 80}", 80 }, { "{disc: 100}", 100 },
        { "{disc: 120}", 120 },
        { "{disc: 140}", 140 }, { "{disc: 160}", 160 }, { "{ring: {outer: 92, bore: 46}}", 92 }, { "{ring: {outer: 140, bore: 60}}", 140 },
    };

    [Theory]
    [MemberData(nameof(Outlines))]
    public void The_force_that_a_plan_states_is_that_of_beams_on_springs_and_a_hand_gives_it(string outline, double outer)
    {
        BoardFile file = new WrittenBoard
        {
            Outline = outline,
            Holes = [string.Create(CultureInfo.InvariantCulture, $"{{circle: {outer - 9}, count: 3, from: 45, diameter: 2.7}}")],
            Pixels = string.Create(
                CultureInfo.InvariantCulture, $"{{package: \"2020\", circle: {outer - 22}, count: 8, from: 90, direction: cw}}"),
        }.Read();
        HousingPlan plan = HousingPlanner.Plan(file);
        SnapClosurePlan snap = Assert.IsType<SnapClosurePlan>(plan.Closure);
        FilamentProfile filament = file.Print.Shell;
        double wall = plan.Shell.Wall;
        double fromEnd = plan.Stack.PartingLine - snap.BeadZ;
        double land = plan.Stack.PartingLine
            - (snap.GrooveZ + (snap.Crest / 2) + (snap.GrooveDepth / Math.Tan(snap.Hold.Radians))) + snap.Crest;
        List<Bead> beads = [Seen(plan.Shell.Round!.Inner, snap.Interference, degrees => !IsIn(degrees, snap.Interruptions))];
        if (!snap.BoreHooks.IsEmpty)
        {
            beads.Add(Seen(
                plan.Shell.Round.BoreOuter, snap.BoreHookHeight - plan.Cover.TongueGap, degrees => IsIn(degrees, snap.BoreHooks)));
        }

        double force = file.Print.Printer.SnapForce * Most(beads, snap.LeadIn.Radians, plan.Stack.PartingLine - plan.Cover.LipBottom);
        Assert.InRange(snap.ClosingForce / force, 0.9, 1.1);
        Assert.InRange(snap.ClosingForce, 1, HandsMost);

        Bead Seen(double radius, double interference, Func<double, bool> has) => new(
            radius, interference, Math.Max(land, snap.Crest), 1 / (2 * Give(radius, wall, filament.ModulusMegapascals, fromEnd)),
            [.. Enumerable.Range(0, Steps).Select(i => has(360.0 * i / Steps))]);
    }

    // The cover is tilted by what its lip reaches in, and pressed down from any side.
    private static double Most(List<Bead> beads, double flank, double tilt)
    {
        double outer = beads.Max(bead => bead.Radius);
        double wedge = Math.Tan(flank + Math.Atan(Friction));
        double most = 0;
        for (int side = 0; side < Steps; side += Steps / 24)
        {
            for (double deep = 0; deep < tilt + 3; deep += 0.04)
            {
                double sum = 0;
                foreach (Bead bead in beads)
                {
                    double run = bead.Interference / Math.Tan(flank);
                    double line = bead.Stiffness * bead.Interference * bead.Radius * 2 * Math.PI / Steps;
                    for (int i = 0; i < Steps; i++)
                    {
                        double past = deep
                            - (tilt / 2 * (1 - (bead.Radius / outer * Math.Cos(2 * Math.PI * (i - side) / Steps))));
                        sum += !bead.Has[i] || past <= 0 || past > run + bead.Land ? 0
                            : line * (past < run ? wedge * past / run : Friction);
                    }
                }

                most = Math.Max(most, sum);
            }
        }

        return most;
    }

    // How far the end of a wall gives under a line load of 1 N/mm: a strip of it, 1 mm of the round.
    private static double Give(double radius, double thickness, double modulus, double fromEnd)
    {
        const int Elements = 400;
        double length = Math.Max(fromEnd, 0.5) / Math.Ceiling(Math.Max(fromEnd, 0.5) / 0.12);
        int loaded = 2 * (int)Math.Round(fromEnd / length);
        double bending = modulus * Math.Pow(thickness, 3) / (12 * (1 - (Poisson * Poisson)));
        double spring = modulus * thickness / (radius * radius);
        int size = 2 * (Elements + 1);
        double[][] matrix = [.. Enumerable.Range(0, size).Select(_ => new double[8])];
        double[] right = new double[size];
        right[loaded] = 1;
        double[][] stiff =
        [
            [12, 6 * length, -12, 6 * length], [6 * length, 4 * length * length, -6 * length, 2 * length * length],
            [-12, -6 * length, 12, -6 * length], [6 * length, 2 * length * length, -6 * length, 4 * length * length],
        ];
        for (int e = 0; e < Elements; e++)
        {
            for (int i = 0; i < 4; i++)
            {
                for (int j = 0; j < 4; j++)
                {
                    // Row, and column from the row's fourth to the left.
                    matrix[(2 * e) + i][j - i + 4] += bending / Math.Pow(length, 3) * stiff[i][j];
                }
            }

            matrix[2 * e][4] += spring * length / 2;
            matrix[(2 * e) + 2][4] += spring * length / 2;
        }

        for (int row = 0; row < size; row++)
        {
            for (int below = row + 1; below < Math.Min(row + 4, size); below++)
            {
                double factor = matrix[below][row - below + 4] / matrix[row][4];
                for (int column = row; column < Math.Min(row + 4, size); column++)
                {
                    matrix[below][column - below + 4] -= factor * matrix[row][column - row + 4];
                }

                right[below] -= factor * right[row];
            }
        }

        for (int row = size - 1; row >= 0; row--)
        {
            for (int column = row + 1; column < Math.Min(row + 4, size); column++)
            {
                right[row] -= matrix[row][column - row + 4] * right[column];
            }

            right[row] /= matrix[row][4];
        }

        return right[loaded];
    }

    private static bool IsIn(double degrees, IEnumerable<(Angle From, Angle Sweep)> sectors) => sectors.Any(sector =>
        (((degrees - sector.From.Degrees) % 360) + 360) % 360 < sector.Sweep.Degrees);

    private sealed record Bead(double Radius, double Interference, double Land, double Stiffness, bool[] Has);
}
