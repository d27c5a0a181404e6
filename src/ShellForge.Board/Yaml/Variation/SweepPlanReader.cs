using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Variation;

/// <summary>Reads plans.</summary>
public static class SweepPlanReader
{
    private const string NamePath = "name";

    /// <summary>
    /// Reads a plan. All mistakes are told at once, at their places; whether a path fits the board is told by the board's own reader.
    /// </summary>
    /// <param name="fileName">The file as the user named it, for places.</param>
    /// <param name="text">Its text.</param>
    /// <param name="profiles">Profiles that it may name.</param>
    public static SweepPlanResult Read(string fileName, string text, ProfileLibrary profiles)
    {
        var sink = new DiagnosticSink();
        PositionedNode? root = YamlTreeReader.Read(fileName, text, sink);
        SweepPlan? plan = null;
        if (root is not null && SweepPlanForm.Form.TryRead(root, new ReadingContext(sink, profiles), out ParsedPlan said))
        {
            plan = Resolved(fileName, said, profiles, sink);
        }

        return new SweepPlanResult(sink.HasErrors ? null : plan, sink.InOrder());
    }

    /// <summary>The JSON Schema of plans, draft 2020-12.</summary>
    public static string SchemaJson() => BoardSchema.Written("Plan of a sweep", SweepPlanForm.Form);

    private static SweepPlan Resolved(string file, ParsedPlan said, ProfileLibrary profiles, DiagnosticSink sink)
    {
        ImmutableArray<PlanAxis> axes =
        [
            .. said.Vary.Or([]).Select(axis => Axis([axis], profiles, sink)).OfType<PlanAxis>(),
            .. said.Together.Or([]).Select(axis => Axis(axis, profiles, sink)).OfType<PlanAxis>(),
        ];
        ImmutableArray<PlanSetting> derived =
            [.. said.Derive.Or([]).Select(d => Setting(d.Path, new ScalarNode(d.Path.Place, d.Text, false), sink))];
        if (said.Name.Given)
        {
            derived = [.. derived,
                new PlanSetting(NamePath, said.Name.Place, new PlanValue(new ScalarNode(said.Name.Place, said.Name.Value, false)))];
        }

        ListNode? list = said.Boards.Node as ListNode;
        var plan = new SweepPlan
        {
            File = file,
            Boards = [
                .. said.Boards.Value.Select(
                    (name, i) => PlanValue.Of(name, list?.Items[Math.Min(i, list.Items.Length - 1)].Place ?? said.Boards.Place))],
            Fixed = Settings(said.Fixed.Or([]), sink),
            Axes = axes,
            Except = [.. said.Except.Or([]).Select(entry => Settings(entry, sink))],
            Cases = [.. said.Cases.Or([]).Select(entry => new PlanCase(entry.Name.Text, entry.Name.Place, Settings(entry.Settings, sink)))],
            Derived = derived,
            Mark = said.Mark.Value,
            Prices = [.. said.Prices.Or([]).Select(price => (price.Filament.Text, price.PerKilogram))],
            SparesPercent = said.Spares.Value,
            Best = said.Best.Given ? said.Best.Value : null,
        };
        CheckPaths(plan, said, profiles, sink);
        return plan;
    }

    private static PlanAxis? Axis(
        ImmutableArray<(ScalarNode Path, AxisValues Values)> paths, ProfileLibrary profiles, DiagnosticSink sink)
    {
        ImmutableArray<(ScalarNode Path, ImmutableArray<PositionedNode> Values)> all =
            [.. paths.Select(path => (path.Path, path.Values.Of(profiles)))];
        foreach ((ScalarNode path, ImmutableArray<PositionedNode> values) in all)
        {
            PathStep.Parse(path.Text, path.Place, sink);
            if (values.IsEmpty)
            {
                sink.Error(path.Place, "no-values", $"'{path.Text}' has no values",
                    "expected a list, a range that reaches its end in steps, or a pattern that some profile fits");
            }
            else if (values.Length != all[0].Values.Length && !all[0].Values.IsEmpty)
            {
                sink.Error(
                    path.Place, "unequal-pairs",
                    string.Create(CultureInfo.InvariantCulture,
                        $"'{path.Text}' has {values.Length} values and '{all[0].Path.Text}' has {all[0].Values.Length}"),
                    "expected as many, since they go in pairs");
            }
        }

        return all.IsEmpty || all[0].Values.IsEmpty || all.Any(path => path.Values.Length != all[0].Values.Length)
            ? null
            : new PlanAxis(
                [.. all.Select(path => path.Path.Text)],
                [.. Enumerable.Range(0, all[0].Values.Length).Select(i =>
                    all.Select(path => new PlanSetting(path.Path.Text, path.Path.Place, new PlanValue(path.Values[i])))
                        .ToImmutableArray())]);
    }

