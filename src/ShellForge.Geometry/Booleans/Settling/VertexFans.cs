using ShellForge.Geometry.Booleans.Ingest;

namespace ShellForge.Geometry.Booleans.Settling;

/// <summary>For each corner of each triangle the smallest corner of its fan: corners at one vertex, joined over partnered edges.</summary>
internal static class VertexFans
{
    public static int[] Of(ReadOnlySpan<int> corners, ReadOnlySpan<int> partner)
    {
        int[] parent = new int[corners.Length];
        for (int c = 0; c < parent.Length; c++)
        {
            parent[c] = c;
        }

        for (int h = 0; h < parent.Length; h++)
        {
            Join(h, Operand.Next(partner[h]));
        }

        for (int c = 0; c < parent.Length; c++)
        {
            parent[c] = Root(c);
        }

        return parent;

        int Root(int c)
        {
            while (parent[c] != c)
            {
                parent[c] = parent[parent[c]];
                c = parent[c];
            }

            return c;
        }

        void Join(int a, int b)
        {
            a = Root(a);
            b = Root(b);
            parent[Math.Max(a, b)] = Math.Min(a, b);
        }
    }

    /// <summary>Whether every vertex has one fan only.</summary>
    public static bool AreSingle(ReadOnlySpan<int> corners, ReadOnlySpan<int> fanOf, int vertices)
    {
        int[] first = new int[vertices];
        for (int c = 0; c < corners.Length; c++)
        {
            ref int fan = ref first[corners[c]];
            if (fan != 0 && fan != fanOf[c] + 1)
            {
                return false;
            }

            fan = fanOf[c] + 1;
        }

        return true;
    }
}
