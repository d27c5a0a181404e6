using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Answers;
using ShellForge.Coupons.Answers;

namespace ShellForge.Coupons.Calibrating;

/// <summary>Something wrong in a file of answers, with its place.</summary>
/// <param name="Place">Where.</param>
/// <param name="Message">What, and what to do.</param>
public sealed record CalibrationFault(FilePlace Place, string Message);

/// <summary>A question that has no answer yet.</summary>
/// <param name="Coupon">Number of the coupon in the file.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Question">The question.</param>
/// <param name="Place">Where its answer belongs.</param>
public sealed record OpenQuestion(int Coupon, CouponKind Kind, Question Question, FilePlace Place);

/// <summary>What was found on a coupon.</summary>
/// <param name="Kind">Kind of coupon.</param>
/// <param name="Wish">What it was drawn for.</param>
/// <param name="Values">Values for profiles.</param>
/// <param name="Raw">The answers as they were given, for the record.</param>
public sealed record CouponFound(CouponKind Kind, CouponWish Wish, ImmutableArray<MeasuredValue> Values, string Raw)
{
    /// <summary>Name of its record: a coupon for one insert stands beside those for others.</summary>
    public string Record => Values.FirstOrDefault(value => value.For is not null)?.For is { } thing ? $"{Kind.Name}/{thing}" : Kind.Name;
}

/// <summary>A coupon to print since no step of another one fits.</summary>
/// <param name="After">The kind of which no step fits.</param>
/// <param name="Kind">The kind to print: the same with other steps, or one that tells why.</param>
/// <param name="Wish">What it is drawn for.</param>
public sealed record NextCoupon(CouponKind After, CouponKind Kind, CouponWish Wish);

/// <summary>What the answers to a file of coupons mean, or what is wrong with them.</summary>
public sealed record Calibration
{
    /// <summary>What is wrong; then nothing else is here.</summary>
    public ImmutableArray<CalibrationFault> Faults { get; init; } = [];

    /// <summary>What was found, coupon by coupon.</summary>
    public ImmutableArray<CouponFound> Found { get; init; } = [];

    /// <summary>What else there is to say.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Coupons to print next, each with the one of which no step fits, and what it is drawn for.</summary>
    public ImmutableArray<NextCoupon> Next { get; init; } = [];

    /// <summary>
    /// The questions that have no answer in the file, in the order of asking. Kinds and inserts that are wrong are told as faults.
    /// </summary>
    public static (ImmutableArray<OpenQuestion> Open, ImmutableArray<CalibrationFault> Faults) Questions(AnswerFile file)
    {
        var open = ImmutableArray.CreateBuilder<OpenQuestion>();
        var faults = ImmutableArray.CreateBuilder<CalibrationFault>();
        for (int i = 0; i < file.Coupons.Length; i++)
        {
            AnsweredCoupon coupon = file.Coupons[i];
            if (CouponKinds.Find(coupon.Kind) is not { } kind)
            {
                faults.Add(
                    new CalibrationFault(coupon.Place,
                        $"there is no coupon '{coupon.Kind}'; expected {string.Join(", ", CouponKinds.All.Select(each => each.Name))}"));
                continue;
            }

            CouponWish wish = WishOf(file, coupon);
            if (kind.Lacks(wish) is { } lack)
            {
                faults.Add(new CalibrationFault(coupon.Place, $"{kind.Name}: {lack}"));
                continue;
            }

            ImmutableArray<Question> questions = kind.Questions(wish);
            foreach (WrittenAnswer answer in coupon.Answers)
            {
                Question? question = questions.FirstOrDefault(each => each.Key == answer.Key);
                string? fault = question is null
                    ? $"{kind.Name} asks no question '{answer.Key}'; expected {string.Join(", ", questions.Select(each => each.Key))}"
                    : answer.Text.Length > 0 && question.Refuse(answer.Text) is { } refused
                        ? $"{kind.Name}, {answer.Key}: {refused}; expected {question.Expected}"
                    : null;
                if (fault is not null)
                {
                    faults.Add(new CalibrationFault(answer.Place, fault));
                }
            }

            open.AddRange(questions
                .Where(question => coupon.Answers.FirstOrDefault(answer => answer.Key == question.Key) is not { Text.Length: > 0 })
                .Select(question => new OpenQuestion(
                    i, kind, question, coupon.Answers.FirstOrDefault(answer => answer.Key == question.Key)?.Place ?? coupon.Place)));
        }

        return (open.ToImmutable(), faults.ToImmutable());
    }

