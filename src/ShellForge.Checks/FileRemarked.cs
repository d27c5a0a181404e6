using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks;

/// <summary>Something that reading the board file showed to be odd. Each finding carries the remark's own rule name.</summary>
public sealed class FileRemarked : IRule
{
    /// <inheritdoc />
    public string Name => "file-remarked";

    /// <inheritdoc />
    public string What => "What the board file says must fit together.";

    /// <inheritdoc />
    public string Why => "A key that has no effect, or an LED that stands over the edge, is a slip of the pen that the print will show.";

    /// <inheritdoc />
    public string Formula => "as the reader says that remarked it";

    /// <inheritdoc />
    public string Source => "the board file";

    /// <inheritdoc />
    public IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (Diagnostic remark in housing.Board.Remarks.Where(
            remark => remark.Code is not (Diagnostic.StillToSay or Diagnostic.HeightUnknown)))
        {
            yield return new Finding
            {
                Rule = remark.Code,
                Severity = remark.Severity == DiagnosticSeverity.Note ? Severity.Note : Severity.Warn,
                Subject = "board file",
                Message = remark.Message,
                InFile = new FilePlace(remark.File, remark.Line, remark.Column),
                Remedy = remark.Expected ?? "look whether that is what you mean",
            };
        }
    }
}
