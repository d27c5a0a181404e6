using ShellForge.Geometry.Solids;

namespace ShellForge.Planning.Plan;

/// <summary>Kinds of feature that leave faces on a part. A face's tag says which, and the how-many-eth of its kind.</summary>
public enum FaceFeature
{
    /// <summary>Not named.</summary>
    None,

    /// <summary>Floor of the tub.</summary>
    Floor,

    /// <summary>Outer wall.</summary>
    Wall,

    /// <summary>Wall round the bore.</summary>
    BoreWall,

    /// <summary>Post under the board or for a closure screw.</summary>
    Boss,

    /// <summary>Hole for an insert.</summary>
    InsertHole,

    /// <summary>Web from a boss to a wall.</summary>
    Web,

    /// <summary>Triangular web against a boss.</summary>
    Gusset,

    /// <summary>Ledge under the board's rim.</summary>
    Rest,

    /// <summary>Opening for a connector.</summary>
    Port,

    /// <summary>Recess for an overmould.</summary>
    PortRecess,

    /// <summary>Exit of a soldered cable; the exit itself says which face has which number.</summary>
    CableExit,

    /// <summary>Support under a connector.</summary>
    Saddle,

    /// <summary>Key.</summary>
    Key,

    /// <summary>Seat in the cover that centres baffle and diffuser.</summary>
    Seat,

    /// <summary>Notch for a blade.</summary>
    PryNotch,

    /// <summary>Slot that lets air out.</summary>
    Vent,

    /// <summary>Keyhole, magnet pocket, tripod or stand.</summary>
    Mount,

    /// <summary>Lettering and marks.</summary>
    Lettering,

    /// <summary>Chamfer against elephant's foot.</summary>
    BedChamfer,

    /// <summary>Front plate of the cover.</summary>
    Bezel,

    /// <summary>Wall of the cover.</summary>
    CoverWall,

    /// <summary>Lip of the cover.</summary>
    Lip,

    /// <summary>Snap bead.</summary>
    Bead,

    /// <summary>Groove for the bead.</summary>
    Groove,

    /// <summary>Lug of a twist lock, and its slot.</summary>
    Lug,

    /// <summary>Tongue of the cover in a slot or notch of the tub.</summary>
    Tongue,

    /// <summary>Post of the cover round a screw.</summary>
    Post,

    /// <summary>Hole that a screw passes.</summary>
    ScrewHole,

    /// <summary>Counterbore for a screw's head.</summary>
    Counterbore,

    /// <summary>The sheet that scatters the light.</summary>
    Diffuser,

    /// <summary>Wall of the baffle.</summary>
    BaffleWall,

    /// <summary>Room cut into the baffle over a part.</summary>
    BaffleNotch,

    /// <summary>Rib that the cover crushes to hold the baffle.</summary>
    CrushRib,

    /// <summary>Rounded outer edge.</summary>
    RoundedEdge,

    /// <summary>Post of the cover that ends above the board.</summary>
    BoardStop,

    /// <summary>Bay of a battery.</summary>
    BatteryBay,

    /// <summary>What holds the board's rim down: a ring, or clips.</summary>
    Holder,

    /// <summary>Seats, clips and slots of a second board.</summary>
    SecondBoard,
}

/// <summary>Face tags of housing parts: a kind and a number, both ways, without a table that would have to be carried along.</summary>
public static class FaceNames
{
    private const int NumbersPerKind = 1 << 16;

    /// <summary>The tag of the how-many-eth feature (from 0) of a kind.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative or above 65535.</exception>
    public static FaceTag Tag(FaceFeature feature, int number = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(number);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(number, NumbersPerKind);
        return new FaceTag(((int)feature * NumbersPerKind) + number);
    }

    /// <summary>The kind a tag names.</summary>
    public static FaceFeature FeatureOf(FaceTag tag) => (FaceFeature)(tag.Id / NumbersPerKind);

    /// <summary>The number within its kind, from 0.</summary>
    public static int NumberOf(FaceTag tag) => tag.Id % NumbersPerKind;
}
