using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>A place that gathers light: a block of the diffuser, or a patch of what stands behind it.</summary>
/// <param name="At">The place, mm.</param>
/// <param name="Normal">The lit side, of length 1.</param>
/// <param name="Reflectance">Share that it throws back.</param>
internal sealed record Site(Point3 At, Point3 Normal, double Reflectance)
{
    /// <summary>The place, mm: rays start there.</summary>
    public Point3 At { get; set; } = At;

    /// <summary>Rays that came to each other place, weighed; places of the diffuser are numbered ~0, ~1 and so on.</summary>
    public Dictionary<int, LightOnSheet> Sees { get; } = [];

    /// <summary>Where rays start in turn, and which way is out: all over a block, or corners and walls near it weigh wrongly.</summary>
    public (Point3 At, Point3 Normal)[] Starts { get; init; } = [];

    /// <summary>Share of the diffuser that a block of it stands for, in cells; 0 for patches.</summary>
    public int Cells { get; init; }

    /// <summary>Light straight from LEDs, one value a channel; blocks of the diffuser only: patches are looked up in finer steps.</summary>
    public LightOnSheet[] Straight { get; init; } = [];

    /// <summary>Light by way of one surface that LEDs light straight.</summary>
    public LightOnSheet[] Once { get; set; } = [];

    /// <summary>Light by way of any number of surfaces.</summary>
    public LightOnSheet[] Reflected { get; set; } = [];

    /// <summary>What it throws back: of all light that comes to a block, of a patch's only what came by way of a surface.</summary>
    public double[] Thrown { get; set; } = [];

    /// <summary>Share of that which a dark rim leaves to a block beside it.</summary>
    public double Keeps { get; init; } = 1;

    /// <summary>What it throws back of light; only the diffuser tells directions apart.</summary>
    public double ThrownOf(in LightOnSheet light) =>
        Straight.Length > 0 ? Keeps * light.ThrownBack(Reflectance) : Reflectance * light.Falls;
}

/// <summary>The places of a scene that throw light at each other, found by rays, and their balance of light.</summary>
internal sealed class LitRoom(LightScene scene, DirectLight direct, int channels, Func<int, int> blockAt)
{
    // Rays start this far off a surface, and end after so much, mm. A diffuser of one body with the cover is met at its face: so near it is
    // the window.
    private const double Lift = 0.02;
    private const double Longest = 500;
    private const double FaceSlack = 0.05;

    // Side of a patch, mm: what is reflected twice and more varies slowly, but rooms under a diffuser are only a few mm high.
    private const double Patch = 2;

    // Rays of a fan start at places as far apart from those of the rays before as can be: steps of the golden section.
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    // Shares of the sites that are worked on side by side, each with walls of its own in mind.
    private const int Bands = 4;

    private readonly Dictionary<(int, int, int, int, int), int> _known = [];
    private readonly SheetEntry _entry = new(scene.Diffuser);

    // How far off the middle of its cell of space a patch lies, squared.
    private readonly List<double> _off = [];

    // Patches from this number on have not been looked from yet.
    private int _newFrom;

    /// <summary>The patches found so far.</summary>
    public List<Site> Patches { get; } = [];

    /// <summary>
    /// Patches see the diffuser as it sees them: what goes from a block to a patch and what comes back are areas times the same share of
    /// rays, or light is made or lost on the way. A patch's own few rays say how much of the diffuser it sees, the many of the blocks how
    /// that is divided among them.
    /// </summary>
    public void Reciprocate(Site?[] blocks)
    {
        var comes = new List<(int Block, double Light)>[Patches.Count];
        foreach ((int block, Site? site) in blocks.Index())
        {
            foreach ((int patch, LightOnSheet share) in site?.Sees.Where(seen => seen.Key >= 0) ?? [])
            {
                (comes[patch] ??= []).Add((block, site!.Cells * share.Falls));
            }
        }

        foreach ((int i, Site patch) in Patches.Index())
        {
            int[] seen = [.. patch.Sees.Keys.Where(place => place < 0)];
            double share = seen.Order().Sum(place => patch.Sees[place].Falls);
            if (share > 0 && comes[i] is { } from)
            {
                Array.ForEach(seen, place => patch.Sees.Remove(place));
                double all = from.Sum(each => each.Light);
                from.ForEach(each => patch.Sees[~each.Block] = new LightOnSheet(share * each.Light / all, share * each.Light / all));
            }
        }
    }

