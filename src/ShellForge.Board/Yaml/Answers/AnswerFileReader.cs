using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Answers;

/// <summary>An answer as it stands in the file.</summary>
/// <param name="Key">The question's key.</param>
/// <param name="Text">The answer; empty where nothing is written.</param>
/// <param name="Place">Where it stands.</param>
public sealed record WrittenAnswer(string Key, string Text, FilePlace Place);

/// <summary>A coupon that was printed, with the answers to its questions.</summary>
/// <param name="Kind">Name of the kind of coupon.</param>
/// <param name="Filament">The filament it was printed of; null for that of the file.</param>
/// <param name="Insert">The insert it was drawn for; null for kinds that need none.</param>
/// <param name="Plug">The connector whose plug it was drawn for; null for kinds that need none.</param>
/// <param name="Around">The value its steps lie around; null for the profile's own.</param>
/// <param name="Answers">The answers.</param>
/// <param name="Place">Where it begins in the file.</param>
public sealed record AnsweredCoupon(
    string Kind, FilamentProfile? Filament, InsertProfile? Insert, PackageProfile? Plug, double? Around,
    ImmutableArray<WrittenAnswer> Answers, FilePlace Place);

/// <summary>A file of answers.</summary>
/// <param name="Printer">The printer, as its profile is before anything of it was measured.</param>
/// <param name="Filament">The filament of all coupons that name none, likewise.</param>
/// <param name="Coupons">The coupons.</param>
public sealed record AnswerFile(PrinterProfile Printer, FilamentProfile Filament, ImmutableArray<AnsweredCoupon> Coupons);

/// <summary>What came of reading a file of answers.</summary>
/// <param name="File">The file; null when there was an error.</param>
/// <param name="Diagnostics">Everything there is to say about it.</param>
public sealed record AnswerReadResult(AnswerFile? File, ImmutableArray<Diagnostic> Diagnostics);

/// <summary>Reads the answers to coupons, as <c>coupon</c> wrote the file and its user filled it in.</summary>
public static class AnswerFileReader
{
    /// <summary>What the first key of the file says.</summary>
    public const string Format = "shellforge-answers/1";

    private const int MostCoupons = 50;
    private const double LeastAround = -10;
    private const double MostAround = 200;

    private static readonly Form<AnsweredCoupon> Coupon = new("a coupon", keys =>
    {
        FormKey<string> kind = keys.Required("kind", ProfileForms.ProfileNumbers.Word, "Kind of coupon.");
        FormKey<FilamentProfile> filament = keys.Optional("filament", new ProfileKind<FilamentProfile>("a filament", l => l.Filaments),
            "The filament it was printed of, where that is not the file's.");
        FormKey<InsertProfile> insert = keys.Optional("insert", new ProfileKind<InsertProfile>("an insert", l => l.Inserts),
            "The insert it was drawn for.");
        FormKey<PackageProfile> plug = keys.Optional("plug", new ProfileKind<PackageProfile>("a package", l => l.Packages),
            "The connector whose plug it was drawn for.");
        FormKey<double> around = keys.Optional("around", new NumberKind("a value", LeastAround, MostAround),
            "The value its steps lie around.");
        FormKey<ImmutableArray<WrittenAnswer>> answers = keys.Required("answers", new AnswersKind(), "The answers by question.");
        return values => new AnsweredCoupon(
            values.Get(kind).Value,
            values.Get(filament).Given ? values.Get(filament).Value : null,
            values.Get(insert).Given ? values.Get(insert).Value : null,
            values.Get(plug).Given ? values.Get(plug).Value : null,
            values.Get(around).Given ? values.Get(around).Value : null,
            values.Get(answers).Value,
            values.Node.Place);
    });

    private static readonly Form<AnswerFile> File = new("a file of answers", keys =>
    {
        keys.Required("format", new WordKind<bool>((Format, true)), "Format and version of the file.");
        FormKey<PrinterProfile> printer = keys.Required("printer", new ProfileKind<PrinterProfile>("a printer", l => l.Printers),
            "The printer.");
        FormKey<FilamentProfile> filament = keys.Required("filament", new ProfileKind<FilamentProfile>("a filament", l => l.Filaments),
            "The filament.");
        FormKey<ImmutableArray<AnsweredCoupon>> coupons =
            keys.Required("coupons", new ListKind<AnsweredCoupon>("coupons", Coupon, 1, MostCoupons), "What was printed.");
        return values => new AnswerFile(values.Get(printer).Value, values.Get(filament).Value, values.Get(coupons).Value);
    });

    /// <summary>Reads a file of answers; all mistakes are told at once.</summary>
    /// <param name="fileName">The file as the user named it, for places.</param>
    /// <param name="text">Its text.</param>
    /// <param name="profiles">Profiles that it may name.</param>
    public static AnswerReadResult Read(string fileName, string text, ProfileLibrary profiles)
    {
        var sink = new DiagnosticSink();
        AnswerFile? file = null;
        if (YamlTreeReader.Read(fileName, text, sink) is { } root
            && File.TryRead(root, new ReadingContext(sink, profiles), out AnswerFile read))
        {
            file = read;
        }

        return new AnswerReadResult(sink.HasErrors ? null : file, sink.InOrder());
    }

    // Answers by question; one that is not there yet is empty.
    private sealed class AnswersKind : Kind<ImmutableArray<WrittenAnswer>>
    {
        private const int MostAnswers = 60;
        private const int LongestAnswer = 60;

        public override string Expected => "answers by question";

        public override bool Suits(PositionedNode node) => node is MappingNode;

        public override bool TryRead(PositionedNode node, ReadingContext context, out ImmutableArray<WrittenAnswer> value)
        {
            value = [];
            if (node is not MappingNode mapping || mapping.Entries.Length > MostAnswers)
            {
                return Refuse(node, context, out value);
            }

            var answers = ImmutableArray.CreateBuilder<WrittenAnswer>();
            foreach (MappingEntry entry in mapping.Entries)
            {
                if (entry.Value is not ScalarNode scalar || scalar.Text.Length > LongestAnswer)
                {
                    context.Sink.Error(entry.Value.Place, "bad-answer", $"the answer to '{entry.Key.Text}' is no number and no word",
                        "expected one of both");
                    continue;
                }

                answers.Add(new WrittenAnswer(entry.Key.Text, scalar.IsNull ? "" : scalar.Text.Trim(), scalar.Place));
            }

            value = answers.ToImmutable();
            return true;
        }

        public override void WriteSchema(SchemaWriter schema) => schema.Map(new TextKind("an answer", LongestAnswer), MostAnswers);
    }
}
