using System.Collections.Immutable;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Checks.Gauges;

/// <summary>A stretch of height over which a part's section was taken.</summary>
/// <param name="FromZ">Lower end, mm.</param>
/// <param name="ToZ">Upper end, mm.</param>
/// <param name="Outline">Section.</param>
public readonly record struct SectionSlab(double FromZ, double ToZ, Region Outline);

/// <summary>
/// A part as assembled, as slabs between the heights of its vertices. Between level faces a housing's walls are upright, so slabs say
/// it all; where walls slope (cones, chamfers, beads) slabs are cut to at most <see cref="Slope"/> and the section is taken in the
/// middle of each, so a gap is right to half of that.
/// </summary>
public static class AssembledSections
{
    /// <summary>Highest slab of a sloping stretch, mm.</summary>
    public const double Slope = 0.2;

    /// <summary>The slabs of a mesh, from below.</summary>
    public static ImmutableArray<SectionSlab> Of(Mesh mesh)
    {
        int[] levels = [.. mesh.Vertices.Select(v => v.Z).Distinct().Order()];
        var slabs = ImmutableArray.CreateBuilder<SectionSlab>();
        var spans = new List<(double From, double To)>();
        int step = Lattice.ToSteps(Slope);
        for (int i = 0; i + 1 < levels.Length; i++)
        {
            int pieces = Math.Max(1, (levels[i + 1] - levels[i] + step - 1) / step);
            for (int p = 0; p < pieces; p++)
            {
                long height = levels[i + 1] - levels[i];
                spans.Add(((levels[i] + (height * p / pieces)) * Lattice.Step, (levels[i] + (height * (p + 1) / pieces)) * Lattice.Step));
            }
        }

        ImmutableArray<Region> sections = Slicing.Layers(mesh, [.. spans.Select(span => (span.From + span.To) / 2)]);
        for (int i = 0; i < spans.Count; i++)
        {
            // Slabs of one upright stretch are one slab again.
            if (slabs.Count > 0 && slabs[^1].Outline.Equals(sections[i]) && slabs[^1].ToZ == spans[i].From)
            {
                slabs[^1] = slabs[^1] with { ToZ = spans[i].To };
            }
            else
            {
                slabs.Add(new SectionSlab(spans[i].From, spans[i].To, sections[i]));
            }
        }

        return slabs.ToImmutable();
    }
}