    private static ImmutableArray<PlanSetting> Settings(ImmutableArray<(ScalarNode Path, PositionedNode Value)> settings,
        DiagnosticSink sink) =>
        [.. settings.Select(setting => Setting(setting.Path, setting.Value, sink))];

    private static PlanSetting Setting(ScalarNode path, PositionedNode value, DiagnosticSink sink)
    {
        PathStep.Parse(path.Text, path.Place, sink);
        return new PlanSetting(path.Text, path.Place, new PlanValue(value));
    }

    private static void CheckPaths(SweepPlan plan, ParsedPlan said, ProfileLibrary profiles, DiagnosticSink sink)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (PlanSetting setting in plan.Axes.SelectMany(axis => axis.Steps[0]).Where(setting => !seen.Add(setting.Path)))
        {
            sink.Error(setting.At, "duplicate-key", $"'{setting.Path}' is varied twice", "expected each path once");
        }

        // An exclusion that names what the plan doesn't vary would leave out nothing, or everything.
        string[] varied = [.. seen, SweepPlan.BoardWord];
        foreach (PlanSetting setting in plan.Except.SelectMany(entry => entry).Where(setting => !varied.Contains(setting.Path)))
        {
            sink.Error(
                setting.At, "not-varied", $"'{setting.Path}' is not varied here", "expected a path under 'vary' or 'together', or board",
                NearestName.In(setting.Path, varied));
        }

        foreach (PlanSetting setting in plan.Except.SelectMany(entry => entry))
        {
            PlanAxis? axis = plan.Axes.FirstOrDefault(candidate => candidate.Paths.Contains(setting.Path));
            string[] texts = axis is null ? []
                : [.. axis.Steps.SelectMany(step => step).Where(s => s.Path == setting.Path).Select(s => s.Value.Text)];
            if (axis is not null && !texts.Contains(setting.Value.Text))
            {
                sink.Error(
                    setting.Value.Place, "not-varied", $"'{setting.Value.Text}' is no value of '{setting.Path}' here",
                    "expected one of its values",
                    NearestName.In(setting.Value.Text, texts));
            }
        }

        if (plan.Best?.Along is { } along && !plan.Axes.Any(axis => axis.Paths is [var only] && only == along))
        {
            sink.Error(
                said.Best.Place, "not-varied", $"'{along}' is not varied by itself here", "expected a path under 'vary'",
                NearestName.In(along, seen));
        }

        if (plan.Best is { } wish && wish.Weights.All(one => one.Weight == 0))
        {
            sink.Error(said.Best.Place, "no-values", "nothing is wished for", "expected a word or a weight above 0");
        }

        foreach ((ScalarNode filament, _) in said.Prices.Or([]))
        {
            if (profiles.Filaments.Find(filament.Text) is null)
            {
                sink.Error(
                    filament.Place, "unknown-profile", $"there is no filament {filament.KindInWords}",
                    "expected the name of a filament (`profiles` lists them)",
                    profiles.Filaments.Nearest(filament.Text));
            }
        }

        foreach (PlanSetting setting in plan.Derived)
        {
            foreach (string word in PlanTemplate.Words(setting.Value.Raw).Where(word => !PlanTemplate.Knows(plan, word)))
            {
                string[] known = [SweepPlan.BoardWord, SweepPlan.CaseWord, .. seen, .. plan.Fixed.Select(s => s.Path)];
                sink.Error(
                    setting.Value.Place, "unknown-word", $"'{{{word}}}' stands for nothing here",
                    "expected one of " + string.Join(", ", known),
                    NearestName.In(word, known));
            }
        }
    }
}
