using System.Text;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Step;

/// <summary>
/// STEP files (ISO 10303-21) of the application protocol AP214, which CAD programs read most: a boundary of planes, cylinders and cones
/// with lines, arcs and ellipses. Coplanar triangles are one face. Triangles that stand for a cylinder or cone about an upright axis are
/// that surface, whole or cut: a round face is wider than its chords by up to the chord error, and where a plane cuts a chord the corner
/// moves along that plane onto the surface. Chords stay flat where a corner has no such place, where two faces have no such curve in
/// common or come closer than two micrometres, and about other axes. No corner lies more than half a micrometre off its surface. What is
/// to be written is checked first; a face that would not close is written as the flat facets it came from.
/// </summary>
public static class StepWriter
{
    /// <summary>Writes a part as one file.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="name">Name of the part.</param>
    /// <param name="mesh">A closed mesh, mm.</param>
    /// <param name="widen">What x and y are multiplied by first; 1 for the size it has.</param>
    /// <param name="place">Where it goes then: turned and shifted only. Upright axes are the mesh's own, before that.</param>
    /// <exception cref="ArgumentException">The mesh is not closed.</exception>
    public static void Write(Stream stream, string name, Mesh mesh, double widen, Transform3 place)
    {
        var text = new StepText();
        int context = StepProduct.Context(text);
        StepProduct.Describe(text, name, context, [.. StepSolids.Of(text, mesh, widen, place)]);
        stream.Write(Encoding.ASCII.GetBytes(text.File(name).ReplaceLineEndings("\n")));
    }
}

/// <summary>The entities round the shape: units, product, representation.</summary>
internal static class StepProduct
{
    /// <summary>Millimetres, and how far points may lie off their curves and surfaces.</summary>
    public static int Context(StepText text)
    {
        int length = text.Add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
        int angle = text.Add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
        int solid = text.Add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
        double off = WrittenCheck.Accuracy * Lattice.Step;
        int uncertain =
            text.Add($"UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE({StepText.Length(off)}),#{length},'distance_accuracy_value','')");
        return text.Add(
            $"(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((#{uncertain}))GLOBAL_UNIT_ASSIGNED_CONTEXT((#{length},#{angle},#{solid}))REPRESENTATION_CONTEXT('',''))");
    }

    /// <summary>The product that has the solids as its shape.</summary>
    public static void Describe(StepText text, string name, int context, int[] solids)
    {
        string called = StepText.Quoted(name);
        int application = text.Add("APPLICATION_CONTEXT('automotive design')");
        text.Add($"APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,#{application})");
        int mechanical = text.Add($"PRODUCT_CONTEXT('',#{application},'mechanical')");
        int product = text.Add($"PRODUCT({called},{called},'',(#{mechanical}))");
        text.Add($"PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(#{product}))");
        int formation = text.Add($"PRODUCT_DEFINITION_FORMATION('','',#{product})");
        int design = text.Add($"PRODUCT_DEFINITION_CONTEXT('part definition',#{application},'design')");
        int definition = text.Add($"PRODUCT_DEFINITION('design','',#{formation},#{design})");
        int shape = text.Add($"PRODUCT_DEFINITION_SHAPE('','',#{definition})");
        int frame = text.Frame(Point3.Zero, new Point3(0, 0, 1), new Point3(1, 0, 0));
        int representation = text.Add($"ADVANCED_BREP_SHAPE_REPRESENTATION({called},{StepText.List([frame, .. solids])},#{context})");
        text.Add($"SHAPE_DEFINITION_REPRESENTATION(#{shape},#{representation})");
    }
}
