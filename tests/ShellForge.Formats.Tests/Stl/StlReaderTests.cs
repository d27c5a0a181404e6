using System.Buffers.Binary;
using System.Text;
using FsCheck.Xunit;
using ShellForge.Formats.Soup;
using ShellForge.Formats.Stl;
using ShellForge.Testing;

namespace ShellForge.Formats.Tests.Stl;

public class StlReaderTests
{
    private const string OneFacet =
        "solid plate 1\n facet normal 0 0 1\n  outer loop\n   vertex 0 0 0\n   vertex 1 0 0\n   vertex 0 1e0 +0.5\n  endloop\n "
            + "endfacet\nendsolid plate 1\n";

    private static SoupFile ReadText(string text) => StlReader.Read(Encoding.UTF8.GetBytes(text));

    private static void Has(SoupFile file, string code, params string[] words)
    {
        FileFault fault = Assert.Single(file.Faults, f => f.Code == code);
        Assert.All(words, word => Assert.Contains(word, fault.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void Text_is_read_with_its_name()
    {
        SoupFile file = ReadText(OneFacet);

        Assert.Empty(file.Faults);
        SoupBody body = Assert.Single(file.Bodies);
        Assert.Equal("plate 1", body.Name);
        Assert.Equal([0, 0, 0, 1, 0, 0, 0, 1, 0.5f], body.Triangles.Coordinates.ToArray());
    }

    [Fact]
    public void Keywords_may_be_in_capitals_and_lines_end_as_they_like() =>
        Assert.Empty(ReadText(OneFacet.ToUpperInvariant().ReplaceLineEndings("\r\n")).Faults);

    [Fact]
    public void Two_bodies_in_one_text_stay_two() => Assert.Equal(2, ReadText(OneFacet + OneFacet).Bodies.Length);

    [Fact]
    public void An_empty_file_says_so() => Has(StlReader.Read([]), "empty-file");

    [Fact]
    public void A_text_without_facets_holds_no_triangle() => Has(ReadText("solid nothing\nendsolid nothing\n"), "no-triangle");

    [Fact]
    public void A_text_that_ends_early_tells_the_line_and_keeps_what_was_whole()
    {
        SoupFile file = ReadText(OneFacet.Replace("endsolid plate 1\n", "facet normal 0 0 1\n outer", StringComparison.Ordinal));

        Has(file, "truncated", "line 10", "'loop'");
        Assert.Equal(1, Assert.Single(file.Bodies).Triangles.TriangleCount);
    }

    [Fact]
    public void A_wrong_word_tells_its_line() =>
        Has(ReadText(OneFacet.Replace("vertex 1 0 0", "vertex 1 O 0", StringComparison.Ordinal)), "syntax", "line 5", "a number", "'O'");

    [Theory]
    [InlineData("nan")]
    [InlineData("-NaN(0x8000)")]
    [InlineData("inf")]
    [InlineData("1.#QNAN")]
    [InlineData("1e999")]
    public void A_coordinate_that_is_no_number_tells_its_facet(string word)
    {
        SoupFile file = ReadText(OneFacet.Replace("vertex 1 0 0", $"vertex 1 {word} 0", StringComparison.Ordinal));

        Has(file, "not-a-number", "line 2");
    }

    [Fact]
    public void A_binary_file_that_begins_with_solid_is_binary_all_the_same()
    {
        byte[] bytes = StlWriterTests.Written(Bodies.Tetrahedron());
        "solid"u8.CopyTo(bytes);

        SoupFile file = StlReader.Read(bytes);

        Assert.Equal("binary STL", file.Kind);
        Assert.Empty(file.Faults);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(49)]
    [InlineData(51)]
    public void A_truncated_binary_tells_where_it_ends(int missing)
    {
        byte[] bytes = StlWriterTests.Written(Bodies.Tetrahedron());

        SoupFile file = StlReader.Read(bytes.AsSpan(0, bytes.Length - missing));

        Has(file, "truncated", "4 triangles", $"byte {bytes.Length - missing}", $"triangle {(missing > 50 ? 3 : 4)}");
        Assert.Equal(missing > 50 ? 2 : 3, Assert.Single(file.Bodies).Triangles.TriangleCount);
    }

    [Fact]
    public void A_file_shorter_than_its_head_is_truncated() => Has(StlReader.Read(new byte[83]), "truncated", "83 bytes");

    [Fact]
    public void A_count_that_is_too_small_is_told()
    {
        byte[] bytes = StlWriterTests.Written(Bodies.Tetrahedron());
        bytes[80] = 3;

        Has(StlReader.Read(bytes), "wrong-count", "3 triangles", "50 more bytes");
    }

    [Fact]
    public void A_huge_count_takes_no_more_memory_than_the_file()
    {
        byte[] bytes = StlWriterTests.Written(Bodies.Tetrahedron());
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(80), uint.MaxValue);
        long before = GC.GetAllocatedBytesForCurrentThread();

        SoupFile file = StlReader.Read(bytes);

        Has(file, "truncated", "4294967295 triangles");
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 1 << 20);
    }

    [Fact]
    public void A_binary_without_triangles_says_so() => Has(StlReader.Read(new byte[84]), "no-triangle");

    [Fact]
    public void Numbers_that_are_none_are_told_with_their_triangles()
    {
        byte[] bytes = StlWriterTests.Written(Bodies.Tetrahedron());
        BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(84 + 12), float.NaN);
        BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(84 + 100 + 12), float.PositiveInfinity);

        SoupFile file = StlReader.Read(bytes);

        Has(file, "not-a-number", "triangle 1, triangle 3");
        Assert.Equal(4, Assert.Single(file.Bodies).Triangles.TriangleCount);
    }

    [Property(MaxTest = 300, Arbitrary = [typeof(Draws.Rows)])]
    public void Any_damage_gives_a_result_and_never_an_exception(Draws draws)
    {
        byte[] bytes = draws.Next(2) == 0 ? StlWriterTests.Written(Bodies.Drawn(draws, 8)) : Encoding.UTF8.GetBytes(OneFacet);
        for (int i = draws.Next(1, 12); i > 0; i--)
        {
            bytes[draws.Next(bytes.Length)] = (byte)draws.Next(256);
        }

        SoupFile file = StlReader.Read(bytes.AsSpan(0, draws.Next(bytes.Length + 1)));

        Assert.True(file.Bodies.Length > 0 || file.Faults.Length > 0);
        Assert.Equal(
            file.Bodies.Any(body => body.Triangles.Coordinates.Any(c => !float.IsFinite(c))),
            file.Faults.Any(fault => fault.Code == "not-a-number"));
    }
}
