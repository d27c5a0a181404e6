using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Patterns;

/// <summary>Places evenly spread on a circle round the board's centre, or on an arc of it.</summary>
/// <param name="Centre">The board's centre.</param>
/// <param name="Diameter">Pitch circle diameter, mm.</param>
/// <param name="Places">Places on it.</param>
/// <param name="FromDegrees">Angle of the first.</param>
/// <param name="StepDegrees">Angle from place to place of an arc; null for a whole circle.</param>
/// <param name="Clockwise">Way round.</param>
/// <param name="Members">Which of the given things are on it.</param>
/// <param name="Skip">Places that are empty, from 1.</param>
/// <param name="Turn">How they are turned.</param>
internal sealed record CirclePattern(
    Point2 Centre, double Diameter, int Places, double FromDegrees, double? StepDegrees, bool Clockwise,
    ImmutableArray<int> Members, ImmutableArray<int> Skip, PatternTurn Turn = default) : PlacePattern(Members, Skip, Turn)
{
    /// <inheritdoc />
    public override int Count => Places;

    /// <inheritdoc />
    public override bool Closed => StepDegrees is null;

    /// <inheritdoc />
    public override string Word => "circle";

    /// <inheritdoc />
    public override string Lie => $"stand on {Shape}";

    /// <inheritdoc />
    public override bool IsRow => false;

    private string Shape => Closed ? "a circle" : "an arc";

    /// <inheritdoc />
    public override string Keys(Point2 centre)
    {
        string step = StepDegrees is { } degrees ? $", step: {PatternText.Number(degrees)}" : "";
        string way = Clockwise ? ", direction: cw" : "";
        return $"circle: {PatternText.Number(Diameter)}, count: {Places}, from: {PatternText.Number(FromDegrees)}{step}{way}"
            + PatternText.Skip(Skip);
    }

    /// <inheritdoc />
    public override string Words(string first) => $"on {Shape} of {Numeral.Text(Diameter, 2)}, {first} at {Numeral.Text(FromDegrees, 1)} deg, "
        + (Clockwise ? "clockwise" : "counter-clockwise");

    /// <inheritdoc />
    public override Point2 At(int place) => Centre + Point2.Polar(Diameter / 2, Angle.FromDegrees(DirectionDegrees(place)));

    /// <inheritdoc />
    public override double DirectionDegrees(int place) =>
        FromDegrees + ((Clockwise ? -1 : 1) * place * (StepDegrees ?? (360.0 / Places)));

    /// <summary>The pattern with the turn of its members; null where it does not tell every place and turn of theirs.</summary>
    public CirclePattern? Of(IReadOnlyList<PlacedThing> things) => Proven(things) as CirclePattern;
}
