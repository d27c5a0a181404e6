using System.Text.RegularExpressions;

namespace ShellForge.Architecture.Tests;

/// <summary>What a method is given fits in a head, and a name means one thing.</summary>
public class MethodTests
{
    private const int Most = 6;

    // Modifiers, a type unless it is a constructor, the name, its type parameters, and the bracket that opens the list.
    private static readonly Regex Declaration = new(
        @"^[ \t]+(?:(?:public|internal|private|protected|static|override|virtual|abstract|sealed|async|readonly|new|unsafe|extern|partial)"
            + @"\s+)+(?:[\w<>\[\],.?() ]+?\s+)?(?<name>[\w.]+)(?:<[^>(]*>)?\(",
        RegexOptions.Multiline);

    private static readonly Regex Text = new(@"""(?:\\.|[^""\\\n])*""|//[^\n]*", RegexOptions.None);

    private static readonly Regex TopLevelType = new(
        @"^(?:(?:public|internal|file|sealed|static|abstract|readonly|partial|ref)\s+)*"
            + @"(?:class|record struct|record class|record|struct|enum|interface)\s+(?<name>\w+)",
        RegexOptions.Multiline);

    private static readonly Regex Namespace = new(@"^namespace (?<name>[\w.]+);", RegexOptions.Multiline);

    // A finding and a refusal have a rule, a subject, a sentence, two numbers with their unit, a place and a remedy: each is told apart by
    // its place in some two hundred calls.
    private static readonly string[] Sentences = ["Found", "Refuse", "Replace"];

    [Fact]
    public void No_method_takes_more_than_six_parameters()
    {
        int met = 0;
        var tooLong = new List<string>();
        foreach (string path in Repository.SourceFiles)
        {
            string code = Text.Replace(File.ReadAllText(path), match => new string(' ', match.Length));
            foreach (Match declared in Declaration.Matches(code))
            {
                int line = code.LastIndexOf('\n', declared.Index + 1);
                string before = code[(line + 1)..(declared.Index + declared.Length)];
                if (Regex.IsMatch(before, @"\b(record|class|struct|return)\b|=|^\s*new\s")
                    || Sentences.Contains(declared.Groups["name"].Value))
                {
                    continue;
                }

                met++;
                int count = Parameters(code, declared.Index + declared.Length);
                if (count > Most)
                {
                    tooLong.Add($"{Repository.Relative(path)}: {declared.Groups["name"].Value} takes {count}");
                }
            }
        }

        Assert.True(met > 3000, $"only {met} methods were met");
        Assert.True(tooLong.Count == 0, string.Join('\n', tooLong));
    }

    [Fact]
    public void A_name_of_a_type_means_one_type()
    {
        IEnumerable<IGrouping<string, string>> names = Repository.SourceFiles
            .Select(path => File.ReadAllText(path))
            .SelectMany(code => TopLevelType.Matches(code).Select(type =>
                (Name: type.Groups["name"].Value, Namespace: Namespace.Match(code).Groups["name"].Value)))
            .Where(type => type.Namespace.Length > 0)
            .GroupBy(type => type.Name, type => type.Namespace);
        string[] twice = [.. names.Where(name => name.Distinct().Count() > 1)
            .Select(name => $"{name.Key}: {string.Join(", ", name.Distinct())}")];
        Assert.True(twice.Length == 0, string.Join('\n', twice));
    }

    // Commas at the depth of the list, up to the bracket that closes it.
    private static int Parameters(string code, int from)
    {
        int depth = 0;
        int commas = 0;
        int at = from;
        for (; depth >= 0 && at < code.Length; at++)
        {
            char letter = code[at];
            depth += letter is '(' or '[' or '<' or '{' ? 1 : letter is ')' or ']' or '>' or '}' ? -1 : 0;
            commas += letter == ',' && depth == 0 ? 1 : 0;
        }

        return string.IsNullOrWhiteSpace(code[from..(at - 1)]) ? 0 : commas + 1;
    }
}
