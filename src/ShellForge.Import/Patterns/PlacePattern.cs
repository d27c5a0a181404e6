using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Patterns;

/// <summary>Things that lie in one pattern of the board file, in the numbers that stand there.</summary>
/// <param name="Members">Which of the given things are in it, in order of their places.</param>
/// <param name="Skip">Places that are empty, from 1.</param>
/// <param name="Turn">How they are turned.</param>
internal abstract record PlacePattern(ImmutableArray<int> Members, ImmutableArray<int> Skip, PatternTurn Turn)
{
    /// <summary>Places, empty ones among them.</summary>
    public abstract int Count { get; }

    /// <summary>Whether the pattern is whole by itself: a closed circle, or all lines of a grid full.</summary>
    public abstract bool Closed { get; }

    /// <summary>What it is called: "circle".</summary>
    public abstract string Word { get; }

    /// <summary>How things in it lie, for people: "stand on a circle".</summary>
    public abstract string Lie { get; }

    /// <summary>Whether it is one line of places.</summary>
    public abstract bool IsRow { get; }

    /// <summary>Its places as keys of a board file: "circle: 60, count: 12, from: 90".</summary>
    /// <param name="centre">The board's centre, which needs not be said.</param>
    public abstract string Keys(Point2 centre);

    /// <summary>Its places for people: "on a circle of 60, D1 at 90 deg, clockwise".</summary>
    /// <param name="first">What is counted first.</param>
    public abstract string Words(string first);

    /// <summary>A place.</summary>
    /// <param name="place">Which, from 0.</param>
    public abstract Point2 At(int place);

    /// <summary>What turns with a place, degrees.</summary>
    /// <param name="place">Which, from 0.</param>
    public abstract double DirectionDegrees(int place);

    /// <summary>The places that are taken, one for each member.</summary>
    public ImmutableArray<int> Taken
    {
        get
        {
            var empty = new HashSet<int>(Skip);
            return [.. Enumerable.Range(0, Count).Where(place => !empty.Contains(place + 1))];
        }
    }

    /// <summary>What its members' things were numbered as before they were picked out of others.</summary>
    /// <param name="indices">The number of each.</param>
    public PlacePattern Renumbered(IReadOnlyList<int> indices) => this with { Members = [.. Members.Select(m => indices[m])] };

    /// <summary>The pattern with the turn of its members; null where it does not tell every place and turn of theirs.</summary>
    protected PlacePattern? Proven(IReadOnlyList<PlacedThing> things)
    {
        ImmutableArray<int> taken = Taken;
        if (taken.Length != Members.Length
            || Members.Zip(taken).Any(m => Point2.Distance(things[m.First].At, At(m.Second)) > EcadTolerances.PatternPlace))
        {
            return null;
        }

        return PatternTurn.Of([.. Members.Select(m => things[m].Turn)], [.. taken.Select(DirectionDegrees)]) is { } turn
            ? this with { Turn = turn } : null;
    }
}
