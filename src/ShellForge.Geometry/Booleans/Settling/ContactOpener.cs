using System.Collections.Immutable;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Settling;

/// <summary>
/// Stage 6: a clean mesh that touches itself at edges or vertices becomes a manifold. Every local component of solid at such a
/// vertex gets a vertex of its own, all but one moved by at most 64 steps (1 µm), into their own solid or out of it. Where an edge is
/// crowded but its ends part nothing, it gets a middle that does. Moves come from a fixed list until an exact check finds nothing wrong.
/// </summary>
internal sealed class ContactOpener
{
    private const int MostAttempts = 400;
    private static readonly int[] Reaches = [48, 64, 32, 24, 16, 8, 4, 2, 1];
    private readonly List<LatticePoint3> _vertices;
    private readonly List<int> _corners;
    private readonly List<int> _tags;
    private readonly int _threads;
    private readonly CancellationToken _ct;
    private readonly int _given;
    private readonly List<Site> _sites = [];
    private readonly Dictionary<int, Site> _siteOf = [];

    private ContactOpener(Operand mesh, int threads, CancellationToken ct)
    {
        _vertices = [.. mesh.Vertices];
        _corners = [.. mesh.Corners];
        _tags = [.. mesh.Tags];
        _given = mesh.Vertices.Length;
        _threads = threads;
        _ct = ct;
    }

    // A vertex of several fans: one of them stays, each other is moved. Every attempt is another choice.
    private sealed class Site(LatticePoint3 home)
    {
        public LatticePoint3 Home { get; } = home;

        public List<(int Vertex, Point3 Inward)> Fans { get; } = [];

        public int Attempt { get; set; }
    }

    /// <summary>The opened mesh, or the place where no move in the list gave a clean one.</summary>
    public static (Operand? Mesh, Point3 Place, ImmutableArray<ContactOpening> Openings) Open(
        Operand mesh, in SolidWedges.Pairing wedges, int threads, CancellationToken ct)
    {
        (int[] partner, List<int[]> crowded) = wedges;
        int[] fanOf = VertexFans.Of(mesh.Corners, partner);
        if (crowded.Count == 0 && VertexFans.AreSingle(mesh.Corners, fanOf, mesh.Vertices.Length))
        {
            return (mesh, default, []);
        }

        ContactOpener opener = new(mesh, threads, ct);
        List<(Point3 Place, ContactKind Kind)> places = [];
        HashSet<int> onCrowdedEdge = [];
        foreach (int[] fan in crowded)
        {
            int from = mesh.Corners[fan[0]], to = mesh.Corners[Operand.Next(fan[0])];
            onCrowdedEdge.Add(from);
            onCrowdedEdge.Add(to);
            places.Add((0.5 * (mesh.Vertices[from].ToMillimetres() + mesh.Vertices[to].ToMillimetres()), ContactKind.Edge));
        }

        List<int> partners = [.. partner];
        if (opener.SplitEdgesThatStayCrowded(crowded, partners, fanOf))
        {
            fanOf = VertexFans.Of([.. opener._corners], [.. partners]);
        }

        opener.SplitVertices(fanOf, onCrowdedEdge, places);
        if (opener._sites.Count == 0)
        {
            return (mesh, default, []);
        }

        (Operand? opened, Point3 place) = opener.Settle();
        return (opened, place, opener.Listed(places));
    }

    private bool SplitEdgesThatStayCrowded(List<int[]> crowded, List<int> partner, int[] fanOf)
    {
        bool any = false;
        foreach (int[] fan in crowded)
        {
            HashSet<(int, int)> ends = [];
            bool stays = false;
            foreach (int h in fan)
            {
                int g = partner[h];
                if (h < g)
                {
                    int p = fanOf[h], q = fanOf[Operand.Next(h)];
                    stays |= !ends.Add((Math.Min(p, q), Math.Max(p, q)));
                }
            }

            if (stays)
            {
                SplitInTheMiddle(fan, partner);
                any = true;
            }
        }

        return any;
    }

    // The middle is one vertex at first; the splitting of vertices then sees as many fans there as there are wedges.
    private void SplitInTheMiddle(int[] fan, List<int> partner)
    {
        LatticePoint3 a = _vertices[_corners[fan[0]]], b = _vertices[_corners[Operand.Next(fan[0])]];
        int middle = _vertices.Count;
        _vertices.Add(new LatticePoint3((a.X + b.X) >> 1, (a.Y + b.Y) >> 1, (a.Z + b.Z) >> 1));
        Dictionary<int, (int First, int Second)> halves = [];
        foreach (int h in fan)
        {
            halves.Add(h, SplitTriangle(h, middle, partner));
        }

        foreach (int h in fan)
        {
            // The first half of one side lies along the second half of the other.
            int g = partner[h];
            if (halves.TryGetValue(g, out (int First, int Second) theirs))
            {
                (int first, int second) = halves[h];
                partner[first] = theirs.Second;
                partner[second] = theirs.First;
                partner[theirs.Second] = first;
                partner[theirs.First] = second;
                halves.Remove(g);
                halves.Remove(h);
            }
        }
    }

