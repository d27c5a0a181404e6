using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Index;

/// <summary>
/// What an index has to know of all rows before it shows the first: kept small, whatever their number. Found in one pass.
/// </summary>
internal sealed class IndexSurvey
{
    // An axis with more values than that is shown by the spread over so many groups of its order.
    private const int MostValuesPlotted = 24;

    private readonly List<string> _axes = [];
    private readonly Dictionary<string, List<string>> _values = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Axis, string Value, int Column), Spread> _spreads = [];
    private readonly Dictionary<string, string> _resolved = new(StringComparer.Ordinal);
    private readonly HashSet<string> _differing = new(StringComparer.Ordinal);
    private readonly HashSet<IndexColumn> _filled = [];
    private int _housings;

    /// <summary>Takes a look at all rows.</summary>
    public static IndexSurvey Of(IEnumerable<VariantRow> rows)
    {
        var survey = new IndexSurvey();
        foreach (VariantRow row in rows)
        {
            survey.Add(row);
        }

        return survey;
    }

    /// <summary>Rows there are.</summary>
    public int Count { get; private set; }

    /// <summary>Rows of each outcome: to print, with warnings, with a stop, without a housing.</summary>
    public (int Print, int Minds, int Stops, int Without) Outcomes { get; private set; }

    /// <summary>What is varied, in the order in which it is met.</summary>
    public IReadOnlyList<string> Axes => _axes;

    /// <summary>Whether several boards or cases are among the rows.</summary>
    public bool HasCases { get; private set; }

    /// <summary>Whether there is more than one board.</summary>
    public bool HasBoards { get; private set; }

    /// <summary>Columns in which any housing has a figure.</summary>
    public IEnumerable<IndexColumn> Columns => IndexColumn.All.Where(_filled.Contains);

    /// <summary>Values of the plan that are not the same in all housings, by path.</summary>
    public IReadOnlySet<string> Differing => _differing;

    /// <summary>Axes with what their values do to figures: those worth a plot.</summary>
    public IEnumerable<(string Axis, IReadOnlyList<string> Values)> PlottedAxes =>
        _axes.Where(axis => _values[axis].Count is > 1 and <= MostValuesPlotted)
            .Select(axis => (axis, (IReadOnlyList<string>)_values[axis]));

    /// <summary>The spread of a column where an axis has a value; null where no housing has both.</summary>
    public Spread? SpreadOf(string axis, string value, int column) => _spreads.GetValueOrDefault((axis, value, column));

    private string? FirstBoard { get; set; }

    private void Add(VariantRow row)
    {
        Count++;
        HasCases |= row.Case is not null;
        FirstBoard ??= row.Board;
        HasBoards |= row.Board != FirstBoard;
        (int print, int minds, int stops, int without) = Outcomes;
        Outcomes = row.Housing switch
        {
            null => (print, minds, stops, without + 1),
            { Stops: > 0 } => (print, minds, stops + 1, without),
            { Warnings: > 0 } => (print, minds + 1, stops, without),
            _ => (print + 1, minds, stops, without),
        };
        foreach (NamedText value in row.Values)
        {
            if (!_values.TryGetValue(value.Name, out List<string>? values))
            {
                _axes.Add(value.Name);
                _values.Add(value.Name, values = []);
            }

            if (values.Count <= MostValuesPlotted && !values.Contains(value.Text))
            {
                values.Add(value.Text);
            }
        }

        if (row.Housing is { } housing)
        {
            _filled.UnionWith(IndexColumn.All.Where(column => column.Of(housing) is not null));
            AddFigures(row, housing);
            AddResolved(housing);
        }
    }

    private void AddFigures(VariantRow row, HousingFigures housing)
    {
        foreach (NamedText value in row.Values.Where(value => _values[value.Name].Contains(value.Text)))
        {
            for (int i = 0; i < IndexColumn.All.Length; i++)
            {
                if (IndexColumn.All[i].Of(housing) is { } figure)
                {
                    _spreads[(value.Name, value.Text, i)] =
                        (_spreads.GetValueOrDefault((value.Name, value.Text, i)) ?? Spread.None).With(figure);
                }
            }
        }
    }

    private void AddResolved(HousingFigures housing)
    {
        _housings++;
        foreach (NamedText decision in housing.Resolved)
        {
            // One that others don't have differs as well.
            if (!_resolved.TryAdd(decision.Name, decision.Text) ? _resolved[decision.Name] != decision.Text : _housings > 1)
            {
                _differing.Add(decision.Name);
            }
        }

        if (housing.Resolved.Count < _resolved.Count)
        {
            HashSet<string> there = [.. housing.Resolved.Select(decision => decision.Name)];
            _differing.UnionWith(_resolved.Keys.Where(path => !there.Contains(path)));
        }
    }
}

/// <summary>Least, greatest and mean of some figures.</summary>
internal sealed record Spread(double Least, double Greatest, double Sum, int Count)
{
    public static Spread None { get; } = new(double.PositiveInfinity, double.NegativeInfinity, 0, 0);

    public double Mean => Sum / Count;

    public Spread With(double figure) => new(Math.Min(Least, figure), Math.Max(Greatest, figure), Sum + figure, Count + 1);
}
