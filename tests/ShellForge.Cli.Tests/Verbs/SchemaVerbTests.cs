using System.Text.Json;

namespace ShellForge.Cli.Tests.Verbs;

public class SchemaVerbTests
{
    [Theory]
    [InlineData("board")]
    [InlineData("profiles")]
    public void The_schema_is_json_and_says_which_draft(string kind)
    {
        using var bench = new Bench();

        Assert.Equal(0, bench.Run("schema", kind));
        Assert.True(bench.Json().TryGetProperty("$schema", out JsonElement _));
    }
}
