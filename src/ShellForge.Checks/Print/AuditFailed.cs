using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>A part whose mesh does not bound a solid.</summary>
public sealed class AuditFailed : IRule
{
    /// <inheritdoc />
    public string Name => "audit-failed";

    /// <inheritdoc />
    public string What => "Every part must evaluate to a mesh that bounds a solid, and to a solid that is not empty.";

    /// <inheritdoc />
    public string Why => "A slicer repairs an open or crossed mesh by guessing, and the print is then not what was checked.";

    /// <inheritdoc />
    public string Formula =>
        "exact audit: every edge used once each way, one fan a vertex, no degenerate triangle, triangles meet in shared corners and edges "
            + "only";

    /// <inheritdoc />
    public string Source => "ISO/ASTM 52915 and the 3MF core specification ask for closed, oriented, manifold meshes";

    /// <inheritdoc />
    public bool CanBeAccepted => false;

    /// <inheritdoc />
    public IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (MadePart part in housing.Parts)
        {
            KernelDefect? defect = part.InPrint.Defect;
            if (defect is not null)
            {
                yield return new Finding
                {
                    Rule = Name,
                    Severity = Severity.Stop,
                    Subject = part.Name,
                    Message = $"the {part.Name} has no clean mesh and is not written: {defect}",
                    At = part.ToAssembled(defect.Place),
                    Remedy = "this is a defect of the program: send the board file and the saved operands; a small change of a dimension "
                        + "may avoid it",
                };
            }
            else if (part.PrintMesh.IsEmpty)
            {
                yield return new Finding
                {
                    Rule = Name,
                    Severity = Severity.Stop,
                    Subject = part.Name,
                    Message = $"nothing is left of the {part.Name}: its solid is empty",
                    Remedy = "look at the dimensions that the report lists for this part under 'resolved'",
                };
            }
        }
    }
}
