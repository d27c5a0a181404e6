using ShellForge.Testing;

namespace ShellForge.Checks.Tests;

public class RulesPageTests
{
    [Fact]
    public void The_page_says_what_the_rules_say()
    {
        string path = Repository.At("src", "ShellForge.Checks", "RULES.md");
        string page = RulesPage.Text(RuleList.All);
        if (Golden.Accepting)
        {
            File.WriteAllText(path, page);
        }

        Assert.Equal(page,
            File.Exists(path) ? File.ReadAllText(path).ReplaceLineEndings("\n") : "(no page: accept it with SHELLFORGE_ACCEPT=1)");
    }

    [Fact]
    public void Every_rule_has_a_name_of_its_own_and_says_what_why_how_and_whence()
    {
        Assert.Equal(RuleList.All.Length, RuleList.All.Select(rule => rule.Name).Distinct().Count());
        Assert.All(RuleList.All, rule =>
        {
            Assert.Matches("^[a-z]+(-[a-z]+)*$", rule.Name);
            Assert.All(new[] { rule.What, rule.Why, rule.Formula, rule.Source }, text => Assert.InRange(text.Length, 10, 600));
            Assert.All(new[] { rule.What, rule.Why }, text => Assert.EndsWith(".", text, StringComparison.Ordinal));
            Assert.All(new[] { rule.Formula, rule.Source }, text => Assert.False(text.EndsWith('.')));
        });
    }
}
