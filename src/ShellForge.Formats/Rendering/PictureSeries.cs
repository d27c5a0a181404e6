using System.Collections.Immutable;

namespace ShellForge.Formats.Rendering;

/// <summary>Several pictures of the same things from one stand and at one scale.</summary>
public sealed record PictureSeries
{
    /// <summary>The things, each of one or more parts.</summary>
    public required ImmutableArray<ImmutableArray<PicturedPart>> Things { get; init; }

    /// <summary>What each picture shows.</summary>
    public required ImmutableArray<Shot> Shots { get; init; }

    /// <summary>How high what is lifted once stands over its place, mm.</summary>
    public double Lift { get; init; }

    /// <summary>From where.</summary>
    public View View { get; init; } = View.Corner;

    /// <summary>Pixels in a row.</summary>
    public required int Width { get; init; }

    /// <summary>Rows.</summary>
    public required int Height { get; init; }

    /// <summary>Behind the things.</summary>
    public Rgb Background { get; init; } = Rgb.White;
}

/// <summary>One picture of a series.</summary>
/// <param name="Shown">The things in it.</param>
public readonly record struct Shot(ImmutableArray<ShownThing> Shown);

/// <summary>A thing in a picture of a series.</summary>
/// <param name="Thing">Its number.</param>
/// <param name="Lifts">How many times the series' lift it stands over its place; 0: it lies there.</param>
public readonly record struct ShownThing(int Thing, int Lifts = 0);
