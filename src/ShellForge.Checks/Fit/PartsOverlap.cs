using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Fit;

/// <summary>Two parts of the board in one place.</summary>
public sealed class PartsOverlap() : Rule(
    "parts-overlap",
    "No two parts on one side of the board may take the same room.",
    "It says that a position, a rotation or a size is wrong in the file, and then nothing built on it can be trusted.",
    "least width of the common area of the two bodies in plan, at any slant, where their heights overlap; up to the spread of body sizes "
        + "it is a note",
    "typical body tolerance 0.2 mm: check your datasheet")
{
    private const double BodySpread = 0.2;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        // Joints are left out: a connector's own joints lie under neighbours of the other side by design.
        BoardBody[] parts = [.. BoardBody.Of(housing.Plan).Where(part => !part.IsJoint)];
        for (int i = 0; i < parts.Length; i++)
        {
            for (int j = i + 1; j < parts.Length; j++)
            {
                BoardBody a = parts[i];
                BoardBody b = parts[j];
                if (a.Side != b.Side || IsHung(housing, a) || IsHung(housing, b)
                    || !a.Outline.Bounds.Touches(b.Outline.Bounds) || a.FromZ >= b.ToZ || b.FromZ >= a.ToZ)
                {
                    continue;
                }

                Region common = a.Outline.Intersect(b.Outline);
                double width = CommonWidth.Of(common);
                if (width > BodySpread)
                {
                    yield return Found(
                        Severity.Stop, a.Ref, $"it overlaps {b.Ref} by {width:0.00} mm", width, BodySpread,
                        new(common.Bounds.Centre.X, common.Bounds.Centre.Y, a.FarPoint.Z),
                        $"correct position, rotation or size of {a.Ref} or {b.Ref}");
                }
            }
        }
    }

    // What hangs on spacers over other parts has a rule of its own.
    private static bool IsHung(HousingUnderCheck housing, BoardBody body) =>
        body.Ref == SecondBoardSpec.WireWord && !housing.Plan.Spacers.IsEmpty;
}
