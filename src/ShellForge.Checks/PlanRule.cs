using System.Collections.Immutable;

namespace ShellForge.Checks;

/// <summary>A wish that the plan may have to refuse or to replace: the name that its finding carries, and what it means.</summary>
/// <param name="Name">The finding's rule.</param>
/// <param name="What">What has to hold.</param>
/// <param name="Why">What follows when it does not.</param>
public sealed record PlanRule(string Name, string What, string Why)
{
    /// <summary>All of them, in the order of the alphabet.</summary>
    public static ImmutableArray<PlanRule> All { get; } =
    [
        new("baffle-not-joined", "A baffle that is to be one piece with the cover must be of one plastic with it.",
            "It is made as a part of its own."),
        new("band-not-drop-in", "A band in the wall is printed into the cover, since nothing else would hold it.",
            "It is not laid in by hand."),
        new("band-not-of-sheet", "A band in the wall is printed with the wall.", "The sheet is not used."),
        new("band-thickness-fixed", "A band in the wall is two lines thick, so that it prints as a wall.", "The key has no effect."),
        new("band-without-cells", "Cells stand between LEDs that shine to the front.", "The light of neighbours mixes."),
        new("board-not-carried", "The board must rest on something at every side.", "It would rock, and bend under a plug."),
        new("board-not-kept-down", "A board without screws must be stopped from rising: by the baffle, the lip or posts of the cover.",
            "It would fall off its rests when the housing is turned over."),
        new("board-turns", "A round board without screws needs something that stops it from turning.",
            "It turns in its place when its leads are pulled."),
        new("bore-too-small", "A bore needs room for the walls round it.", "It is planned closed."),
        new("cable-exit-moved", "A cable through the floor needs a free place at the angle that you ask for.",
            "It leaves at the nearest free place."),
        new("cable-exit-without-place",
            "A cable needs a stretch of wall by itself for its notch, or a free place on the floor for its hole with knot or tie.",
            "The housing has no exit for it."),
        new("cells-without-room", "Walls between LEDs need a line of plastic and air beside it.", "The light of neighbours mixes there."),
        new("closure-screws-by-holes", "Screws of the cover that go through the board's holes are as many as those.",
            "The number asked for is not made."),
        new("diffuser-distance-raised", "The diffuser must clear whatever stands between it and the LEDs.",
            "The housing gets higher than asked."),
        new("diffuser-distance-unused", "A distance to the diffuser needs a diffuser over the LEDs.", "The key has no effect."),
        new("diffuser-one-with-cover", "A diffuser that is printed into the cover needs a filament of its own.",
            "Both are one body of one plastic."),
        new("edge-cut", "A rounded edge needs plastic behind its arc: wall, floor, screw heads and ports limit it.",
            "It is rounded less than asked."),
        new("edge-without-room", "A rounded edge needs room for an arc that one can see.", "It keeps its chamfer."),
        new("key-without-place", "The rim needs a free stretch for the rib that makes the cover fit one way.",
            "The rib would cut a port or a screw."),
        new("label-shrinks", "A label needs room at the size that you ask for.", "It is made as high as there is room."),
        new("label-too-small", "Letters must be high enough to print open.", "They are made higher."),
        new("label-without-place", "A label needs room on the floor, and a floor deeper than its letters.", "It is left out."),
        new("lit-band-without-place", "A wall that lights must stand free of bosses and ports.", "It is planned closed."),
        new("lit-wall-seam", "The parting line should lie under the band that lights.", "Its seam shows in the light."),
        new("mark-without-place", "The revision mark needs room inside tub or cover.", "It is left out."),
        new("mount-without-place", "A mount needs room on the floor or at the wall for what it is made of.", "The housing has no mount."),
        new("no-baffle", "A filament for the baffle needs a baffle.", "The key has no effect."),
        new("no-room-for-tie-post", "A cable tie needs a post beside the cable.", "A knot holds the cable instead."),
        new("no-room-for-window", "The front needs room for a window inside its walls.", "No light comes out."),
        new("no-way-for-plug", "A connector must reach the wall.", "No plug would reach it."),
        new("no-way-to-button", "A button needs free floor under it, for the hole that a pin presses it through.",
            "It can be pressed only with the housing open."),
        new("opening-without-place", "An opening of your own needs wall, floor or front without posts, edges or other openings beside it.",
            "It is left out: nothing is moved in silence."),
        new("part-over-bore", "No part may reach over an open bore.", "The bore is planned closed."),
        new("plug-way-blocked", "Nothing may stand between a connector and the wall.", "No plug would reach it."),
        new("port-without-mouth", "A port opens to the mouth of a connector or to the pusher of a button.", "The key has no effect."),
        new("screw-insert-thread", "A screw must have the thread of its insert.", "It would not go in."),
        new("screw-through-board-hole", "A screw must pass the hole of the board.", "It would not go in."),
        new("screws-without-insert", "Screws of the cover go into inserts.",
            "Without one the cover is closed in the nearest way that can be built."),
        new("snap-without-hold", "A cover that snaps shut needs a rim that gives: long sides and wide bends, few openings.",
            "It would lift: the cover is closed in the nearest way that can be built."),
        new("twist-cannot-turn", "A cover that twists shut needs a round wall without anything that sticks through it.",
            "The cover is closed in the nearest way that can be built."),
        new("unlike-plastics-fused", "Plastics that are printed into each other must be of one family.", "They come apart."),
        new("vents-without-place", "Slots for air need room in the floor.", "The heat stays inside."),
        new("washer-meets-part", "A washer needs room beside the parts of the board.", "The screw goes without."),
        new("window-open-to-middle", "A ring of light needs a middle that can be held.", "The window is a disc."),
        new("window-widened", "The window must not cut off the LEDs' own light.", "It is made wider than asked."),
    ];
}