    /// <summary>Rays from sites: what they see, and the light that comes back to them once.</summary>
    /// <param name="sites">The sites.</param>
    /// <param name="directions">Of the rays, about z.</param>
    /// <param name="finds">Whether what is met for the first time becomes a patch.</param>
    /// <param name="cancel">Stops it.</param>
    public void Look(Site[] sites, Point3[] directions, bool finds, CancellationToken cancel)
    {
        var met = new (int Block, SurfaceHit Hit, bool Wall)[sites.Length][];
        LightOnSheet[] shares = Shares(directions);
        Parallel.For(0, Bands, band =>
        {
            var walls = new LitWalls(direct, scene.Face.Step);
            for (int i = sites.Length * band / Bands; i < sites.Length * (band + 1) / Bands; i++)
            {
                cancel.ThrowIfCancellationRequested();
                met[i] = Look(sites[i], directions, shares, walls);
            }
        });

        _newFrom = Patches.Count;
        for (int i = 0; i < sites.Length; i++)
        {
            foreach ((int k, (int block, SurfaceHit hit, bool wall)) in met[i].Index())
            {
                if (block >= 0)
                {
                    sites[i].Sees[~block] = sites[i].Sees.GetValueOrDefault(~block) + shares[k];
                }
                else if (wall && PatchAt(hit, finds) is int patch and >= 0)
                {
                    sites[i].Sees[patch] = sites[i].Sees.GetValueOrDefault(patch) + shares[k];
                }
            }
        }
    }

    /// <summary>Repeats until what is reflected from site to site changes no more.</summary>
    public void Balance(Site?[] blocks, int mostRounds, double settled)
    {
        Site[] all = [.. Patches.Where(patch => patch.Once.Length > 0), .. blocks.OfType<Site>()];
        Site From(int place) => place < 0 ? blocks[~place]! : Patches[place];
        (Site From, LightOnSheet Share, double Thrown)[][] links = [.. all.Select(site => site.Sees
            .Where(seen => From(seen.Key) is { Reflectance: > 0, Once.Length: > 0 })
            .OrderBy(seen => seen.Key)
            .Select(seen => (From(seen.Key), seen.Value, site.ThrownOf(seen.Value))).ToArray())];
        double[][] own = [.. all.Select(site => site.Once
            .Select((light, i) => site.ThrownOf(light) + (site.Straight.Length > 0 ? site.ThrownOf(site.Straight[i]) : 0)).ToArray())];
        foreach ((int i, Site site) in all.Index())
        {
            site.Thrown = [.. own[i]];
        }

        double before = 0;
        for (int round = 0; round < mostRounds; round++)
        {
            double sum = 0;
            for (int i = 0; i < all.Length; i++)
            {
                double[] to = all[i].Thrown;
                Array.Copy(own[i], to, channels);
                foreach ((Site from, _, double share) in links[i])
                {
                    for (int channel = 0; channel < channels; channel++)
                    {
                        to[channel] += share * from.Thrown[channel];
                    }
                }

                sum += to.Sum();
            }

            if (Math.Abs(sum - before) <= settled * sum)
            {
                break;
            }

            before = sum;
        }

        foreach ((int i, Site site) in all.Index().Where(each => each.Item.Straight.Length > 0))
        {
            site.Reflected = [.. site.Once];
            foreach ((Site from, LightOnSheet share, _) in links[i])
            {
                for (int channel = 0; channel < channels; channel++)
                {
                    site.Reflected[channel] += from.Thrown[channel] * share;
                }
            }
        }
    }

    // What each ray of a fan stands for: equal shares of diffuse light, of which all enters that is diffuse.
    private LightOnSheet[] Shares(Point3[] directions)
    {
        double[] enter = [.. directions.Select(direction => _entry.Of(direction.Z))];
        double sum = enter.Sum();
        return [.. enter.Select(each => new LightOnSheet(1.0 / directions.Length, each / sum))];
    }

