using ShellForge.Physics.Heat;

namespace ShellForge.Physics.Tests.Heat;

public class FieldSolutionTests
{
    [Fact]
    public void Print()
    {
        var cases = new List<(string, FieldCase)> { ("tide", HeatCases.Tide), ("dome", HeatCases.Dome), ("mooring", HeatCases.Mooring) };
        foreach (double d in new[] { 100.0 })
            foreach (double below in new[] { 1, 3, 7, 15.0 })
                foreach (double above in new[] { 1, 5, 15.0 })
                    cases.Add(($"disc {d} {below}/{above}", new FieldCase { BoardOuter = d / 2, Below = below, Above = above, Sources = [(d * .35, d * .4, 0.00012 * d * d)] }));
        foreach (double d in new[] { 100.0 })
            foreach (double below in new[] { 2, 5, 15.0 })
                foreach (double above in new[] { 2, 6, 15.0 })
                    cases.Add(($"ring {d} {below}/{above}", new FieldCase { BoardOuter = d / 2, BoardInner = d * .3, BoreGap = 1, Below = below, Above = above, WindowFrom = d * .35, WindowTo = d * .45, Rims = [(d * .34, .86), (d * .46, .86)], Sources = [(d * .38, d * .42, 0.00008 * d * d)] }));
        foreach ((string n, FieldCase c) in cases)
        {
            var s = new FieldSolution(c, 1.5);
            HeatModel.Of(HeatCases.InputOf(c), HeatCases.Typical); var w = System.Diagnostics.Stopwatch.StartNew();
            HeatResult m = HeatModel.Of(HeatCases.InputOf(c), HeatCases.Typical);
            Console.WriteLine(FormattableString.Invariant($"{n,-22} board {s.Board:0.0}/{m[HeatBody.Board].Mean:0.0} max {s.BoardWarmest:0.0}/{m[HeatBody.Board].Celsius:0.0} front {s.FrontOutside:0.0}/{m[HeatBody.FrontOutside].Mean:0.0} side {s.SideOutside:0.0}/{m[HeatBody.SideOutside].Mean:0.0} floor {s.Floor:0.0}/{m[HeatBody.FloorInside].Mean:0.0} ({m[HeatBody.Board].Low:0.0} to {m[HeatBody.Board].High:0.0}) leaving {s.Leaving:0.000} {m.LeavingWatts:0.000} of {c.HeatWatts:0.000} model {w.ElapsedMilliseconds} ms  worst {new[] { s.Board - m[HeatBody.Board].Mean, s.FrontOutside - m[HeatBody.FrontOutside].Mean, s.Floor - m[HeatBody.FloorInside].Mean }.MaxBy(Math.Abs):0.0}"));
        }
    }
}