    // Triangle (a, b, c) with h = ab becomes (a, m, c) in place and (m, b, c) at the end. Returns am and mb.
    private (int First, int Second) SplitTriangle(int h, int middle, List<int> partner)
    {
        int bc = Operand.Next(h), ca = Operand.Next(bc);
        int b = _corners[bc], c = _corners[ca];
        int added = _corners.Count;
        _corners.AddRange([middle, b, c]);
        _tags.Add(_tags[h / 3]);
        int across = partner[bc];
        partner.AddRange([-1, across, bc]);
        partner[across] = added + 1;
        _corners[bc] = middle;
        partner[bc] = added + 2;
        return (h, added);
    }

    private void SplitVertices(int[] fanOf, HashSet<int> onCrowdedEdge, List<(Point3, ContactKind)> places)
    {
        Dictionary<int, int> firstFan = [];
        Dictionary<int, int> vertexOfFan = [];
        int[] corners = [.. _corners];
        for (int c = 0; c < corners.Length; c++)
        {
            int v = corners[c];
            if (!firstFan.TryGetValue(v, out int first))
            {
                firstFan.Add(v, fanOf[c]);
                continue;
            }

            if (fanOf[c] == first)
            {
                continue;
            }

            if (!vertexOfFan.TryGetValue(fanOf[c], out int own))
            {
                own = _vertices.Count;
                vertexOfFan.Add(fanOf[c], own);
                _vertices.Add(_vertices[v]);
                if (!_siteOf.TryGetValue(v, out Site? site))
                {
                    site = new Site(_vertices[v]);
                    site.Fans.Add((v, Inward(corners, fanOf, first)));
                    _sites.Add(site);
                    _siteOf.Add(v, site);
                    if (!onCrowdedEdge.Contains(v))
                    {
                        places.Add((_vertices[v].ToMillimetres(), ContactKind.Vertex));
                    }
                }

                site.Fans.Add((own, Inward(corners, fanOf, fanOf[c])));
                _siteOf.Add(own, site);
            }

            _corners[c] = own;
        }
    }

    // Against the sum of the normals, each weighted by the angle of its face at the vertex.
    private Point3 Inward(int[] corners, int[] fanOf, int fan)
    {
        Point3 sum = default;
        for (int c = 0; c < corners.Length; c++)
        {
            if (fanOf[c] == fan)
            {
                int t = 3 * (c / 3);
                Plane plane = new(_vertices[corners[t]], _vertices[corners[t + 1]], _vertices[corners[t + 2]]);
                Point3 normal = new(plane.Nx, plane.Ny, plane.Nz);
                sum -= (Angle(corners, c) / normal.Length) * normal;
            }
        }

        return sum;
    }

    private double Angle(int[] corners, int c)
    {
        Point3 at = _vertices[corners[c]].ToMillimetres();
        Point3 p = _vertices[corners[Operand.Next(c)]].ToMillimetres() - at;
        Point3 q = _vertices[corners[Operand.Next(Operand.Next(c))]].ToMillimetres() - at;
        return Trigonometry.AcosDegrees(Math.Clamp(Point3.Dot(p, q) / (p.Length * q.Length), -1, 1));
    }

    private (Operand? Mesh, Point3 Place) Settle()
    {
        for (int attempt = 0; attempt < MostAttempts; attempt++)
        {
            _ct.ThrowIfCancellationRequested();
            foreach (Site site in _sites)
            {
                for (int fan = 0; fan < site.Fans.Count; fan++)
                {
                    _vertices[site.Fans[fan].Vertex] = Place(site, fan);
                }
            }

            HashSet<int> wrong = WrongVertices(out Operand? mesh);
            if (wrong.Count == 0)
            {
                int open = Array.IndexOf(mesh!.Partner, -1);
                return open < 0 ? (mesh, default) : (null, mesh.Vertices[mesh.Corners[open]].ToMillimetres());
            }

            HashSet<Site> toChange = [];
            foreach (int vertex in wrong)
            {
                if (_siteOf.TryGetValue(vertex, out Site? site))
                {
                    toChange.Add(site);
                }
            }

            if (toChange.Count == 0)
            {
                return (null, _vertices[wrong.Min()].ToMillimetres());
            }

            foreach (Site site in toChange)
            {
                site.Attempt++;
            }
        }

        return (null, _sites.MaxBy(site => site.Attempt)!.Home.ToMillimetres());
    }

