using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>A machine screw in a profile file.</summary>
internal static class ScrewForm
{
    private static readonly WordKind<ScrewHead> Head = new(
        ("pan", ScrewHead.Pan), ("cap", ScrewHead.Cap), ("button", ScrewHead.Button), ("countersunk", ScrewHead.Countersunk));

    private static readonly Form<SourcedList> Stock = new("lengths with their source", keys =>
    {
        FormKey<ImmutableArray<double>> values = keys.Required(
            "values", new ListKind<double>("lengths, rising", new LengthKind("a length", 1, 200), 1, 60), "The lengths.");
        FormKey<string> source = keys.Required("source", new SourceKind(), "Where they come from.");
        return said => new SourcedList([.. said.Get(values).Value.Order()], said.Get(source).Value);
    });

    /// <summary>The mapping below the screw's name.</summary>
    public static Form<Func<string, ScrewProfile>> Form { get; } = new("a screw", keys =>
    {
        FormKey<string> thread = keys.Required("thread", ProfileNumbers.Word, "Thread, such as M2.5.");
        FormKey<ScrewHead> head = keys.Required("head", Head, "Shape of its head.");
        FormKey<Sourced> threadDiameter = keys.Required("thread-diameter", ProfileNumbers.Length(0.5, 20), "Nominal thread diameter.");
        FormKey<Sourced> headDiameter = keys.Required("head-diameter", ProfileNumbers.Length(1, 40), "Largest head diameter.");
        FormKey<Sourced> headHeight = keys.Required("head-height", ProfileNumbers.Length(0.3, 20), "Largest head height.");
        FormKey<Sourced> clearance = keys.Required("clearance-hole", ProfileNumbers.Length(0.5, 25),
            "Hole it passes, before the printer's allowance.");
        FormKey<Sourced> washerDiameter = keys.Required("washer-diameter", ProfileNumbers.Length(1, 40), "Washer outside.");
        FormKey<Sourced> washerThickness = keys.Required("washer-thickness", ProfileNumbers.Length(0.1, 5), "Washer thickness.");
        FormKey<Sourced> least = keys.Required("engagement-minimum", ProfileNumbers.Length(0.5, 30), "Least engagement in brass.");
        FormKey<Sourced> wanted = keys.Required("engagement-default", ProfileNumbers.Length(0.5, 30), "Wanted engagement in brass.");
        FormKey<SourcedList> stock = keys.Required("stock-lengths", Stock, "Lengths it is sold in.");
        FormKey<Sourced> driver = keys.Required("driver-diameter", ProfileNumbers.Length(1, 30), "Envelope of the driver above the head.");
        return values => name => new ScrewProfile
        {
            Name = name,
            Thread = values.Get(thread).Value,
            Head = values.Get(head).Value,
            ThreadDiameter = values.Get(threadDiameter).Value,
            HeadDiameter = values.Get(headDiameter).Value,
            HeadHeight = values.Get(headHeight).Value,
            ClearanceHole = values.Get(clearance).Value,
            WasherDiameter = values.Get(washerDiameter).Value,
            WasherThickness = values.Get(washerThickness).Value,
            EngagementMinimum = values.Get(least).Value,
            EngagementDefault = values.Get(wanted).Value,
            StockLengths = values.Get(stock).Value.Values,
            StockLengthsSource = values.Get(stock).Value.Source,
            DriverDiameter = values.Get(driver).Value,
        };
    });
}
