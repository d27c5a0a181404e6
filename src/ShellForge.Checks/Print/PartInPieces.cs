using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Measuring;
using ShellForge.Planning.Hands;

namespace ShellForge.Checks.Print;

/// <summary>A part that comes off the bed in other pieces than were planned.</summary>
public sealed class PartInPieces : IRule
{
    /// <inheritdoc />
    public string Name => "part-in-pieces";

    /// <inheritdoc />
    public string What => "Every part must be one body, or as many as the plan says.";

    /// <inheritdoc />
    public string Why => "What hangs on nothing comes off the bed as a loose piece, and what it was to hold is not held.";

    /// <inheritdoc />
    public string Formula => "closed surfaces of the mesh, beside those that the plan says";

    /// <inheritdoc />
    public string Source => "the plan: a clamp ring may be in pieces, each with its screw";

    /// <inheritdoc />
    public bool CanBeAccepted => false;

    /// <inheritdoc />
    public IEnumerable<Finding> Check(HousingUnderCheck housing) =>
        from part in housing.Parts
        where part.IsSound && !part.PrintMesh.IsEmpty && part.Plan.Pieces is not null
        let pieces = Measure.Shells(part.PrintMesh.Mesh)
        where pieces != part.Plan.Pieces
        select new Finding
        {
            Rule = Name,
            Severity = Severity.Stop,
            Subject = part.Name,
            Message = $"the {part.Name} comes out in {HandWords.Count(pieces, "piece", "pieces")} instead of {part.Plan.Pieces}",
            Measured = pieces,
            Limit = part.Plan.Pieces,
            Remedy = "this is a defect of the program: send the board file; a small change of a dimension may avoid it",
        };
}