    private (int Block, SurfaceHit Hit, bool Wall)[] Look(Site site, Point3[] directions, LightOnSheet[] shares, LitWalls walls)
    {
        var met = new (int, SurfaceHit, bool)[directions.Length];
        (Point3 At, Point3 Normal)[] starts = site.Starts.Length > 0 ? site.Starts : [(site.At, site.Normal)];
        site.Once = new LightOnSheet[channels];
        for (int k = 0; k < directions.Length; k++)
        {
            (Point3 at, Point3 normal) = starts[(int)(k * Golden % 1 * starts.Length)];
            Point3 first = Sideways(at, normal);
            Point3 direction = directions[k];
            Point3 along = (direction.X * first) + (direction.Y * Point3.Cross(normal, first)) + (direction.Z * normal);
            Point3 from = at + (Lift * normal);
            bool wall = scene.Solids.Meets(from, along, Longest, out SurfaceHit hit);
            (double far, int cell) = scene.Face.StepAhead(from, along);
            (far, cell) = cell >= 0 ? (far, cell) : scene.Face.CellAhead(from, along, scene.Sectors);
            if (cell >= 0 && far - FaceSlack < (wall ? hit.Distance : Longest))
            {
                met[k] = (blockAt(cell), default, false);
                continue;
            }

            wall = wall && hit.FromOutside;
            met[k] = (-1, hit, wall);
            double reflectance = wall ? scene.Materials[hit.Material].Reflectance : 0;
            if (reflectance > 0)
            {
                foreach ((int led, LightOnSheet light) in walls.On(scene.OnlyAll ? InFirstSector(hit) : hit))
                {
                    site.Once[channels == 1 ? 0 : led] += reflectance * light.Falls * shares[k];
                }
            }
        }

        return met;
    }

    // In scenes that repeat about the axis, patches that look the same are one. A patch lies where it was met the nearest to the middle of
    // its share of the wall: where it was met first is the side that the first rays come from.
    private int PatchAt(in SurfaceHit hit, bool finds)
    {
        (Point3 at, Point3 normal, _, _, _) = InFirstSector(hit);
        int side = (int)Math.Round(normal.X) + (3 * (int)Math.Round(normal.Y)) + (9 * (int)Math.Round(normal.Z));
        (int, int, int, int, int) key = (
            (int)Math.Floor(at.X / Patch), (int)Math.Floor(at.Y / Patch), (int)Math.Floor(at.Z / Patch), side, hit.Material);
        Point3 apart = at - (Patch * new Point3(key.Item1 + 0.5, key.Item2 + 0.5, key.Item3 + 0.5));
        double off = Point3.Dot(apart, apart);
        if (_known.TryGetValue(key, out int patch))
        {
            if (patch >= _newFrom && off < _off[patch])
            {
                (Patches[patch].At, _off[patch]) = (hit.At, off);
            }
        }
        else
        {
            patch = finds ? Patches.Count : -1;
            if (finds)
            {
                _known[key] = patch;
                Patches.Add(new Site(hit.At, hit.Normal, scene.Materials[hit.Material].Reflectance));
                _off.Add(off);
            }
        }

        return patch;
    }

    private SurfaceHit InFirstSector(in SurfaceHit hit)
    {
        if (scene.Sectors <= 1)
        {
            return hit;
        }

        Angle turn = ReceiverGrid.ToFirstSector(hit.At.XY, scene.Sectors);
        Point2 place = hit.At.XY.Turned(turn);
        Point2 facing = hit.Normal.XY.Turned(turn);
        return hit with { At = new Point3(place.X, place.Y, hit.At.Z), Normal = new Point3(facing.X, facing.Y, hit.Normal.Z) };
    }

    // One axis of the fan of rays follows the circle about the axis, so that places of equal surroundings see equal fans.
    private static Point3 Sideways(Point3 at, Point3 normal)
    {
        double radius = at.XY.Length;
        Point3 outward = radius > Lift ? new Point3(at.X / radius, at.Y / radius, 0) : new Point3(1, 0, 0);
        Point3 across = outward - (Point3.Dot(outward, normal) * normal);
        return across.Length > Lift ? (1 / across.Length) * across : LedSource.Perpendicular(normal);
    }
}
