using System.Collections.Immutable;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Variation;

/// <summary>A plan as said.</summary>
internal sealed record ParsedPlan(
    Parsed<ImmutableArray<string>> Boards,
    Parsed<ImmutableArray<(ScalarNode Path, PositionedNode Value)>> Fixed,
    Parsed<ImmutableArray<(ScalarNode Path, AxisValues Values)>> Vary,
    Parsed<ImmutableArray<ImmutableArray<(ScalarNode Path, AxisValues Values)>>> Together,
    Parsed<ImmutableArray<ImmutableArray<(ScalarNode Path, PositionedNode Value)>>> Except,
    Parsed<ImmutableArray<(ScalarNode Name, ImmutableArray<(ScalarNode Path, PositionedNode Value)> Settings)>> Cases,
    Parsed<ImmutableArray<(ScalarNode Path, string Text)>> Derive,
    Parsed<string> Name,
    Parsed<VariantMark> Mark,
    Parsed<ImmutableArray<(ScalarNode Filament, double PerKilogram)>> Prices,
    Parsed<double> Spares,
    Parsed<BestWish> Best);

/// <summary>The words of a plan.</summary>
internal static class SweepPlanForm
{
    /// <summary>What the first key of a plan says.</summary>
    public const string Format = "shellforge-plan/1";

    private const int MostPaths = 40;
    private const int MostEntries = 1000;
    private const int LongestText = 300;
    private const double MostSpares = 200;
    private const double HighestPrice = 1e6;

    private static readonly Kind<ImmutableArray<(ScalarNode, PositionedNode)>> Settings =
        new MapKind<PositionedNode>("values by path, such as {housing.walls: 4}", new AnyKind(), MostPaths);

    private static readonly Kind<string> BoardName = new TextKind("the name of a board file", LongestText);

    private static readonly Kind<string> WishWord = new WordKind<string>([.. BestWish.Words.Select(word => (word, word))]);

    private static readonly Form<ImmutableArray<(string, double)>> Weights = new("weights", keys =>
    {
        var weight = new NumberKind("a weight", 0, HighestPrice);
        FormKey<double>[] all =
        [
            keys.Optional("height", weight, "A mm of height."), keys.Optional("plastic", weight, "A gram of plastic."),
            keys.Optional("evenness", weight, "A percent of evenness."),
            keys.Optional("coolness", weight, "A kelvin of the warmest plastic."),
            keys.Optional("room", weight, "A mm of the tightest gap."),
        ];
        return values => [.. all.Where(key => values.Get(key).Given).Select(key => (key.Name, values.Get(key).Value))];
    });

    private static readonly Form<BestWish> Best = new("the wish for the best", keys =>
    {
        FormKey<ImmutableArray<(string, double)>> wish = keys.Required("wish", new ChoiceKind<ImmutableArray<(string, double)>>(
            Weights, new MappedKind<string, ImmutableArray<(string, double)>>(WishWord, word => [(word, 1.0)])),
                "What is wished: a word, or several with weights: {height: 1, plastic: 0.5}.");
        FormKey<string> along = keys.Optional("along", new TextKind("a path", LongestText),
            "A varied path whose values are searched with few looks, not all made.", "every variant is made");
        FormKey<RangeShape> shape =
            keys.Defaulted("shape", new WordKind<RangeShape>(("monotone", RangeShape.Monotone), ("smooth", RangeShape.Smooth)),
                "monotone: the wish rises or falls all along it, bisection; smooth: it has one best place, golden section.", "smooth");
        keys.Needs(shape, along);
        return values => new BestWish(values.Get(wish).Value, values.Get(along).Given ? values.Get(along).Value : null,
            values.Get(shape).Value);
    });

    /// <summary>The whole plan.</summary>
    public static Form<ParsedPlan> Form { get; } = new("the plan", keys =>
    {
        keys.Required("format", new WordKind<bool>((Format, true)), "Format and version of the file.");
        FormKey<ImmutableArray<string>> board = keys.Required("board", new ChoiceKind<ImmutableArray<string>>(
            new ListKind<string>("a list of board files", BoardName, 1, MostEntries),
            new MappedKind<string, ImmutableArray<string>>(BoardName, one => [one])),
                "A board file, or a list of them, from the folder of the plan.");
        var axes = new MapKind<AxisValues>("paths with the values each takes", AxisKinds.Axis, MostPaths);
        var fixedValues = keys.Optional("set", Settings, "Values that hold in every variant.");
        var vary = keys.Optional("vary", axes, "Paths with the values each takes: every value of one meets every value of the others.");
        var together =
            keys.Optional("together", new ListKind<ImmutableArray<(ScalarNode, AxisValues)>>("groups of paths", axes, 1, MostPaths),
                "Paths whose values go in pairs, first with first.");
        var except =
            keys.Optional("except", new ListKind<ImmutableArray<(ScalarNode, PositionedNode)>>("combinations", Settings, 1, MostEntries),
                "Combinations that are left out.");
        var cases =
            keys.Optional("cases", new MapKind<ImmutableArray<(ScalarNode, PositionedNode)>>("variants by name", Settings, MostEntries),
                "Variants with a name of their own, beside the combinations.");
        var derive = keys.Optional("derive", new MapKind<string>("texts by path", new TextKind("a text", LongestText), MostPaths),
            "Values made of others: a text with {path} in it.");
        var name = keys.Optional("name", new TextKind("a text", LongestText),
            "What each variant is called; {board} and {path} stand for its values.", "the board's name");
        var mark = keys.Defaulted("mark", new WordKind<VariantMark>(("inside", VariantMark.Inside), ("names", VariantMark.Names)),
            "inside: the variant's code stands in every part; names: only names tell it.", "inside");
        var prices =
            keys.Optional("prices", new MapKind<double>("prices by filament", new NumberKind("a price", 0, HighestPrice), MostPaths),
                "Price of a kilogram by filament, in your money.");
        var spares = keys.Defaulted("spares", new NumberKind("percent", 0, MostSpares),
            "How many more small parts are bought than used, percent.", "5");
        var best = keys.Optional("best", Best, "Which variant is wished for, among those without a stop.");
        return values => new ParsedPlan(
            values.Get(board), values.Get(fixedValues), values.Get(vary), values.Get(together), values.Get(except), values.Get(cases),
            values.Get(derive), values.Get(name), values.Get(mark), values.Get(prices), values.Get(spares), values.Get(best));
    });
}
