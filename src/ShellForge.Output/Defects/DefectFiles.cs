using System.Collections.Immutable;
using System.Text;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Output.Files;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Defects;

/// <summary>
/// What is saved when a part has no clean mesh: the operands on the lattice with the operation over them, and the board file, so that
/// the defect can be shown again without anything else.
/// </summary>
public static class DefectFiles
{
    /// <summary>The files; none when every part is sound.</summary>
    /// <param name="housing">What was made.</param>
    /// <param name="boardText">The text of its board file.</param>
    public static ImmutableArray<OutputFile> Of(HousingUnderCheck housing, string boardText)
    {
        var files = ImmutableArray.CreateBuilder<OutputFile>();
        foreach (MadePart part in housing.Parts)
        {
            KernelDefect? defect = part.InPrint.Defect;
            if (defect is not null)
            {
                files.Add(new OutputFile($"defect-{part.Name}.json", DefectDocument.Bytes(defect)));
            }
        }

        if (files.Count > 0)
        {
            files.Add(new OutputFile("defect-board.yaml", Encoding.UTF8.GetBytes(boardText)));
        }

        return files.ToImmutable();
    }
}