    /// <summary>Reads the answers.</summary>
    /// <param name="file">The file; <see cref="Questions"/> has found nothing wrong with it.</param>
    /// <param name="asked">Answers to its open questions, in their order.</param>
    /// <param name="before">Profiles with what was measured before; null for nothing.</param>
    /// <param name="leftOut">Numbers of coupons that are left out; none by default.</param>
    public static Calibration Of(
        AnswerFile file, ImmutableArray<(OpenQuestion Question, string Answer)> asked, ProfileLibrary? before = null,
        ImmutableArray<int> leftOut = default)
    {
        var read = new List<(AnsweredCoupon Coupon, CouponKind Kind, CouponWish Wish, AnswerSheet Sheet, Reading Reading)>();
        var faults = ImmutableArray.CreateBuilder<CalibrationFault>();
        var found = ImmutableArray.CreateBuilder<CouponFound>();
        var notes = ImmutableArray.CreateBuilder<string>();
        var next = ImmutableArray.CreateBuilder<NextCoupon>();
        for (int i = 0; i < file.Coupons.Length; i++)
        {
            AnsweredCoupon coupon = file.Coupons[i];
            CouponKind kind = CouponKinds.Find(coupon.Kind)!;
            CouponWish wish = WishOf(file, coupon);
            if (!leftOut.IsDefault && leftOut.Contains(i))
            {
                notes.Add($"{kind.Name}: left out, nothing of it is set");
                continue;
            }

            ImmutableDictionary<string, string> answers = coupon.Answers.Where(answer => answer.Text.Length > 0)
                .Select(answer => KeyValuePair.Create(answer.Key, answer.Text))
                .Concat(asked.Where(each => each.Question.Coupon == i)
                    .Select(each => KeyValuePair.Create(each.Question.Question.Key, each.Answer)))
                .ToImmutableDictionary(StringComparer.Ordinal);
            var sheet = new AnswerSheet(answers);
            Reading reading = kind.Read(wish, sheet);
            read.Add((coupon, kind, wish, sheet, reading));
            faults.AddRange(reading.Faults.Select(fault => Told(coupon, kind, fault)));
            faults.AddRange(reading.Values
                .Where(value => value.Value < value.Range.Least || value.Value > value.Range.Most)
                .Select(value => new CalibrationFault(coupon.Place, string.Create(CultureInfo.InvariantCulture,
                    $"{kind.Name}: '{value.Key}' comes out as {value.Value:0.###}, which no profile takes ({value.Range.Least:0.###} to "
                        + $"{value.Range.Most:0.###}): try this coupon again"))));
            notes.AddRange(reading.Notes.Select(note => $"{kind.Name}: {note}"));
            if (reading.NextAround is not null || reading.NextKind is not null)
            {
                CouponKind following = reading.NextKind is { } other ? CouponKinds.Find(other)! : kind;
                next.Add(new NextCoupon(kind, following, wish with { Around = reading.NextAround }));
            }

            if (!reading.Values.IsEmpty)
            {
                found.Add(
                    new CouponFound(kind, wish, reading.Values,
                        string.Join(", ", kind.Questions(wish).Select(question => $"{question.Key} {answers[question.Key]}"))));
            }
        }

        faults.AddRange(Twice(file, found));
        if (faults.Count == 0)
        {
            // What a printer does with one filament says nothing of another.
            foreach (string filament in read.Select(each => each.Wish.Filament.Name).Distinct())
            {
                var all = new MeasuredSoFar(
                    found.Where(each => each.Wish.Filament.Name == filament)
                        .SelectMany(each => each.Values.Where(value => value.Shelf == MeasuredShelf.Pairing && value.For is null)
                            .Select(value => (value.Key, value.Value, each.Kind.Name)))
                        .GroupBy(each => each.Key).ToDictionary(each => each.Key, each => (each.First().Value, each.First().Name)),
                    before?.PairingOf(file.Printer.Name, filament));
                faults.AddRange(read.Where(each => each.Wish.Filament.Name == filament)
                    .SelectMany(each => each.Kind.Against(each.Wish, each.Sheet, each.Reading, all)
                        .Select(fault => Told(each.Coupon, each.Kind, fault))));
            }
        }

        return faults.Count > 0
            ? new Calibration { Faults = faults.ToImmutable() }
            : new Calibration { Found = found.ToImmutable(), Notes = notes.ToImmutable(), Next = next.ToImmutable() };
    }

    // Two coupons of one kind that say different things: neither is believed.
    private static IEnumerable<CalibrationFault> Twice(AnswerFile file, IEnumerable<CouponFound> found) =>
        found.SelectMany(each => each.Values.Select(value => (each.Kind, each.Wish.Filament, value)))
            .GroupBy(each => (each.Filament.Name, each.value.Shelf, each.value.Key, each.value.For))
            .Where(same => same.Select(each => each.value.Value).Distinct().Count() > 1)
            .Select(same => new CalibrationFault(
                file.Coupons.Last(coupon => coupon.Kind == same.Last().Kind.Name
                    && WishOf(file, coupon).Filament.Name == same.Last().Filament.Name).Place,
                $"{same.First().value.Words} comes out as "
                    + $"{string.Join(" and ", same.Select(each => each.value.Value.ToString("0.###", CultureInfo.InvariantCulture)))}: "
                    + "leave the coupon away that is out of date"));

    private static CalibrationFault Told(AnsweredCoupon coupon, CouponKind kind, AnswerFault fault) =>
        new(coupon.Answers.FirstOrDefault(answer => answer.Key == fault.Key)?.Place ?? coupon.Place,
            $"{kind.Name}, {fault.Key}: {fault.Message}");

    private static CouponWish WishOf(AnswerFile file, AnsweredCoupon coupon) =>
        new(file.Printer, coupon.Filament ?? file.Filament) { Insert = coupon.Insert, Plug = coupon.Plug, Around = coupon.Around };
}