    // Vertices of triangles that meet wrongly or have no area.
    private HashSet<int> WrongVertices(out Operand? mesh)
    {
        mesh = null;
        HashSet<int> wrong = [];
        for (int t = 0; t < _corners.Count; t += 3)
        {
            if (new Plane(_vertices[_corners[t]], _vertices[_corners[t + 1]], _vertices[_corners[t + 2]]).IsDegenerate)
            {
                wrong.UnionWith([_corners[t], _corners[t + 1], _corners[t + 2]]);
            }
        }

        if (wrong.Count > 0)
        {
            return wrong;
        }

        // The vertices stay apart by number even at one place, so a copy that was not moved away is found as a contact.
        // Triangles that no site touches are as they were checked before.
        mesh = Operand.Of([.. _vertices], [.. _corners], [.. _tags], isClean: false, Moved());
        BooleanRound check = new([mesh], _threads, _ct);
        if (check.HasIntersections)
        {
            bool[] active = check.Found.IsActive;
            for (int t = 0; t < active.Length; t++)
            {
                if (active[t])
                {
                    wrong.UnionWith([_corners[3 * t], _corners[(3 * t) + 1], _corners[(3 * t) + 2]]);
                }
            }
        }
        else if (Array.IndexOf(mesh.Partner, -1) < 0)
        {
            // A body thinner than the move is long may have been turned inside out.
            foreach (int t in ShellSides.Wrong(check.Found, mesh.Partner, _ct))
            {
                wrong.UnionWith([_corners[3 * t], _corners[(3 * t) + 1], _corners[(3 * t) + 2]]);
            }
        }

        return wrong;
    }

    private int[] Moved()
    {
        bool[] isMoved = new bool[_vertices.Count];
        isMoved.AsSpan(_given).Fill(true);
        foreach (int vertex in _siteOf.Keys)
        {
            isMoved[vertex] = true;
        }

        int[] apart = new int[_tags.Count];
        for (int c = 0; c < _corners.Count; c++)
        {
            if (isMoved[_corners[c]])
            {
                apart[c / 3] = -1;
            }
        }

        return apart;
    }

    private static LatticePoint3 Place(Site site, int fan)
    {
        int count = site.Fans.Count;
        int stays = site.Attempt % count;
        if (fan == stays)
        {
            return site.Home;
        }

        // Into its own solid first; the tip of a void that touches a face from within has to go the other way. With more than two
        // fans, which way each goes is tried in all patterns of three.
        int choice = site.Attempt / count;
        int patterns = count == 2 ? 2 : 8;
        bool isOutward = ((choice % patterns) >> (count == 2 ? 0 : fan % 3) & 1) != 0;
        choice /= patterns;
        int reach = Reaches[choice % Reaches.Length];
        int turn = choice / Reaches.Length;
        Point3 direction = (isOutward ? -1.0 : 1.0) * site.Fans[fan].Inward;

        // Later tries lean the direction towards an axis.
        if (turn > 0)
        {
            int axis = (turn - 1) % 6;
            double length = direction.Length;
            Point3 lean = new(axis == 0 ? 1 : axis == 1 ? -1 : 0, axis == 2 ? 1 : axis == 3 ? -1 : 0, axis == 4 ? 1 : axis == 5 ? -1 : 0);
            direction = length == 0 ? lean : ((1 / length) * direction) + lean;
        }

        double largest = Math.Max(Math.Abs(direction.X), Math.Max(Math.Abs(direction.Y), Math.Abs(direction.Z)));
        double scale = largest > 0 ? reach / largest : 0;
        return new LatticePoint3(
            Shifted(site.Home.X, scale * direction.X), Shifted(site.Home.Y, scale * direction.Y),
            Shifted(site.Home.Z, scale * direction.Z));
    }

    private static int Shifted(int coordinate, double by) =>
        Math.Clamp(coordinate + (int)Math.Floor(by + 0.5), -Lattice.Limit, Lattice.Limit);

    private ImmutableArray<ContactOpening> Listed(List<(Point3 Place, ContactKind Kind)> places)
    {
        double distance = 0;
        foreach (Site site in _sites)
        {
            for (int fan = 0; fan < site.Fans.Count; fan++)
            {
                distance = Math.Max(distance, Point3.Distance(site.Home.ToMillimetres(), Place(site, fan).ToMillimetres()));
            }
        }

        return
        [
            .. places.Select(p => new ContactOpening(p.Place, p.Kind, distance))
                .OrderBy(o => o.Place.X).ThenBy(o => o.Place.Y).ThenBy(o => o.Place.Z).ThenBy(o => o.Kind),
        ];
    }
}
