using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Testing;
using ShellForge.Testing.Solids;

namespace ShellForge.Geometry.Tests.Booleans;

/// <summary>Trees that once failed: found by fuzzing, cut down to as few steps as failed, and kept.</summary>
public class CorpusTests
{
    public static TheoryData<string> Names =>
        [.. Directory.EnumerateFiles(Repository.At("tests", "corpus", "booleans"), "*.tree").Select(p => Path.GetFileName(p)!)
            .Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_tree_that_once_failed_is_a_clean_solid(string name)
    {
        SolidOutcome outcome = SolidEvaluator.Evaluate(TreeStep.Tree(TreeStep.Read(Repository.At("tests", "corpus", "booleans", name))));

        Assert.True(outcome.Solid is not null, outcome.Defect?.ToString());
        AuditReport report = MeshAudit.Run(outcome.Solid!.Mesh);
        Assert.True(report.IsClean, report.ToString());
    }
}
