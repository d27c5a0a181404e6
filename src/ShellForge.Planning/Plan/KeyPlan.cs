using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Plan;

/// <summary>What makes the parts go together one way only. It shows in the tub's rim, so that it also marks how the board lies.</summary>
/// <param name="At">Direction of the key: of the rib, or of the mouth for a twist lock's odd lug.</param>
/// <param name="Top">z of its upper end: the parting line.</param>
/// <param name="Rib">The rib and its slot; null where the closure keys the cover itself.</param>
/// <param name="Board">How the board is keyed.</param>
public sealed record KeyPlan(Angle At, double Top, KeyRibPlan? Rib, BoardKey Board);

/// <summary>
/// A rib on the cover's lip that goes into a slot in the tub's wall. It reaches away from the board, which is lowered in past it.
/// </summary>
/// <param name="Width">Width of the rib, mm.</param>
/// <param name="Depth">Depth of the slot from the wall's inner face, mm; the whole wall: the slot goes through.</param>
/// <param name="Gap">Gap per side between rib and slot, mm.</param>
/// <param name="Bottom">z of the rib's lower end.</param>
public sealed record KeyRibPlan(double Width, double Depth, double Gap, double Bottom)
{
    /// <summary>Width of the slot, mm.</summary>
    public double SlotWidth => Width + (2 * Gap);
}

/// <summary>How the board is kept from going in turned.</summary>
/// <param name="Words">In words, after "It is keyed": "by its outline".</param>
/// <param name="OneWayOnly">Whether it goes in one way only; otherwise a mark says which way is right.</param>
public sealed record BoardKey(string Words, bool OneWayOnly)
{
    /// <summary>Its connector finds its port one way only.</summary>
    public static BoardKey Connector { get; } = new("by its connector in the port", true);

    /// <summary>Its outline fits one way only.</summary>
    public static BoardKey Outline { get; } = new("by its outline", true);

    /// <summary>Its holes meet their posts one way only.</summary>
    public static BoardKey Holes { get; } = new("by its holes, which fit one way only", true);

    /// <summary>Nothing but a mark shows the right way.</summary>
    /// <param name="what">What marks it: "the key slot".</param>
    /// <param name="atFirstLed">Whether the mark lies at the first LED.</param>
    public static BoardKey Mark(string what, bool atFirstLed) =>
        new($"by the mark on the rim: {what} lies {(atFirstLed ? "at" : "nearest to")} the first LED", false);
}
