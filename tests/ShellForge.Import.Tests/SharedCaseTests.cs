using System.Text.Json;
using ShellForge.Import.Writing;

namespace ShellForge.Import.Tests;

/// <summary>Every shared case against its own expected.json, whatever that file lists.</summary>
public class SharedCaseTests
{
    public static TheoryData<string> Names
    {
        get
        {
            var data = new TheoryData<string>();
            foreach (string name in SharedBoards.Cases().DefaultIfEmpty(""))
            {
                data.Add(name);
            }

            return data;
        }
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public void A_shared_case_reads_as_expected(string name)
    {
        Skip.If(name.Length == 0, "no folder shared/boards beside or above the repository");
        string folder = Path.Combine(SharedBoards.Folder!, name);
        using JsonDocument expected = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "expected.json")));
        ImportResult result = SharedBoards.Import(folder);
        using JsonDocument read = JsonDocument.Parse(ImportJson.Text(result));
        var comparison = new CaseComparison(expected.RootElement, read.RootElement);
        comparison.Run();
        Assert.True(comparison.Checked > 0, "the case lists nothing that is compared");
        Assert.True(comparison.Wrong.Count == 0, string.Join('\n', comparison.Wrong) + "\n" + string.Join('\n', result.Diagnostics));
    }
}
